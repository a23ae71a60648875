#include "compiler/diagnostics/formats.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "examples.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

using namespace benchcard;
using namespace benchcard::language;
using nlohmann::json;

namespace {

/// What a format says of one message, in a form of its own: all formats must give the same.
struct fact {
    std::string place, end, level, kind, message;
    std::vector<std::string> notes, helps, edits;

    bool operator==(const fact&) const = default;
};

std::string place_of(const std::string& file, std::size_t line, std::size_t column) {
    return fmt::format("{}:{}:{}", file, line, column);
}

std::string place_of(std::size_t offset, const grammar::source& text) {
    const auto at = text.at(offset);
    return place_of(text.name(), at.line, at.column);
}

std::vector<fact> facts_of(const said& s) {
    std::vector<fact> result;
    for (const auto& m : s.messages) {
        const auto& text = s.sources.at(m.where.file);
        fact f{place_of(m.where.begin, text),
               place_of(std::max(m.where.begin, m.where.end), text),
               std::string(grammar::name_of(m.level)),
               std::string(m.kind),
               m.message,
               {},
               {},
               {}};
        for (const auto& n : m.notes)
            f.notes.push_back(
                (n.where ? place_of(n.where->begin, s.sources.at(n.where->file)) + " " : "") +
                n.text);
        for (const auto& h : m.helps) {
            f.helps.push_back(h.text);
            for (const auto& e : h.edits) {
                const auto& of = s.sources.at(e.where.file);
                f.edits.push_back(fmt::format("{} {} {}", place_of(e.where.begin, of),
                                              place_of(e.where.end, of), e.text));
            }
        }
        result.push_back(std::move(f));
    }
    return result;
}

std::string place_in(const json& object, const std::string& which) {
    return place_of(object.at("file"), object.at(which).at("line"), object.at(which).at("column"));
}

std::vector<fact> facts_in_json(const std::string& document) {
    std::vector<fact> result;
    const auto all = json::parse(document);
    for (const auto& m : all.at("messages")) {
        fact f{place_in(m, "begin"),
               place_in(m, "end"),
               m.at("severity"),
               m.at("kind"),
               m.at("message"),
               {},
               {},
               {}};
        for (const auto& n : m.at("notes"))
            f.notes.push_back((n.contains("file") ? place_in(n, "begin") + " " : "") +
                              n.at("text").get<std::string>());
        for (const auto& h : m.at("helps")) {
            f.helps.push_back(h.at("text"));
            for (const auto& e : h.at("edits"))
                f.edits.push_back(fmt::format("{} {} {}", place_in(e, "begin"), place_in(e, "end"),
                                              e.at("text").get<std::string>()));
        }
        result.push_back(std::move(f));
    }
    return result;
}

std::string file_of(const json& artifact) {
    return artifact.contains("uri") ? artifact.at("uri") : artifact.at("description").at("text");
}

std::string begin_of(const json& artifact, const json& region) {
    return place_of(file_of(artifact), region.at("startLine"), region.at("startColumn"));
}
std::string end_of(const json& artifact, const json& region) {
    return place_of(file_of(artifact), region.at("endLine"), region.at("endColumn"));
}

/// Takes the lines that begin with a word off the end of a message.
std::vector<std::string> taken_off(std::string& text, const std::string& word) {
    std::vector<std::string> result;
    const auto first = text.find("\n" + word + ": ");
    if (first == text.npos) return result;
    for (auto begin = first; begin != text.npos;) {
        const auto next = text.find("\n" + word + ": ", begin + 1);
        const auto from = begin + word.size() + 3;
        result.push_back(text.substr(from, next - from));
        begin = next;
    }
    text.erase(first);
    return result;
}

std::vector<fact> facts_in_sarif(const std::string& document) {
    std::vector<fact> result;
    const auto log = json::parse(document);
    const auto& run = log.at("runs").at(0);
    for (const auto& r : run.at("results")) {
        const auto& place = r.at("locations").at(0).at("physicalLocation");
        std::string text = r.at("message").at("text");
        const auto helps = taken_off(text, "help");
        auto notes = taken_off(text, "note");
        std::string level = r.at("level");
        if (level == "note") level = "hint";
        CHECK(run.at("tool").at("driver").at("rules").at(r.at("ruleIndex").get<int>()).at("id") ==
              r.at("ruleId"));
        fact f{begin_of(place.at("artifactLocation"), place.at("region")),
               end_of(place.at("artifactLocation"), place.at("region")),
               level,
               r.at("ruleId"),
               text,
               notes,
               helps,
               {}};
        if (r.contains("relatedLocations"))
            for (const auto& l : r.at("relatedLocations")) {
                const auto& p = l.at("physicalLocation");
                f.notes.push_back(begin_of(p.at("artifactLocation"), p.at("region")) + " " +
                                  l.at("message").at("text").get<std::string>());
            }
        if (r.contains("fixes"))
            for (const auto& fix : r.at("fixes"))
                for (const auto& c : fix.at("artifactChanges"))
                    for (const auto& e : c.at("replacements"))
                        f.edits.push_back(fmt::format(
                            "{} {} {}", begin_of(c.at("artifactLocation"), e.at("deletedRegion")),
                            end_of(c.at("artifactLocation"), e.at("deletedRegion")),
                            e.at("insertedContent").at("text").get<std::string>()));
        result.push_back(std::move(f));
    }
    return result;
}

/// In this form a note without a place stands at its message's, and ends are not given.
std::vector<fact> facts_in_gcc(const std::string& lines) {
    static const std::regex message(R"((.*:\d+:\d+): (error|warning|hint): (.*) \[([a-z0-9-]+)\])");
    static const std::regex note(R"((.*:\d+:\d+): note: (.*))");
    std::vector<fact> result;
    std::istringstream in(lines);
    for (std::string line; std::getline(in, line);) {
        std::smatch found;
        if (std::regex_match(line, found, message)) {
            result.push_back({found[1], "", found[2], found[4], found[3], {}, {}, {}});
        } else if (line.starts_with("fix-it:")) {
            result.back().edits.push_back(line);
        } else if (std::regex_match(line, found, note)) {
            auto& f = result.back();
            const std::string words = found[2];
            if (words.starts_with("help: "))
                f.helps.push_back(words.substr(6));
            else
                f.notes.push_back(found[1].str() + " " + words);
        } else {
            FAIL("a line of no form: " << line);
        }
    }
    return result;
}

/// The same facts as the last function gives them: edits are counted, not compared.
void must_agree_with_gcc(std::vector<fact> facts, std::vector<fact> read) {
    REQUIRE(facts.size() == read.size());
    for (std::size_t i = 0; i < facts.size(); ++i) {
        CHECK(facts[i].edits.size() == read[i].edits.size());
        facts[i].end.clear(), facts[i].edits.clear(), read[i].edits.clear();
        for (auto& n : facts[i].notes)
            if (read[i].notes.size() == facts[i].notes.size() &&
                n != read[i].notes[static_cast<std::size_t>(&n - facts[i].notes.data())])
                n = facts[i].place + " " + n;
        CHECK(facts[i] == read[i]);
    }
}

/// Notes with a place stand behind those without in SARIF.
std::vector<fact> with_sorted_notes(std::vector<fact> facts) {
    for (auto& f : facts) std::sort(f.notes.begin(), f.notes.end());
    return facts;
}

} // namespace

