#include "compiler/editor/weights_shown.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/commands/conversion.hpp"
#include "grammar/tidy.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::editor {

namespace {

/// A volume without a weight beside it.
struct volume {
    const recipe::line* line;
    std::uint32_t end; ///< behind the measure
    std::string grams; ///< `250 g`
};

std::vector<volume> volumes_in(const look& l) {
    std::vector<volume> result;
    for (const auto& c : l.of.meaning.components)
        for (const auto& line : c.lines)
            if (line.how == recipe::weighed_by::volume && line.grams && line.written &&
                line.where.file == 0 && line.written->equals.empty())
                result.push_back({&line, line.written->amounts.back().where.end,
                                  cards::said_grams(line.grams->used)});
    std::sort(result.begin(), result.end(),
              [](const auto& a, const auto& b) { return a.end < b.end; });
    return result;
}

/// What stands between two ends of a range; a cursor at its edge counts.
struct stretch {
    std::uint32_t begin, end;
    bool meets(grammar::span where) const { return where.begin <= end && begin <= where.end; }
};

stretch stretch_in(const look& l, const json& range) {
    const auto at = l.places_of(0);
    return {static_cast<std::uint32_t>(at.offset_at(position_in(range.at("start")))),
            static_cast<std::uint32_t>(at.offset_at(position_in(range.at("end"))))};
}

/// Whether an editor that asks for some kinds of actions asks for this one.
bool is_wanted(const json& context, std::string_view kind) {
    const auto only = context.find("only");
    if (only == context.end() || !only->is_array()) return true;
    return std::any_of(only->begin(), only->end(), [&](const json& k) {
        const auto asked = k.get<std::string>();
        return kind == asked || kind.starts_with(asked + ".") || asked.empty();
    });
}

json edit_for(const look& l, const json& edits) {
    return workspace_edit({{l.doc.uri, l.doc.version, edits}}, l.shows);
}

void add_repairs(const look& l, const stretch& asked, const json& context, json& to) {
    const auto at = l.places_of(0);
    for (const auto& m : l.of.messages) {
        if (m.where.file != 0 || !asked.meets(m.where)) continue;
        for (const auto& h : m.helps) {
            json edits = json::array();
            for (const auto& e : h.edits)
                if (e.where.file == 0)
                    edits.push_back(text_edit(at, e.where.begin, e.where.end, e.text));
            if (edits.empty() || edits.size() != h.edits.size()) continue;
            auto title = h.text;
            std::erase(title, '`');
            json action = {{"title", title},
                           {"kind", "quickfix"},
                           {"isPreferred", m.helps.size() == 1},
                           {"edit", edit_for(l, edits)}};
            json answered = json::array();
            for (const auto& d : context.value("diagnostics", json::array()))
                if (d.value("code", json()) == json(m.kind) &&
                    d.at("range") == at.range(m.where.begin, m.where.end))
                    answered.push_back(d);
            if (!answered.empty()) action["diagnostics"] = std::move(answered);
            to.push_back(std::move(action));
        }
    }
}

void add_weights(const look& l, const stretch& asked, json& to) {
    const auto at = l.places_of(0);
    const auto all = volumes_in(l);
    const auto as_edit = [&](const volume& v) {
        return text_edit(at, v.end, v.end, " = " + v.grams);
    };
    json here = json::array(), everywhere = json::array();
    for (const auto& v : all) {
        everywhere.push_back(as_edit(v));
        if (asked.meets(v.line->where)) here.push_back(as_edit(v));
    }
    if (here.empty()) return;
    to.push_back({{"title", here.size() == 1 ? "Write the weight beside this volume"
                                             : "Write the weights beside these volumes"},
                  {"kind", "refactor.rewrite"},
                  {"edit", edit_for(l, here)}});
    if (everywhere.size() > here.size())
        to.push_back({{"title", "Write the weight beside every volume in this recipe"},
                      {"kind", "refactor.rewrite"},
                      {"edit", edit_for(l, everywhere)}});
}

/// Where two texts begin to differ, and where they end to, both at the beginnings of characters.
std::pair<std::size_t, std::size_t> common_ends(std::string_view a, std::string_view b) {
    const auto is_inside = [](std::string_view text, std::size_t i) {
        return i < text.size() && (static_cast<unsigned char>(text[i]) & 0xC0) == 0x80;
    };
    const auto most = std::min(a.size(), b.size());
    std::size_t front = 0, back = 0;
    while (front < most && a[front] == b[front]) ++front;
    while (front > 0 && (is_inside(a, front) || is_inside(b, front))) --front;
    while (back < most - front && a[a.size() - 1 - back] == b[b.size() - 1 - back]) ++back;
    while (back > 0 && is_inside(a, a.size() - back)) --back;
    return {front, back};
}

} // namespace

json hints(const look& l, const json& range) {
    const auto asked = stretch_in(l, range);
    const auto at = l.places_of(0);
    json result = json::array();
    for (const auto& v : volumes_in(l))
        if (asked.meets({0, v.end, v.end}))
            result.push_back({{"position", as_json(at.at(v.end))},
                              {"label", "= " + v.grams},
                              {"paddingLeft", true},
                              {"tooltip", commands::said_every_way(*v.line, v.line->measures)}});
    return result;
}

json actions(const look& l, const json& params) {
    json result = json::array();
    if (!l.shows.whole_actions) return result;
    const auto asked = stretch_in(l, params.at("range"));
    const auto context = params.value("context", json::object());
    if (is_wanted(context, "quickfix")) add_repairs(l, asked, context, result);
    if (is_wanted(context, "refactor.rewrite")) add_weights(l, asked, result);
    return result;
}

json formatting(const look& l) {
    const auto& old = l.text();
    const grammar::source made(0, "", grammar::tidied(old, l.tree()));
    const auto at = l.places_of(0);
    json result = json::array();
    for (std::size_t n = 1; n <= std::max(old.line_count(), made.line_count()); ++n) {
        // A line with its end, so that one that gets an end is changed too.
        const auto line_of = [n](const grammar::source& text) -> std::string_view {
            if (n > text.line_count()) return {};
            const auto begin = text.line_start(n);
            const auto end = n < text.line_count() ? text.line_start(n + 1) : text.text().size();
            return text.text().substr(begin, end - begin);
        };
        const auto before = line_of(old), after = line_of(made);
        if (before == after) continue;
        const auto start = n <= old.line_count() ? old.line_start(n) : old.text().size();
        const auto [front, back] = common_ends(before, after);
        result.push_back(text_edit(at, start + front, start + before.size() - back,
                                   after.substr(front, after.size() - front - back)));
    }
    return result;
}

} // namespace benchcard::editor
