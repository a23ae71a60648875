#include "compiler/editor/look.hpp"

#include <algorithm>

namespace benchcard::editor {

places look::places_of(std::uint32_t file) const {
    const auto text = of.files.sources.at(file).text();
    return {text, shows.counted, file == 0 ? doc.text.size() - text.size() : 0};
}

std::uint32_t look::offset_of(position p) const {
    return static_cast<std::uint32_t>(places_of(0).offset_at(p));
}

json look::location(grammar::span where) const {
    return {{"uri", uri_of_file(where.file)},
            {"range", places_of(where.file).range(where.begin, where.end)}};
}

const grammar::block& block_at(const grammar::tree& file, std::uint32_t offset) {
    const auto* result = &file.blocks.front();
    for (const auto& b : file.blocks)
        if (b.is != grammar::block::sort::before && b.where.begin <= offset) result = &b;
    return *result;
}

const recipe::component* component_of(const commands::compiled& of, const grammar::block& written) {
    for (const auto& c : of.meaning.components)
        if (c.written == &written) return &c;
    return nullptr;
}

json text_edit(const places& at, std::size_t begin, std::size_t end, std::string_view text) {
    return {{"range", at.range(begin, end)}, {"newText", text}};
}

json workspace_edit(const std::vector<edits_of>& all, const client& shows) {
    json result = json::object();
    if (!shows.versioned_edits) {
        result["changes"] = json::object();
        for (const auto& e : all)
            if (!e.edits.empty()) result["changes"][e.uri] = e.edits;
        return result;
    }
    result["documentChanges"] = json::array();
    for (const auto& e : all)
        if (!e.edits.empty())
            result["documentChanges"].push_back(
                {{"textDocument",
                  {{"uri", e.uri}, {"version", e.version < 0 ? json() : json(e.version)}}},
                 {"edits", e.edits}});
    return result;
}

json shown_text(const std::string& markdown, const client& shows) {
    if (shows.markdown) return {{"kind", "markdown"}, {"value", markdown}};
    std::string plain;
    for (const char c : markdown)
        if (c != '*' && c != '`') plain += c;
    return {{"kind", "plaintext"}, {"value", plain}};
}

} // namespace benchcard::editor
