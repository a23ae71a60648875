#include "../compiler/recipe/reading.hpp"
#include "compiler/batch/orders.hpp"
#include "compiler/cards/percentages.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/systems.hpp"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

/// Tables that others have published, against what comes out of a whole recipe.
namespace benchcard::testing {

namespace {

using grammar::unit;

/// United States National Institute of Standards and Technology, "Cooking Measurement
/// Equivalencies", https://www.nist.gov/pml/owm/cooking-measurement-equivalencies (as stored
/// 2026): approximate equivalents for cooking at home. It rounds a fluid ounce to 30 ml, which is
/// 1.5 % more than it holds.
struct published_volume {
    std::string amount;
    int ml;
};
const published_volume nist_volumes[] = {
    {"1 tsp", 5},    {"1 tbsp", 15},   {"1 fl oz", 30},  {"1/4 cup", 60},  {"1/3 cup", 80},
    {"3 fl oz", 90}, {"1/2 cup", 120}, {"5 fl oz", 150}, {"3/4 cup", 180}, {"1 cup", 240},
    {"2 cups", 480}, {"1 pint", 480},  {"3 cups", 720},  {"1 quart", 950}, {"1 gallon", 3840}};

struct published_weight {
    std::string amount;
    int grams;
};
const published_weight nist_weights[] = {
    {"1 oz", 28}, {"1/4 lb", 114}, {"4 oz", 114}, {"1 lb", 454}};

const recipe::line& line_of(const commands::compiled& c) {
    return c.meaning.components.front().lines.front();
}

} // namespace

TEST_CASE("US cups and spoons in a recipe are those of NIST's table for cooking") {
    for (const auto& row : nist_volumes) {
        INFO(row.amount);
        const auto c = compiled("recipe: Test\nmeasures: us\n" + row.amount + " water\n");
        const auto& l = line_of(*c);
        REQUIRE(l.ml);
        CHECK(approximately(l.ml->used) == Approx(row.ml).epsilon(0.02));
    }
}

TEST_CASE("ounces and pounds in a recipe are those of NIST's table, to the gram") {
    for (const auto& row : nist_weights) {
        INFO(row.amount);
        const auto c = compiled("recipe: Test\n" + row.amount + " plain flour\n");
        CHECK(approximately(line_of(*c).grams->used) == Approx(row.grams).margin(0.7));
    }
    const auto c = compiled("recipe: Test\n1 kg plain flour\n");
    const exact pounds = line_of(*c).grams->used / measures::weight_of(unit::pound)->value;
    CHECK(measures::in_decimals(pounds, 1) == "2.2");
}

/// The Sourdough School, glossary, "Baker's percentage", https://www.sourdough.co.uk/glossary/
/// bakers-percentage-bakers-math/ (as stored 2026): 1000 g flour, 600 g water, 2 g yeast and 10 g
/// salt are 100 %, 60 %, 0.2 % and 1 %.
TEST_CASE("baker's percentages are those of a published formula, at any size") {
    const auto c =
        compiled("recipe: Bread\npercent: flour\n1000 g strong white flour\n600 g water\n"
                 "2 g fresh yeast\n10 g salt\n");
    for (const auto& factor : {exact(1), exact(1, 3), exact(25)}) {
        const auto b = batch::scale(c->meaning, factor);
        const auto found = cards::percentages_of(b.components.back(), b);
        REQUIRE(found);
        CHECK(found->of_lines == std::vector<std::string>{"100 %", "60 %", "0.2 %", "1 %"});
    }
    const auto ordered = batch::batch_for(c->meaning, batch::of_base{25'000}, {});
    const auto& b = std::get<batch::batch>(ordered);
    CHECK(b.components.back().lines[1].grams->used == 15'000);
    CHECK(b.components.back().lines[3].grams->used == 250);
}

} // namespace benchcard::testing
