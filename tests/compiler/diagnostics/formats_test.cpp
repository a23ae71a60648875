#include "compiler/diagnostics/formats.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace benchcard;
using diagnostics::report;
using grammar::severity;

namespace {

/// One message about some bytes of a text, with a note elsewhere and an edit.
struct given {
    std::vector<grammar::source> sources;
    grammar::diagnostics messages;

    std::vector<report> reports() const { return {{&messages, &sources}}; }
};

given accents() {
    return {{{0, "crème.recipe", "recipe: A\n½ l crème \"fraîche\"\n"}},
            {{"a-kind",
              severity::warning,
              {0, 22, 32}, // "fraîche" in its quotes
              "so it is",
              {{"a fact", {}}, {"it began here", grammar::span{0, 10, 12}}},
              {{"do this", {{{0, 22, 32}, "\"épaisse\""}}}}}}};
}

} // namespace

TEST_CASE("gcc's form has a line a message, columns in characters, and edits in bytes") {
    CHECK(diagnostics::as_gcc(accents().reports()) ==
          "crème.recipe:2:11: warning: so it is [a-kind]\n"
          "crème.recipe:2:11: note: a fact\n"
          "crème.recipe:2:1: note: it began here\n"
          "crème.recipe:2:11: note: help: do this\n"
          "fix-it:\"crème.recipe\":{2:13-2:23}:\"\\\"épaisse\\\"\"\n");
}

TEST_CASE("a message is one line in gcc's form whatever it quotes") {
    given g{{{0, "a\nb.recipe", "x\n"}}, {{"k", severity::error, {0, 0, 1}, "a\tb\nc", {}, {}}}};
    CHECK(diagnostics::as_gcc(g.reports()) == "a\xEF\xBF\xBD"
                                              "b.recipe:1:1: error: a\xEF\xBF\xBD"
                                              "b\xEF\xBF\xBD"
                                              "c [k]\n");
}

TEST_CASE("JSON counts from 1 in characters, gives bytes, and keeps its order") {
    CHECK(diagnostics::as_json(accents().reports()) == R"({
  "version": 1,
  "messages": [
    {
      "file": "crème.recipe",
      "begin": {
        "line": 2,
        "column": 11,
        "byte": 22
      },
      "end": {
        "line": 2,
        "column": 20,
        "byte": 32
      },
      "severity": "warning",
      "kind": "a-kind",
      "message": "so it is",
      "notes": [
        {
          "text": "a fact"
        },
        {
          "text": "it began here",
          "file": "crème.recipe",
          "begin": {
            "line": 2,
            "column": 1,
            "byte": 10
          },
          "end": {
            "line": 2,
            "column": 2,
            "byte": 12
          }
        }
      ],
      "helps": [
        {
          "text": "do this",
          "edits": [
            {
              "file": "crème.recipe",
              "begin": {
                "line": 2,
                "column": 11,
                "byte": 22
              },
              "end": {
                "line": 2,
                "column": 20,
                "byte": 32
              },
              "text": "\"épaisse\""
            }
          ]
        }
      ]
    }
  ]
}
)");
}

TEST_CASE("bytes that are not UTF-8 are replaced in documents") {
    given g{{{0, "a.recipe", "cr\xE8me\n"}},
            {{"k", severity::error, {0, 2, 3}, "found cr\xE8me", {}, {}}}};
    const auto read = nlohmann::json::parse(diagnostics::as_json(g.reports()));
    CHECK(read.at("messages").at(0).at("message") == "found cr\xEF\xBF\xBDme");
    CHECK_NOTHROW(nlohmann::json::parse(diagnostics::as_sarif(g.reports(), true)));
}

TEST_CASE("SARIF's regions are characters, with their end behind the last") {
    const auto log = nlohmann::json::parse(diagnostics::as_sarif(accents().reports(), true));
    const auto& r = log.at("runs").at(0).at("results").at(0);
    CHECK(r.at("locations").at(0).at("physicalLocation") ==
          nlohmann::json::parse(R"({"artifactLocation": {"uri": "cr%C3%A8me.recipe"},
              "region": {"startLine": 2, "startColumn": 11, "endLine": 2, "endColumn": 20}})"));
    CHECK(r.at("message").at("text") == "so it is\nnote: a fact\nhelp: do this");
    CHECK(r.at("relatedLocations").at(0).at("message").at("text") == "it began here");
    CHECK(
        r.at("fixes").at(0).at("artifactChanges").at(0).at("replacements").at(0) ==
        nlohmann::json::parse(
            R"({"deletedRegion": {"startLine": 2, "startColumn": 11, "endLine": 2, "endColumn": 20},
                  "insertedContent": {"text": "\"épaisse\""}})"));
}

TEST_CASE("standard input has no address, and paths are escaped") {
    given g{{{0, "standard input", "x\n"}}, {{"k", severity::hint, {0, 0, 1}, "m", {}, {}}}};
    const auto log = nlohmann::json::parse(diagnostics::as_sarif(g.reports(), true));
    const auto& r = log.at("runs").at(0).at("results").at(0);
    CHECK(r.at("level") == "note");
    CHECK(r.at("locations").at(0).at("physicalLocation").at("artifactLocation") ==
          nlohmann::json::parse(R"({"description": {"text": "standard input"}})"));
    CHECK(diagnostics::uri_of("/a b/c.recipe") == "file:///a%20b/c.recipe");
    CHECK(diagnostics::uri_of("../a:b?#.recipe") == "../a%3Ab%3F%23.recipe");
}