TEST_CASE("every format gives the same facts") {
    std::size_t messages = 0, edits = 0;
    for (const auto& e : all_examples()) {
        INFO(e.recipe);
        const auto s = said_of(e);
        const std::vector<diagnostics::report> reports = {{&s.messages, &s.sources}};
        const auto facts = facts_of(s);
        CHECK(facts_in_json(diagnostics::as_json(reports)) == facts);
        CHECK(with_sorted_notes(facts_in_sarif(diagnostics::as_sarif(reports, true))) ==
              with_sorted_notes(facts));
        must_agree_with_gcc(facts, facts_in_gcc(diagnostics::as_gcc(reports)));
        messages += facts.size();
        for (const auto& f : facts) edits += f.edits.size();
    }
    CHECK(messages > 200);
    CHECK(edits > 20);
}

TEST_CASE("several recipes make one document, in their order") {
    const auto first = compile("recipe: A\n0 g flour\n"),
               second = compile("recipe: B\n5-3 g salt\n");
    const std::vector<diagnostics::report> reports = {{&first.messages, &first.files.sources},
                                                      {&second.messages, &second.files.sources}};
    const auto found = facts_in_json(diagnostics::as_json(reports));
    REQUIRE(found.size() == 2);
    CHECK(found[0].kind == "zero-amount");
    CHECK(found[1].kind == "range-upside-down");
    CHECK(json::parse(diagnostics::as_sarif(reports, true)).at("runs").size() == 1);
}

TEST_CASE("a log has what SARIF 2.1.0 requires, and its rules from the registry") {
    const auto o = compile("recipe: A\nuse: gone.recipe\n5-3 g salt\n- Add salt.\n");
    const std::vector<diagnostics::report> reports = {{&o.messages, &o.files.sources}};
    const auto log = json::parse(diagnostics::as_sarif(reports, false));
    CHECK(log.at("version") == "2.1.0");
    CHECK(log.at("$schema").get<std::string>().ends_with("/sarif-schema-2.1.0.json"));
    const auto& run = log.at("runs").at(0);
    CHECK(run.at("columnKind") == "unicodeCodePoints");
    CHECK(run.at("invocations").at(0).at("executionSuccessful") == false);
    CHECK(run.at("tool").at("driver").at("name") == "benchcard");
    std::set<std::string> kinds;
    for (const auto& rule : run.at("tool").at("driver").at("rules")) {
        const auto* entry = diagnostics::kind_named(rule.at("id").get<std::string>());
        REQUIRE(entry);
        CHECK(rule.at("shortDescription").at("text") == entry->summary);
        CHECK_FALSE(rule.at("help").at("text").get<std::string>().empty());
        CHECK(kinds.insert(std::string(entry->name)).second);
    }
    for (const auto& m : o.messages) CHECK(kinds.contains(std::string(m.kind)));
    for (const auto& r : run.at("results")) {
        const std::string level = r.at("level");
        CHECK((level == "error" || level == "warning" || level == "note"));
        const auto& region = r.at("locations").at(0).at("physicalLocation").at("region");
        for (const auto* part : {"startLine", "startColumn", "endLine", "endColumn"})
            CHECK(region.at(part) >= 1);
    }
}

TEST_CASE("a recipe without a message is a document without one") {
    const grammar::diagnostics none;
    const std::vector<grammar::source> sources = {{0, "a.recipe", "recipe: A\n"}};
    const std::vector<diagnostics::report> reports = {{&none, &sources}};
    CHECK(diagnostics::as_gcc(reports) == "");
    CHECK(diagnostics::as_json(reports) == "{\n  \"version\": 1,\n  \"messages\": []\n}\n");
    CHECK(json::parse(diagnostics::as_sarif(reports, true)).at("runs").at(0).at("results").empty());
}
