#include "program.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <fmt/format.h>

/// Recipes of shapes that took minutes. What is looked at is what is said: a run that lasts is
/// ended by the clock, and has the code -1. `bash tests/bench/run hostile` measures these and more.
namespace benchcard::program {

namespace {

std::string repeated(int count, const std::string& text) {
    std::string result;
    for (int i = 0; i < count; ++i) result += text;
    return result;
}

/// Parts that each use the one before it so often; the first holds an egg.
std::string chain(int count, const std::string& uses) {
    std::string result = "recipe: A\ncomponent: Part 0\n1 egg\n7 g plain flour\n";
    for (int i = 1; i < count; ++i)
        result += fmt::format("component: Part {}\n{}", i, fmt::format(fmt::runtime(uses), i - 1));
    return result;
}

/// Parts that each use all before them.
std::string braid(int count) {
    std::string result = "recipe: A\n";
    for (int i = 0; i < count; ++i) {
        result += fmt::format("component: Part {}\n100 g plain flour\n", i);
        for (int k = 0; k < i; ++k) result += fmt::format("1 g Part {}\n", k);
    }
    return result;
}

} // namespace

TEST_CASE("a thousand components are read in seconds", "[commands][hostile]") {
    std::string big = "recipe: Big\n";
    for (int i = 0; i < 1'000; ++i) big += "component: Part " + std::to_string(i) + "\n1 kg salt\n";
    CHECK(run({"check", "-"}, {.input = big}).code == 0);
}

TEST_CASE("a label lists each component once, in how many ways it may be used",
          "[commands][hostile]") {
    const folder at;
    const auto twice = at.file("a.recipe", chain(50, "half Part {0}\nhalf Part {0}\n"));
    const auto r = run({"label", twice});
    CHECK(r.code == 0);
    CHECK_THAT(r.out, Catch::Contains("EGG"));
}

TEST_CASE("a label of more entries than one can hold is refused", "[commands][hostile]") {
    const folder at;
    // 2^n - 1 parts and their flour: 10 parts have 1,023 entries, and 11 have 2,047.
    CHECK(run({"label", at.file("a.recipe", braid(10))}).code == 0);
    const auto r = run({"label", at.file("b.recipe", braid(11))});
    CHECK(r.code == 1);
    CHECK_THAT(r.err, Catch::EndsWith("benchcard: the list of ingredients, with those of its "
                                      "components, would have more than 2000 entries\n"));
}

TEST_CASE("ten thousand words that name nothing are said in a thousand messages",
          "[commands][hostile]") {
    const folder at;
    const auto step = "- " + repeated(900, "[flower] ") + "\n";
    const auto recipe = at.file("a.recipe", "recipe: A\n1 g plain flour\n" + repeated(11, step));
    const auto r = run({"check", recipe});
    CHECK(r.code == 1);
    CHECK_THAT(r.out, Catch::Contains("8900 more messages are not said, the first of them about "
                                      "this place [too-many-messages]\n"));
    CHECK_THAT(r.out, Catch::EndsWith("1001 errors\n"));
}

TEST_CASE("repairs are tried a few at once, and those that do harm left out",
          "[commands][hostile]") {
    const folder at;
    const auto wrong = repeated(300, "makess: as many as there are\n");
    const auto recipe = at.file("a.recipe", "recipe: A\n" + wrong + "measurs: us\n1 g salt\n" +
                                                "note: " + std::string(9000, 'a') + "\n");
    const auto r = run({"check", "--fix", recipe});
    CHECK(r.code == 1);
    CHECK_THAT(r.out, Catch::StartsWith(recipe + ":302:1: mended: `measurs` is now `measures` "
                                                 "[unknown-setting]\n"));
    CHECK(bytes_of(recipe).find("makess") != std::string::npos);
}

TEST_CASE("of many pasted lines the first are converted, and that is said", "[commands][hostile]") {
    const auto r = run({"convert", "-"}, {.input = repeated(2001, "1 g salt\n")});
    CHECK(r.code == 1);
    CHECK(std::count(r.out.begin(), r.out.end(), '\n') == 2000);
    CHECK(r.err == "benchcard: 2001 lines were given, and the first 2000 are converted\n");
    CHECK(run({"convert", "-"}, {.input = repeated(2000, "1 g salt\n")}).code == 0);
}

} // namespace benchcard::program
