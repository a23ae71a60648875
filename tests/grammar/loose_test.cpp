#include "grammar/loose.hpp"
#include "grammar/loose_rules.hpp"
#include "grammar/parse.hpp"

#include <catch2/catch.hpp>
#include <tao/pegtl/contrib/analyze.hpp>

using namespace benchcard::grammar;

TEST_CASE("no rule for pasted lines can loop without reading") {
    CHECK(tao::pegtl::analyze<loose::first_look>(-1) == 0);
    CHECK(tao::pegtl::analyze<loose::form>(-1) == 0);
}

namespace {

void becomes(std::string_view pasted, std::string_view line) {
    CAPTURE(pasted);
    CHECK(as_ingredient_line(pasted) == line);
    const source text(0, "line", std::string(line));
    CHECK(parse_ingredient_line(text).line.has_value());
}

} // namespace

TEST_CASE("pasted lines become lines of the language") {
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
    becomes("[ ] 3 eggs", "3 eggs");
}

TEST_CASE("amounts in words become figures") {
    becomes("one cup milk", "1 cup milk");
    becomes("Three large eggs", "3 large eggs");
    becomes("a quarter of a cup caster sugar", "1/4 cup caster sugar");
    becomes("quarter teaspoon fine salt", "1/4 teaspoon fine salt");
    becomes("pinch of salt", "1 pinch of salt");
    becomes("tsp. baking powder", "1 tsp. baking powder");
    becomes("heaped tsp baking powder", "1 heaped tsp baking powder");
    becomes("scant 1 cup milk", "1 scant cup milk");
    becomes("a dozen eggs", "a dozen eggs");
}

TEST_CASE("of two measures of one thing the weight is what counts, and the metric one of two") {
    becomes("250 g (2 cups) plain flour", "2 cups = 250 g plain flour");
    becomes("250g/2 cups plain flour", "2 cups = 250g plain flour");
    becomes("2 cups / 250 g plain flour", "2 cups = 250 g plain flour");
    becomes("8 oz/225 g butter, soft", "225 g butter, soft");
    becomes("225 g / 8 oz butter", "225 g butter");
    becomes("1 cup (8 oz / 225 g) butter", "1 cup = 225 g butter");
    becomes("1 cup (8 oz) butter", "1 cup = 8 oz butter");
    becomes("1 cup (240 ml) milk", "240 ml milk");
    becomes("1 cup plain flour (125 g), sifted", "1 cup = 125 g plain flour, sifted");
    becomes("250 g plain flour (about 2 cups)", "2 cups = 250 g plain flour");
    becomes("2 large eggs (100 g)", "2 = 100 g large eggs");
    becomes("1 packet (7 g) dried yeast", "1 packet = 7 g dried yeast");
    becomes("1 1/2 cups (180 g) rye flour", "1 1/2 cups = 180 g rye flour");
}

TEST_CASE("tins of a size") {
    becomes("1 15-oz can pumpkin", "1 x 15 oz can pumpkin");
    becomes("2 tins (400 g each) tomatoes", "2 x 400 g tomatoes");
    becomes("1 1/2 lb beef", "1 1/2 lb beef");
}

TEST_CASE("the amount behind the ingredient, and fruit's juice") {
    becomes("Plain flour: 200 g", "200 g Plain flour");
    becomes("plain flour - 200g", "200g plain flour");
    becomes("eggs: 3", "3 eggs");
    becomes("juice of half a lemon", "half a lemon juice");
    becomes("zest of 2 oranges", "2 oranges zest");
    becomes("Juice from 1 lime", "1 lime Juice");
}

TEST_CASE("what is no amount of anything stays as it was") {
    for (const auto* line : {"salt to taste", "juice and zest of a lemon", "",
                             "for the filling:", "1/ tsp salt", "1 1/", "1/x"})
        CHECK(as_ingredient_line(line) == line);
}
