// parse_speed FOLDER RUNS: how long reading all recipes below a folder takes, in seconds of work;
// a line a run, each with: reading the files, PEGTL alone by the same rules, our parser.

#include "compiler/commands/files.hpp"
#include "folder.hpp"
#include "grammar/parse.hpp"
#include "grammar/reading.hpp"
#include "grammar/settings.hpp"

#include <cstdlib>
#include <fmt/format.h>

namespace {

using namespace benchcard;
namespace rules = grammar::rules;

template <typename Rule> bool matches(std::string_view text) {
    grammar::input in(text.data(), text.data() + text.size(), "");
    return tao::pegtl::parse<Rule, tao::pegtl::nothing, grammar::recipe_control>(in);
}

template <typename Value> bool setting(std::string_view text) {
    return matches<tao::pegtl::seq<rules::setting_head, Value>>(text);
}

using rule = bool (*)(std::string_view);

rule rule_of(grammar::value_form form) {
    using enum grammar::value_form;
    switch (form) {
    case words:
        return setting<rules::words_value>;
    case prose:
        return setting<rules::prose_value>;
    case list:
        return setting<rules::list_value>;
    case yield:
        return setting<rules::yield_value>;
    case losses:
        return setting<rules::loss_value>;
    case keepings:
        return setting<rules::keeps_value>;
    case tin_size:
        return setting<rules::tin_value>;
    case figures:
        return setting<rules::weighs_value>;
    case price:
        return setting<rules::price_value>;
    case measure:
        return setting<rules::measure_value>;
    case yes_or_no:
        return setting<rules::yes_no_value>;
    }
    return nullptr;
}

/// A line, with those that continue it, and the one rule by which it is read.
struct ruled_line {
    std::string_view text;
    rule by;
};

/// What our parser made of a text says which rule each of its lines is read by.
std::vector<ruled_line> lines_of(const grammar::source& text) {
    std::vector<ruled_line> lines;
    const auto tree = grammar::parse(text).tree;
    const auto add = [&](grammar::span where, rule by) {
        lines.push_back({text.text_of(where), by});
    };
    for (const auto& block : tree.blocks) {
        if (block.where.end > block.where.begin) add(block.where, setting<rules::words_value>);
        for (const auto& item : block.items) {
            if (const auto* s = std::get_if<grammar::setting>(&item.value))
                add(s->where, rule_of(grammar::setting_of(s->name).form));
            else if (const auto* l = std::get_if<grammar::ingredient_line>(&item.value))
                add(l->where, matches<rules::ingredient_line>);
            else if (const auto* m = std::get_if<grammar::step>(&item.value))
                add(m->where, matches<rules::step_line>);
            else if (const auto* c = std::get_if<grammar::comment>(&item.value))
                add(c->where, matches<rules::comment_line>);
        }
    }
    return lines;
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const auto paths = bench::recipes_below(argv[1]);
    std::vector<grammar::source> sources;
    sources.reserve(paths.size()); // lines point into them
    std::vector<ruled_line> lines;
    std::size_t bytes = 0;
    for (const auto& path : paths) {
        sources.emplace_back(0, path, commands::read_file(path).text);
        bytes += sources.back().text().size();
        const auto more = lines_of(sources.back());
        lines.insert(lines.end(), more.begin(), more.end());
    }
    fmt::print("{}\n", bytes);
    std::size_t seen = 0;
    for (int run = 0; run < std::atoi(argv[2]); ++run) {
        const auto reading = bench::seconds_of([&] {
            for (const auto& path : paths) seen += commands::read_file(path).text.size();
        });
        const auto alone = bench::seconds_of([&] {
            for (const auto& line : lines) seen += line.by(line.text);
        });
        const auto parsing = bench::seconds_of([&] {
            for (const auto& source : sources) seen += grammar::parse(source).tree.blocks.size();
        });
        fmt::print("{} {} {}\n", reading, alone, parsing);
    }
    return seen == 0;
}
