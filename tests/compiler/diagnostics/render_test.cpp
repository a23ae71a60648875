#include "compiler/diagnostics/render.hpp"

#include <catch2/catch.hpp>

using namespace benchcard;
using diagnostics::colour;
using grammar::severity;

namespace {

/// The excerpt of a message on the bytes from `begin` to `end` of a text: its line and its carets.
std::string excerpt(const std::string& text, std::size_t begin, std::size_t end) {
    const std::vector<grammar::source> sources = {{0, "a.recipe", text}};
    const grammar::diagnostic message{
        "kind",
        severity::error,
        {0, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)},
        "m",
        {},
        {}};
    const auto whole = diagnostics::render(message, sources, colour::no);
    return whole.substr(whole.find('\n') + 1);
}

std::string excerpt_of_word(const std::string& text, const std::string& word) {
    const auto begin = text.find(word);
    return excerpt(text, begin, begin + word.size());
}

} // namespace

TEST_CASE("carets stand under the whole range") {
    CHECK(excerpt_of_word("200 g butter, cold\n", "butter") == "   1 | 200 g butter, cold\n"
                                                               "     |       ^^^^^^\n");
}

TEST_CASE("a place without an extent has one caret, also behind the end of the line") {
    CHECK(excerpt("200 g\n", 2, 2) == "   1 | 200 g\n     |   ^\n");
    CHECK(excerpt("200 g\n", 5, 5) == "   1 | 200 g\n     |      ^\n");
    CHECK(excerpt("", 0, 0) == "   1 | \n     | ^\n");
}

TEST_CASE("carets count the columns that characters take") {
    CHECK(excerpt_of_word("½ l crème brûlée\n", "brûlée") ==
          "   1 | ½ l crème brûlée\n     |           ^^^^^^\n");
    // Wide characters take two columns, a combining accent none.
    CHECK(excerpt_of_word("1 抹茶 x\n", "x") == "   1 | 1 抹茶 x\n     |        ^\n");
    CHECK(excerpt_of_word("1 抹茶 x\n", "抹茶") == "   1 | 1 抹茶 x\n     |   ^^^^\n");
    CHECK(excerpt_of_word("1 cre\xCC\x80me x\n", "x") ==
          "   1 | 1 cre\xCC\x80me x\n     |         ^\n");
    CHECK(excerpt("e\xCC\x80", 1, 3) == "   1 | e\xCC\x80\n     |  ^\n");
}

TEST_CASE("a tab is shown as four blanks") {
    CHECK(excerpt_of_word("200 g\tbutter\n", "butter") ==
          "   1 | 200 g    butter\n     |          ^^^^^^\n");
}

TEST_CASE("what cannot be shown is shown as a sign for it") {
    CHECK(excerpt("cr\xE8me\n", 2, 3) == "   1 | cr\xEF\xBF\xBDme\n     |   ^\n");
    CHECK(excerpt("a\x1B[31mb\n", 1, 2) == "   1 | a\xEF\xBF\xBD[31mb\n     |  ^\n");
    CHECK(excerpt("a\x7F\n", 1, 2) == "   1 | a\xEF\xBF\xBD\n     |  ^\n");
}

TEST_CASE("a range over several lines is marked to the end of its first") {
    CHECK(excerpt("- Mix\n  well\n", 0, 12) == "   1 | - Mix\n     | ^^^^^\n");
}

TEST_CASE("a long line is cut around the range") {
    const std::string before(500, 'a'), after(500, 'b');
    CHECK(excerpt_of_word(before + "XYZ" + after, "XYZ") ==
          "   1 | …" + std::string(40, 'a') + "XYZ" + std::string(57, 'b') + "…\n" + "     |  " +
              std::string(40, ' ') + "^^^\n");
    CHECK(excerpt(before, 0, 3) == "   1 | " + std::string(100, 'a') + "…\n     | ^^^\n");
    CHECK(excerpt(before, 499, 500) ==
          "   1 | …" + std::string(41, 'a') + "\n     |  " + std::string(40, ' ') + "^\n");
    CHECK(excerpt(before, 0, 500) ==
          "   1 | " + std::string(100, 'a') + "…\n     | " + std::string(100, '^') + "\n");
    CHECK(excerpt(std::string(100, 'a'), 99, 100) ==
          "   1 | " + std::string(100, 'a') + "\n     | " + std::string(99, ' ') + "^\n");
}

TEST_CASE("a cut never splits a wide character") {
    std::string wide;
    for (int i = 0; i < 200; ++i) wide += "茶";
    std::string shown;
    for (int i = 0; i < 50; ++i) shown += "茶";
    CHECK(excerpt(wide, 0, 3) == "   1 | " + shown + "…\n     | ^^\n");
}

TEST_CASE("colour paints the level and the carets, and nothing else changes") {
    const std::vector<grammar::source> sources = {{0, "a.recipe", "200 g\n"}};
    const grammar::diagnostic message{"a-kind",   severity::warning, {0, 0, 3},
                                      "so it is", {{"a fact", {}}},  {{"do this", {}}}};
    CHECK(diagnostics::render(message, sources, colour::yes) ==
          "a.recipe:1:1: \x1b[1;35mwarning\x1b[0m: so it is [a-kind]\n"
          "   1 | 200 g\n"
          "     | \x1b[1;35m^^^\x1b[0m\n"
          "     = note: a fact\n"
          "     = help: do this\n");
}

TEST_CASE("messages are counted at the end, in the plural where there are more") {
    const std::vector<grammar::source> sources = {{0, "a.recipe", "x\n"}};
    const grammar::diagnostic error{"k", severity::error, {0, 0, 1}, "m", {}, {}};
    auto hint = error;
    hint.level = severity::hint;
    CHECK(diagnostics::render_all({}, sources, colour::no) == "");
    CHECK(diagnostics::render_all({error, hint, error}, sources, colour::no)
              .ends_with("\n2 errors, 1 hint\n"));
}
