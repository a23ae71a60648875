#include "compiler/diagnostics/formats.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "compiler/diagnostics/pages.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <nlohmann/json.hpp>

namespace benchcard::diagnostics {

using grammar::source;
using grammar::span;
using json = nlohmann::ordered_json;

namespace {

constexpr auto schema =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

std::string_view level_of(grammar::severity level) {
    return level == grammar::severity::hint ? "note" : grammar::name_of(level);
}

/// Standard input has no address, so it is described instead.
json artifact(const source& text) {
    if (text.name() == "standard input") return {{"description", {{"text", text.name()}}}};
    return {{"uri", uri_of(text.name())}};
}

/// The end is just past the last character, as in the text itself.
json region(span where, const source& text) {
    const auto begin = text.at(where.begin), end = text.at(std::max(where.begin, where.end));
    return {{"startLine", begin.line},
            {"startColumn", begin.column},
            {"endLine", end.line},
            {"endColumn", end.column}};
}

json location(span where, const std::vector<source>& sources) {
    const auto& text = sources.at(where.file);
    return {{"physicalLocation",
             {{"artifactLocation", artifact(text)}, {"region", region(where, text)}}}};
}

/// The changes of one file.
json change(const std::vector<grammar::edit>& edits, const source& text) {
    json result = {{"artifactLocation", artifact(text)}, {"replacements", json::array()}};
    for (const auto& e : edits)
        result["replacements"].push_back(
            {{"deletedRegion", region(e.where, text)}, {"insertedContent", {{"text", e.text}}}});
    return result;
}

json fix(const grammar::help& h, const std::vector<source>& sources) {
    std::map<std::uint32_t, std::vector<grammar::edit>> by_file;
    for (const auto& e : h.edits) by_file[e.where.file].push_back(e);
    json result = {{"description", {{"text", h.text}}}, {"artifactChanges", json::array()}};
    for (const auto& [file, edits] : by_file)
        result["artifactChanges"].push_back(change(edits, sources.at(file)));
    return result;
}

json result_of(const grammar::diagnostic& m, const std::vector<source>& sources,
               const std::vector<std::string_view>& rules) {
    const auto rule = std::find(rules.begin(), rules.end(), m.kind) - rules.begin();
    json result = {{"ruleId", m.kind},
                   {"ruleIndex", rule},
                   {"level", level_of(m.level)},
                   {"message", {{"text", text_without_places(m)}}},
                   {"locations", json::array({location(m.where, sources)})}};
    for (const auto& n : m.notes) {
        if (!n.where) continue;
        auto related = location(*n.where, sources);
        related["message"] = {{"text", n.text}};
        result["relatedLocations"].push_back(std::move(related));
    }
    for (const auto& h : m.helps)
        if (!h.edits.empty()) result["fixes"].push_back(fix(h, sources));
    return result;
}

/// The kinds that occur, in order of the alphabet.
std::vector<std::string_view> kinds_in(std::span<const report> reports) {
    std::vector<std::string_view> result;
    for (const auto& r : reports)
        for (const auto& m : *r.messages) result.push_back(m.kind);
    std::sort(result.begin(), result.end());
    result.erase(std::unique(result.begin(), result.end()), result.end());
    return result;
}

json rule_of(std::string_view kind) {
    json result = {{"id", kind}};
    const auto* entry = kind_named(kind);
    if (!entry) return result;
    result["shortDescription"] = {{"text", entry->summary}};
    result["defaultConfiguration"] = {{"level", level_of(entry->level)}};
    result["help"] = {{"text", explained(kind)}, {"markdown", page_of(kind)}};
    return result;
}

} // namespace

std::string text_without_places(const grammar::diagnostic& m) {
    auto result = m.message;
    for (const auto& n : m.notes)
        if (!n.where) result += "\nnote: " + n.text;
    for (const auto& h : m.helps) result += "\nhelp: " + h.text;
    return result;
}

std::string uri_of(std::string_view path) {
    std::string result = path.starts_with('/') ? "file://" : "";
    for (const char c : path) {
        const bool is_plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                              (c >= '0' && c <= '9') ||
                              std::string_view("-._~/").find(c) != std::string_view::npos;
        if (is_plain)
            result += c;
        else
            result += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return result;
}

std::string as_sarif(std::span<const report> reports, bool all_were_read) {
    const auto rules = kinds_in(reports);
    json driver = {{"name", "benchcard"}, {"version", BENCHCARD_VERSION}, {"rules", json::array()}};
    for (const auto kind : rules) driver["rules"].push_back(rule_of(kind));
    json run = {{"tool", {{"driver", std::move(driver)}}},
                {"invocations", json::array({{{"executionSuccessful", all_were_read}}})},
                {"columnKind", "unicodeCodePoints"},
                {"results", json::array()}};
    for (const auto& r : reports)
        for (const auto& m : *r.messages) run["results"].push_back(result_of(m, *r.sources, rules));
    const json log = {
        {"$schema", schema}, {"version", "2.1.0"}, {"runs", json::array({std::move(run)})}};
    return log.dump(2, ' ', false, json::error_handler_t::replace) + "\n";
}

} // namespace benchcard::diagnostics
