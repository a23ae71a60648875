#include "examples.hpp"

#include "compiler/checks/checks.hpp"
#include "compiler/checks/labels.hpp"
#include "compiler/checks/shorten.hpp"
#include "compiler/diagnostics/pages.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "grammar/show.hpp"
#include "styles/style.hpp"
#include "tables.hpp"

#include <algorithm>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdexcept>

namespace benchcard::language {

namespace {

constexpr std::string_view fence_mark = "```";

std::string decimal(const exact& value) { return measures::in_decimals(value, 1); }

std::string grams(const std::optional<recipe::spread>& weight) {
    if (!weight) return "?";
    const auto used = decimal(weight->used) + " g";
    if (weight->low == weight->high) return used;
    return fmt::format("{} ({}–{})", used, decimal(weight->low), decimal(weight->high));
}

std::string line_text(const recipe::recipe& r, const recipe::line& l) {
    auto result = fmt::format("  {}  {}", l.some ? "some" : grams(l.grams), l.name);
    if (l.component) result += fmt::format(" (component {})", r.components[*l.component].title);
    return result;
}

std::string made_text(const recipe::component& c) {
    const auto& made = c.made;
    std::string result;
    if (made.pieces)
        result +=
            fmt::format("{} {}", decimal(made.pieces->used),
                        made.pieces->used == 1 ? made.piece : ingredients::plural(made.piece));
    if (made.each) result += fmt::format(" of {}", grams(made.each));
    if (made.grams) result += fmt::format("{}{}", result.empty() ? "" : ", ", grams(made.grams));
    if (made.ml) result += fmt::format(", {} ml", decimal(*made.ml));
    return result.empty() ? "?" : result;
}

std::string place_text(grammar::span where, const std::vector<grammar::source>& sources) {
    const auto& text = sources.at(where.file);
    const auto begin = text.at(where.begin);
    auto result = where.file == 0 ? std::string() : text.name() + ":";
    result += fmt::format("{}:{}", begin.line, begin.column);
    if (where.end <= where.begin + 1) return result;
    const auto last = text.at(where.end);
    if (last.line == begin.line) return result + fmt::format("-{}", last.column - 1);
    return result + fmt::format("-{}:{}", last.line, last.column - 1);
}

void replace_between(std::string& page, const std::string& name, const std::string& table) {
    const auto begin_mark = fmt::format("<!-- table: {} -->\n", name);
    const auto begin = page.find(begin_mark);
    const auto end = page.find("<!-- end of table -->", begin);
    if (begin == page.npos || end == page.npos)
        throw std::runtime_error("LANGUAGE.md has no place for the table " + name);
    page.replace(begin + begin_mark.size(), end - begin - begin_mark.size(), table);
}

} // namespace

std::vector<fence> fences_in(const std::string& page) {
    std::vector<fence> result;
    bool inside = false;
    std::size_t number = 0;
    for (std::size_t begin = 0; begin < page.size();) {
        const auto end = std::min(page.find('\n', begin), page.size());
        const auto line = page.substr(begin, end - begin);
        ++number;
        if (line.starts_with(fence_mark)) {
            if (!inside) result.push_back({line.substr(fence_mark.size()), "", number, end + 1});
            inside = !inside;
        } else if (inside) {
            result.back().text += line + "\n";
        }
        begin = end + 1;
    }
    if (inside)
        throw std::runtime_error(
            fmt::format("the fence in line {} is not closed", result.back().line));
    return result;
}

std::vector<example> examples_in(const std::string& page) {
    std::vector<example> result;
    std::map<std::string, std::string> files;
    bool may_follow = false; // whether a result may stand here
    for (auto& f : fences_in(page)) {
        if (f.info.starts_with("file ")) {
            files[f.info.substr(5)] = f.text;
            may_follow = false;
        } else if (f.info == "recipe" || f.info == "style") {
            result.push_back({f.text,
                              f.line,
                              std::exchange(files, {}),
                              {},
                              f.text_begin + f.text.size(),
                              f.info == "style"});
            may_follow = true;
        } else if (f.info == "text") {
            may_follow = false;
        } else if (may_follow &&
                   (f.info == "tree" || f.info == "weights" || f.info == "messages")) {
            result.back().results.push_back(std::move(f));
        } else {
            throw std::runtime_error(fmt::format(
                "the fence in line {} has the unknown word `{}`, or stands behind no recipe",
                f.line, f.info));
        }
    }
    return result;
}

std::vector<example> all_examples() {
    auto result = examples_in(text_of(BENCHCARD_SOURCE_DIR "/grammar/LANGUAGE.md"));
    for (const auto kind : diagnostics::kinds_with_pages()) {
        const auto page = text_of(BENCHCARD_SOURCE_DIR "/compiler/diagnostics/pages/" +
                                  std::string(kind) + ".md");
        for (auto& e : examples_in(page)) result.push_back(std::move(e));
    }
    return result;
}

recipe::file_reader reader_of(const std::map<std::string, std::string>& files) {
    return [&files](const std::string& path) {
        const auto found = files.find(path);
        return found == files.end() ? recipe::file_text{false, "", "no such file"}
                                    : recipe::file_text{true, found->second, ""};
    };
}

outcome compile(const std::string& text, const std::map<std::string, std::string>& files) {
    outcome o;
    o.files = recipe::gather("example.recipe", text, reader_of(files));
    auto resolved = recipe::resolve(o.files, ingredients::built_in_table());
    o.meaning = std::move(resolved.meaning);
    o.messages = o.files.messages;
    const auto add = [&](const grammar::diagnostics& more) {
        o.messages.insert(o.messages.end(), more.begin(), more.end());
    };
    add(resolved.messages);
    add(checks::check(o.meaning));
    checks::check_labels(o.files, o.meaning, o.messages);
    checks::settle(o.files, o.meaning, o.messages);
    checks::put_in_order(o.messages);
    return o;
}

std::string tree_text(const outcome& o) { return grammar::show(o.files.trees.front()); }

std::string weights_text(const outcome& o) {
    std::string result;
    for (const auto& c : o.meaning.components) {
        result +=
            c.title +
            (c.times == 1 ? "" : fmt::format(", {} times", measures::with_fraction(c.times))) +
            "\n";
        for (const auto& l : c.lines) result += line_text(o.meaning, l) + "\n";
        if (c.mix) result += "  mix: " + grams(c.mix) + "\n";
        result += "  makes: " + made_text(c) + "\n";
        if (c.baked && c.made.grams && c.baked->used != c.made.grams->used)
            result += "  baked: " + grams(c.baked) + "\n";
    }
    return result;
}

std::string messages_text(const said& s) {
    std::string result;
    for (const auto& m : s.messages) {
        result += fmt::format("{} {} {}: {}\n", place_text(m.where, s.sources),
                              grammar::name_of(m.level), m.kind, m.message);
        for (const auto& n : m.notes)
            result += fmt::format("  note{}: {}\n",
                                  n.where ? " " + place_text(*n.where, s.sources) : "", n.text);
        for (const auto& h : m.helps) result += fmt::format("  help: {}\n", h.text);
    }
    return result;
}

std::string messages_text(const outcome& o) {
    return messages_text(said{o.messages, o.files.sources});
}

said said_of(const example& e) {
    if (!e.is_style) {
        auto o = compile(e.recipe, e.files);
        return {std::move(o.messages), std::move(o.files.sources)};
    }
    said result{{}, {grammar::source(0, "example.style", e.recipe)}};
    styles::read_style(result.sources.front(), result.messages);
    return result;
}

std::string result_text(const example& e, const std::string& name) {
    if (name == "messages") return messages_text(said_of(e));
    const auto o = compile(e.recipe, e.files);
    if (name == "tree") return tree_text(o);
    if (name == "weights") return weights_text(o);
    throw std::logic_error("no such result: " + name);
}

std::string with_results(const std::string& page) {
    auto result = page;
    auto examples = examples_in(page);
    for (auto e = examples.rbegin(); e != examples.rend(); ++e)
        for (auto f = e->results.rbegin(); f != e->results.rend(); ++f)
            result.replace(f->text_begin, f->text.size(), result_text(*e, f->info));
    return result;
}

std::string with_tables(const std::string& page) {
    auto result = page;
    for (const auto& [name, table] : tables()) replace_between(result, name, table);
    return result;
}

std::string text_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

bool wants_update() {
    const char* said = std::getenv("UPDATE_GOLDEN");
    return said && std::string(said) == "1";
}

void print_changes(const std::string& name, const std::string& before, const std::string& after) {
    const auto old_ones = fences_in(before), new_ones = fences_in(after);
    for (std::size_t i = 0; i < old_ones.size(); ++i)
        if (old_ones[i].text != new_ones[i].text)
            std::cout << fmt::format("{}:{}: {} was\n{}and is\n{}\n", name, old_ones[i].line,
                                     old_ones[i].info, old_ones[i].text, new_ones[i].text);
}

} // namespace benchcard::language
