#include "compiler/cards/chart.hpp"
#include "compiler/cards/fingerprint.hpp"

#include "../recipe/reading.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/ingredients/table.hpp"

/// What a measure of each ingredient weighs, as a table and as a card for the wall.
namespace benchcard::testing {

namespace {

const ingredients::entry* entry_of(const std::string& name) {
    return ingredients::built_in_table().find(name, ingredients::country::any).match;
}

} // namespace

TEST_CASE("a chart has each ingredient once, by name, and none whose density is not known") {
    const auto* flour = entry_of("plain flour");
    const auto* sugar = entry_of("caster sugar");
    const auto rows =
        cards::chart_of({flour, sugar, flour, entry_of("duck egg")}, measures::system::us);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].what ==
          std::min(flour, sugar, [](auto* a, auto* b) { return a->name < b->name; }));
    REQUIRE(rows[0].what != rows[1].what);
    const auto& row = rows[0].what == flour ? rows[0] : rows[1];
    CHECK(row.cup->used == 125); // SR28, NDB 20081
    CHECK(row.tablespoon->used == exact(125, 16));
    CHECK(row.teaspoon->used == exact(125, 48));
}

TEST_CASE("a chart is in the measures asked for") {
    const auto metric = cards::chart_of({entry_of("caster sugar")}, measures::system::metric);
    // 200 g in a US cup of 236.5882365 ml (SR28, NDB 19335) is 211 g in 250 ml.
    CHECK(metric.front().cup->used == 200 * 250 / exact(473176473, 2000000));
    const auto british = cards::chart_of({entry_of("caster sugar")}, measures::system::uk);
    CHECK_FALSE(british.front().cup.has_value());
    CHECK(british.front().tablespoon.has_value());
    CHECK(cards::chart_card(british, measures::system::uk, "").table.headings.size() == 2);
}

TEST_CASE("the chart as text and as a card say the same") {
    const auto rows = cards::chart_of({entry_of("plain flour")}, measures::system::us);
    CHECK(cards::chart_text(rows, measures::system::us) ==
          "What a measure weighs, in grams (cup 236.6 ml, tbsp 14.8 ml, tsp 4.9 ml)\n"
          "Level measures. A range is what filling the cup in other ways gives, where that\n"
          "is more than 5 %.\n"
          "\n"
          "               cup   tbsp    tsp  a cup      source\n"
          "plain flour    125    7.8    2.6  113–142    SR28, NDB 20081\n"
          "\n"
          "SR28: USDA National Nutrient Database for Standard Reference, Release 28 (2015)\n");
    const auto card = cards::chart_card(rows, measures::system::us, "House list");
    REQUIRE(card.table.rows.size() == 1);
    CHECK(card.table.rows[0].name == "plain flour");
    CHECK(card.table.rows[0].remark == "(113–142 a cup)");
    CHECK(card.table.rows[0].figures == std::vector<std::string>{"125", "7.8", "2.6"});
    auto other = card;
    other.table.rows[0].figures[0] = "126";
    CHECK(cards::fingerprint_of(other) != cards::fingerprint_of(card));
}

} // namespace benchcard::testing
