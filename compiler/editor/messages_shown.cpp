#include "compiler/editor/messages_shown.hpp"

#include "compiler/diagnostics/formats.hpp"

namespace benchcard::editor {

namespace {

/// Error, warning, information: the protocol's own `hint` is a mark that hardly anyone sees.
int level_of(grammar::severity level) { return static_cast<int>(level) + 1; }

json related(const grammar::diagnostic& m, const look& l) {
    json result = json::array();
    for (const auto& n : m.notes)
        if (n.where) result.push_back({{"location", l.location(*n.where)}, {"message", n.text}});
    return result;
}

json as_json(const grammar::diagnostic& m, const look& l, const places& at) {
    json result = {{"range", at.range(m.where.begin, m.where.end)},
                   {"severity", level_of(m.level)},
                   {"code", m.kind},
                   {"source", "benchcard"},
                   {"message", diagnostics::text_without_places(m)}};
    if (auto others = related(m, l); l.shows.related_places && !others.empty())
        result["relatedInformation"] = std::move(others);
    return result;
}

} // namespace

std::map<std::string, json> diagnostics_of(const look& l) {
    std::map<std::string, json> result = {{l.doc.uri, json::array()}};
    std::map<std::uint32_t, places> by_file;
    for (const auto& m : l.of.messages) {
        const auto file = m.where.file;
        auto at = by_file.find(file);
        if (at == by_file.end()) at = by_file.emplace(file, l.places_of(file)).first;
        auto& to = result.try_emplace(l.uri_of_file(file), json::array()).first->second;
        to.push_back(as_json(m, l, at->second));
    }
    return result;
}

} // namespace benchcard::editor
