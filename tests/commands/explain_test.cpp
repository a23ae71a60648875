#include "program.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

/// What the program says of its own messages.
namespace benchcard::program {

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> result;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) result.push_back(line);
    return result;
}

} // namespace

TEST_CASE("explain prints the page of a kind as plain text", "[commands]") {
    const auto r = run({"explain", "zero-amount"});
    CHECK(r.code == 0);
    CHECK(r.err == "");
    CHECK(r.out == "zero-amount (error): an amount of nothing\n"
                   "\n"
                   "An amount of nothing is no amount. A digit was lost, or the line should go.\n"
                   "\n"
                   "For example:\n"
                   "\n"
                   "    recipe: Rolls\n"
                   "    500 g   plain flour\n"
                   "    0 g     fine salt\n"
                   "\n"
                   "What is said:\n"
                   "\n"
                   "    3:1 error zero-amount: an amount must be more than nothing\n"
                   "\n"
                   "Mended:\n"
                   "\n"
                   "    recipe: Rolls\n"
                   "    500 g   plain flour\n"
                   "    9 g     fine salt\n");
}

TEST_CASE("explain takes a kind as it stands behind a message, and several", "[commands]") {
    const auto one = run({"explain", "zero-amount"}), other = run({"explain", "unknown-piece"});
    CHECK(run({"explain", "[zero-amount]"}).out == one.out);
    CHECK(run({"explain", "zero-amount", "unknown-piece"}).out == one.out + "\n\n" + other.out);
}

TEST_CASE("explain without a kind lists all of them, a line each in columns", "[commands]") {
    const auto r = run({"explain"});
    CHECK(r.code == 0);
    const auto lines = lines_of(r.out);
    CHECK(lines.size() > 80);
    CHECK(std::is_sorted(lines.begin(), lines.end()));
    const auto column = lines.front().find(" error ") + 1;
    for (const auto& line : lines) {
        INFO(line);
        CHECK(line.size() <= 80);
        const auto level = line.substr(column, 9);
        CHECK((level == "error    " || level == "warning  " || level == "hint     "));
        CHECK(line[column - 1] == ' ');
        CHECK(line[column + 9] != ' ');
    }
}

TEST_CASE("a page of explain has no marks of Markdown, and its words fit a terminal",
          "[commands]") {
    for (const auto& listed : lines_of(run({"explain"}).out)) {
        const auto kind = listed.substr(0, listed.find(' '));
        const auto r = run({"explain", kind});
        INFO(r.out);
        CHECK(r.code == 0);
        CHECK(r.out.find("```") == r.out.npos);
        CHECK(r.out.find("\n\n\n") == r.out.npos);
        for (const auto& line : lines_of(r.out))
            if (!line.starts_with("    ")) CHECK(line.size() <= 90); // bytes of 80 columns
    }
}

TEST_CASE("a kind that does not exist is answered with those near it", "[commands]") {
    const auto slip = run({"explain", "mix-to-small"});
    CHECK(slip.code == 2);
    CHECK(slip.out == "");
    CHECK(slip.err == "benchcard: there is no kind of message called `mix-to-small`\n"
                      "     = help: one near it: `mix-too-small`\n"
                      "     = help: all of them: benchcard explain\n");
    CHECK_THAT(run({"explain", "bracket"}).err, Catch::Contains("`unclosed-bracket`"));
    CHECK(run({"explain", "rhubarb"}).err ==
          "benchcard: there is no kind of message called `rhubarb`\n"
          "     = help: all of them: benchcard explain\n");
}

} // namespace benchcard::program
