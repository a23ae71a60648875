#include "compiler/diagnostics/formats.hpp"

#include <nlohmann/json.hpp>

namespace benchcard::diagnostics {

using grammar::source;
using grammar::span;
using json = nlohmann::ordered_json;

namespace {

json place(std::size_t offset, const source& text) {
    const auto at = text.at(offset);
    return {{"line", at.line}, {"column", at.column}, {"byte", offset}};
}

void add_place(json& to, span where, const std::vector<source>& sources) {
    const auto& text = sources.at(where.file);
    to["file"] = text.name();
    to["begin"] = place(where.begin, text);
    to["end"] = place(std::max(where.begin, where.end), text);
}

json as_object(const grammar::note& n, const std::vector<source>& sources) {
    json result = {{"text", n.text}};
    if (n.where) add_place(result, *n.where, sources);
    return result;
}

json as_object(const grammar::help& h, const std::vector<source>& sources) {
    json result = {{"text", h.text}, {"edits", json::array()}};
    for (const auto& e : h.edits) {
        json made = json::object();
        add_place(made, e.where, sources);
        made["text"] = e.text;
        result["edits"].push_back(std::move(made));
    }
    return result;
}

json as_object(const grammar::diagnostic& m, const std::vector<source>& sources) {
    json result = json::object();
    add_place(result, m.where, sources);
    result["severity"] = grammar::name_of(m.level);
    result["kind"] = m.kind;
    result["message"] = m.message;
    result["notes"] = json::array();
    result["helps"] = json::array();
    for (const auto& n : m.notes) result["notes"].push_back(as_object(n, sources));
    for (const auto& h : m.helps) result["helps"].push_back(as_object(h, sources));
    return result;
}

} // namespace

std::string as_json(std::span<const report> reports) {
    json document = {{"version", 1}, {"messages", json::array()}};
    for (const auto& r : reports)
        for (const auto& m : *r.messages) document["messages"].push_back(as_object(m, *r.sources));
    // A text that is not UTF-8 is quoted in messages; what is not is replaced by the sign for it.
    return document.dump(2, ' ', false, json::error_handler_t::replace) + "\n";
}

} // namespace benchcard::diagnostics
