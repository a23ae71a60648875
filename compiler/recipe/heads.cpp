#include "compiler/recipe/heads.hpp"

#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/statements.hpp"
#include "grammar/nearest.hpp"

#include <fmt/format.h>

namespace benchcard::recipe {

namespace {

using grammar::block;
using grammar::key;
using measures::system;

/// The step of the recipe's own head, or else of the first file it uses that states one.
std::optional<exact> scale_step_of(const book& files) {
    for (const auto& tree : files.trees) {
        std::optional<exact> step;
        for (const auto& b : tree.blocks)
            each_setting(b, [&](const grammar::setting& s) {
                if (s.name == key::scale_step) step = grams_of(std::get<grammar::measure>(s.value));
            });
        if (step && *step > 0) return step;
    }
    return std::nullopt;
}

/// The list of the recipe's own head, or else of the files it uses; where these differ both are
/// followed, so that nothing is left out.
std::string labels_of(const book& files) {
    std::string result;
    for (const auto& tree : files.trees) {
        std::string said;
        for (const auto& b : tree.blocks)
            each_setting(b, [&](const grammar::setting& s) {
                if (s.name == key::labels) said = std::get<grammar::words>(s.value).text;
            });
        if (!said.empty() && &tree == &files.trees.front()) return said;
        if (!said.empty()) result = result.empty() || result == said ? said : "both";
    }
    return result;
}

void read_head_setting(recipe& r, const grammar::setting& s) {
    switch (s.name) {
    case key::revision:
        r.revision = std::get<grammar::words>(s.value).text;
        break;
    case key::date:
        r.date = std::get<grammar::words>(s.value).text;
        break;
    case key::by:
        r.by = std::get<grammar::words>(s.value).text;
        break;
    case key::note:
        r.notes.push_back(std::get<grammar::words>(s.value).text);
        break;
    case key::caution:
        r.cautions.push_back(std::get<grammar::words>(s.value).text);
        break;
    case key::makes:
        r.makes = std::get<grammar::yield>(s.value), r.makes_where = s.value_where;
        break;
    case key::serves:
        r.serves = std::get<grammar::yield>(s.value);
        break;
    default:
        break;
    }
}

system system_of(const grammar::words& said, grammar::diagnostics& to) {
    if (const auto named = measures::system_named(said.text)) return *named;
    auto message = error_at("unknown-measures", said.where,
                            fmt::format("there are no measures called `{}`", said.text));
    std::vector<std::string> all;
    std::string list;
    for (const auto s : measures::all_systems) {
        all.emplace_back(measures::name_of(s));
        list += (list.empty() ? "" : ", ") + all.back();
    }
    for (const auto& near : grammar::nearest(said.text, all, 1))
        message.helps.push_back(
            {fmt::format("the nearest is `{}`", near), {grammar::edit{said.where, near}}});
    message.notes.push_back({"there are " + list, {}});
    to.push_back(std::move(message));
    return system::unstated;
}

} // namespace

file_heads read_heads(const book& files, system override, recipe& r, grammar::diagnostics& to) {
    file_heads heads;
    for (const auto& tree : files.trees) {
        system named = system::unstated;
        for (const auto& b : tree.blocks)
            each_setting(b, [&](const grammar::setting& s) {
                if (s.name == key::measures)
                    named = system_of(std::get<grammar::words>(s.value), to);
            });
        const bool is_first = heads.systems.empty();
        const bool overridden =
            override != system::unstated && (is_first || named == system::unstated);
        heads.systems.push_back(overridden ? override : named);
    }
    r.measures = heads.systems.front();
    r.scale_step = scale_step_of(files);
    r.labels = labels_of(files);
    for (const auto& b : files.trees.front().blocks) {
        if (b.is != block::sort::recipe && b.is != block::sort::before) continue;
        if (b.is == block::sort::recipe) r.title = b.title.text;
        for (const auto& line : unread_in(b, files.sources.front()))
            heads.weight_unread = heads.weight_unread || may_bear_on_weight(line);
        each_setting(b, [&](const grammar::setting& s) { read_head_setting(r, s); });
    }
    return heads;
}

} // namespace benchcard::recipe
