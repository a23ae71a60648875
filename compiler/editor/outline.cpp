#include "compiler/editor/outline.hpp"

#include <algorithm>

namespace benchcard::editor {

namespace {

using grammar::block;

grammar::span where_of(const grammar::item& i) {
    return std::visit([](const auto& node) { return node.where; }, i.value);
}

/// A block with all that stands under it, without the empty lines at its end.
grammar::span whole_of(const block& b) {
    auto where = b.where;
    for (const auto& i : b.items)
        if (!std::holds_alternative<grammar::empty_line>(i.value))
            where.end = std::max(where.end, where_of(i).end);
    return where;
}

/// The protocol's numbers for what a symbol is.
enum symbol : int { module = 2, whole_component = 5, field = 8, constant = 14, event = 24 };

int symbol_of(block::sort is) {
    switch (is) {
    case block::sort::component:
        return whole_component;
    case block::sort::assembly:
        return event;
    case block::sort::ingredient:
        return constant;
    default:
        return module;
    }
}

std::string named(const std::string& name) { return name.empty() ? "(no name)" : name; }

json symbol_at(const places& at, const std::string& name, const std::string& detail, int kind,
               grammar::span whole, grammar::span words) {
    if (words.begin < whole.begin || words.end > whole.end) words = whole;
    return {{"name", named(name)},
            {"detail", detail},
            {"kind", kind},
            {"range", at.range(whole.begin, whole.end)},
            {"selectionRange", at.range(words.begin, words.end)},
            {"children", json::array()}};
}

json lines_of(const block& b, const places& at, const grammar::source& text) {
    json result = json::array();
    for (const auto& i : b.items)
        if (const auto* l = std::get_if<grammar::ingredient_line>(&i.value)) {
            const auto& name = l->names.front();
            const grammar::span amount{0, l->where.begin, name.where.begin};
            auto detail = std::string(text.text_of(amount));
            detail.erase(detail.find_last_not_of(" \t") + 1);
            result.push_back(symbol_at(at, name.text, detail, field, l->where, name.where));
        }
    return result;
}

/// For clients without levels: each with the place, and with the block it stands in.
void flatten(const json& symbols, const std::string& uri, const std::string& inside, json& to) {
    for (const auto& s : symbols) {
        json flat = {{"name", s["name"]},
                     {"kind", s["kind"]},
                     {"location", {{"uri", uri}, {"range", s["range"]}}}};
        if (!inside.empty()) flat["containerName"] = inside;
        to.push_back(std::move(flat));
        flatten(s["children"], uri, s["name"], to);
    }
}

json fold(const places& at, grammar::span where, const char* kind = nullptr) {
    json result = {{"startLine", at.at(where.begin).line}, {"endLine", at.at(where.end).line}};
    if (kind) result["kind"] = kind;
    return result;
}

} // namespace

json outline(const look& l) {
    const auto at = l.places_of(0);
    json result = json::array();
    for (const auto& b : l.tree().blocks) {
        if (b.is == block::sort::before) continue;
        auto symbol = symbol_at(at, b.title.text, "", symbol_of(b.is), whole_of(b), b.title.where);
        symbol["children"] = lines_of(b, at, l.text());
        result.push_back(std::move(symbol));
    }
    if (l.shows.tree_of_symbols) return result;
    json flat = json::array();
    flatten(result, l.doc.uri, "", flat);
    return flat;
}

json folds(const look& l) {
    const auto at = l.places_of(0);
    json result = json::array();
    const auto add = [&](grammar::span where, const char* kind = nullptr) {
        if (at.at(where.begin).line < at.at(where.end).line)
            result.push_back(fold(at, where, kind));
    };
    for (const auto& b : l.tree().blocks) {
        if (b.is != block::sort::before) add(whole_of(b));
        std::optional<grammar::span> comments;
        for (const auto& i : b.items) {
            const auto where = where_of(i);
            const bool is_comment = std::holds_alternative<grammar::comment>(i.value);
            if (!is_comment && comments) add(*comments, "comment");
            if (!is_comment)
                comments.reset();
            else if (comments)
                comments->end = where.end;
            else
                comments = where;
            if (!is_comment && !std::holds_alternative<grammar::unread>(i.value)) add(where);
        }
        if (comments) add(*comments, "comment");
    }
    return result;
}

} // namespace benchcard::editor
