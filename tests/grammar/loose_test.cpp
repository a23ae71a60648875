#include "grammar/loose.hpp"
#include "grammar/loose_rules.hpp"
#include "grammar/parse.hpp"

#include <catch2/catch.hpp>
#include <tao/pegtl/contrib/analyze.hpp>

using namespace benchcard::grammar;

TEST_CASE("no rule for pasted lines can loop without reading") {
    CHECK(tao::pegtl::analyze<loose::line>(-1) == 0);
}

TEST_CASE("pasted lines become lines of the language") {
    const auto becomes = [](std::string_view pasted, std::string_view line) {
        CAPTURE(pasted);
        CHECK(as_ingredient_line(pasted) == line);
        const source text(0, "line", std::string(line));
        CHECK(parse_ingredient_line(text).line.has_value());
    };
    becomes("2 1/4 cups (280g) all-purpose flour, spooned & levelled",
            "2 1/4 cups = 280g all-purpose flour, spooned & levelled");
    becomes("1 cup (about 125 g) plain flour", "1 cup = 125 g plain flour");
    becomes("1 (14-ounce) can condensed milk", "1 x 14 ounce can condensed milk");
    becomes("2 (400 g) tins all-purpose tomatoes", "2 x 400 g tins all-purpose tomatoes");
    becomes("butter, 2 sticks", "2 sticks butter");
    becomes("plain flour, 200g", "200g plain flour");
    becomes("  - 3 eggs  ", "3 eggs");
    becomes("• 1½ cups caster sugar", "1½ cups caster sugar");
    becomes("200 g butter, diced", "200 g butter, diced");
}

TEST_CASE("what is no amount of anything stays as it was") {
    for (const auto* line : {"salt to taste", "juice of half a lemon", "", "for the filling:"})
        CHECK(as_ingredient_line(line) == line);
}
