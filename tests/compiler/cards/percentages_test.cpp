#include "compiler/cards/percentages.hpp"

#include "../recipe/reading.hpp"

/// Baker's percentages. Where no source is named they are plain arithmetic.
namespace benchcard::testing {

namespace {

std::optional<cards::percentages> percentages_of(const std::string& text, const exact& factor = 1) {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    const auto b = batch::scale(c->meaning, factor);
    return cards::percentages_of(b.components.back(), b);
}

using list = std::vector<std::string>;

const std::string baguettes =
    "recipe: Baguettes\n"
    "component: Poolish\n468 g strong white flour\n468 g water\n0.3 g instant yeast\n"
    "component: Dough\npercent: flour\n900 g strong white flour\n468 g water\n"
    "9 g instant yeast\n27 g fine salt\n936 g Poolish\n";

} // namespace

TEST_CASE("lines, total and hydration of a plain dough") {
    // 650 ÷ 1000 = 65 %, 20 ÷ 1000 = 2 %, 5 ÷ 1000 = 0.5 %, 1675 ÷ 1000 = 167.5 %
    const auto found =
        percentages_of("recipe: Bread\npercent: flour\n800 g strong white flour\n200 g rye flour\n"
                       "650 g water\n20 g fine salt\n5 g instant yeast\nsome plain flour\n",
                       exact(7, 3));
    REQUIRE(found);
    CHECK(found->of_lines == list{"80 %", "20 %", "65 %", "2 %", "0.5 %", ""});
    CHECK(found->total == styles::total_row{"65", "%",
                                            "hydration: 1517 g water; 167.5 % of 2333 g flour in "
                                            "all"});
}

TEST_CASE("a preferment counts its flour and water into the totals") {
    // A published formula: baguettes with a poolish of 468 g flour and 468 g water in 2340 g of
    // dough; in all 1368 g flour, so 68.4 % water and 2 % salt (wildyeastblog.com, "Baker's
    // Percentage, part 4", read 2026-11-25). 936 ÷ 1368 = 68.4 %, 27 ÷ 1368 = 2 %,
    // 2340 ÷ 1368 = 171.1 %. Its poolish has 0.3 g yeast besides, of which 936 ÷ 936.3 is used:
    // flour 1367.85 g, water 935.85 g.
    const auto found = percentages_of(baguettes);
    REQUIRE(found);
    CHECK(found->of_lines == list{"65.8 %", "34.2 %", "0.66 %", "2 %", "68.4 %"});
    CHECK(found->total == styles::total_row{"68.4", "%",
                                            "hydration: 936 g water; 171.1 % of 1368 g flour in "
                                            "all, 468 g of it in Poolish"});
}

TEST_CASE("of a preferment counts what is used of it") {
    // 100 of 400 g, half flour and half water: 50 g of each; 450 + 50 = 500 g flour, 300 g water.
    const auto found = percentages_of(
        "recipe: Bread\ncomponent: Sponge\n200 g plain flour\n200 g water\n"
        "component: Dough\npercent: flour\n450 g plain flour\n250 g water\n100 g Sponge\n");
    REQUIRE(found);
    CHECK(found->of_lines == list{"90 %", "50 %", "20 %"});
    CHECK(found->total == styles::total_row{"60", "%",
                                            "hydration: 300 g water; 160 % of 500 g flour in all, "
                                            "50 g of it in Sponge"});
}

TEST_CASE("water in milk and eggs makes the hydration a round one") {
    // 88 % of 500 g (rounded, common practice): 440 g to 1000 g.
    const auto found = percentages_of(
        "recipe: Milk bread\npercent: flour\n1 kg strong white flour\n500 g whole milk\n");
    REQUIRE(found);
    CHECK(found->total ==
          styles::total_row{"44", "%", "hydration, about; 150 % of 1000 g flour in all"});
}

TEST_CASE("what is baked, set aside or of another base has no part in it") {
    const auto baked = percentages_of(
        "recipe: Pudding\ncomponent: Bread\nloss: 10% in the oven\n500 g plain flour\n300 g water\n"
        "component: Pudding\npercent: flour\n100 g plain flour\n50 g water\n200 g Bread\n");
    REQUIRE(baked);
    CHECK(baked->of_lines == list{"100 %", "50 %", "200 %"});
    const auto aside = percentages_of("recipe: Dough\npercent: flour\n500 g plain flour\n300 g "
                                      "water\n50 g plain flour, for dusting\n");
    CHECK(aside->total->text == "hydration: 300 g water; 160 % of 500 g flour in all");
    const auto ganache = percentages_of(
        "recipe: Ganache\npercent: chocolate\n200 g dark chocolate\n300 g double cream\n");
    CHECK(ganache->of_lines == list{"100 %", "150 %"});
    CHECK(ganache->total == styles::total_row{"250", "%", "of 200 g chocolate in all"});
    CHECK_FALSE(percentages_of("recipe: Dough\n500 g plain flour\n"));
    CHECK_FALSE(percentages_of("recipe: Dough\npercent: butter\n500 g plain flour\n"));
}

} // namespace benchcard::testing
