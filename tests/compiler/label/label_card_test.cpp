#include "compiler/label/label_card.hpp"

#include "compiler/batch/batch.hpp"

#include "../recipe/reading.hpp"

#include <catch2/catch.hpp>

/// The label to print.
namespace benchcard::testing {

namespace {

using safety::law;

std::vector<styles::card> cards_of(const std::string& text, law whose,
                                   const std::optional<label::use_by>& date = {},
                                   const char* paper = "a6") {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    return label::cards_of({label::ingredients_of(batch::scale(c->meaning, 1)), whose, date}, "3",
                           *styles::paper_named(paper));
}

/// What is set in bold between stars.
std::string shown(const styles::paragraph& p) {
    std::string result;
    for (const auto& run : p) result += run.strong ? "*" + run.text + "*" : run.text;
    return result;
}

const std::string crumble = "recipe: Crème crumble\n100 g crème fraîche\n90 g plain flour\n80 g "
                            "dark chocolate\n40 g rye flour\n";

} // namespace

TEST_CASE("a label is a card for each law, its allergens in bold capitals") {
    const auto cards = cards_of(crumble, law::both);
    REQUIRE(cards.size() == 2);
    CHECK(cards[0].title == "Crème crumble");
    CHECK(cards[0].recipe == "EU and UK form (Reg. (EU) No 1169/2011)");
    REQUIRE(cards[0].notes.size() == 1);
    CHECK(shown(cards[0].notes.front()) ==
          "Ingredients: crème fraîche (*MILK*) 32 %, plain flour (*WHEAT*), dark chocolate, *RYE* "
          "flour.");
    CHECK(cards[1].recipe == "US form (21 CFR 101.4)");
    CHECK(shown(cards[1].notes.front()) ==
          "Ingredients: crème fraîche (*MILK*), plain flour (*WHEAT*), dark chocolate, rye "
          "flour.");
    CHECK(cards[0].number == "label 1 of 2");
    CHECK(cards[0].fingerprint != cards[1].fingerprint);
    CHECK(cards_of(crumble, law::us).size() == 1);
}

TEST_CASE("a label names the packets to read and what may be in it, and never that nothing is") {
    const auto eu = cards_of(crumble, law::eu).front();
    CHECK(shown(eu.allergens) == "Check the packet of: dark chocolate.");
    const auto us = cards_of(crumble, law::us).front();
    CHECK(shown(us.allergens) == "Contains: *MILK*, *WHEAT*. Check the packet of: dark chocolate.");
    const auto may = cards_of("recipe: Dust\n10 g house mix\ningredient: house mix\ncontains: "
                              "milk\nmay-contain: sesame, milk\n",
                              law::eu)
                         .front();
    CHECK(shown(may.allergens) == "May contain: *sesame*.");
    CHECK(shown(cards_of("recipe: Ice\n10 g ice\n", law::eu).front().allergens).empty());
}

TEST_CASE("every label says that it is a draft") {
    for (const auto& card : cards_of(crumble, law::both)) {
        CHECK(card.batch == "DRAFT");
        REQUIRE(card.cautions.size() == 1);
        CHECK_THAT(shown(card.cautions.front()),
                   Catch::StartsWith("A draft for the person responsible"));
    }
}

TEST_CASE("what the title names and stands in several places has its share beside the name") {
    const std::string twice = "recipe: Almond slices\ncomponent: Base\n80 g plain flour\n20 g "
                              "ground almonds\nassembly: Slices\nall Base\n100 g flaked "
                              "almonds\n";
    CHECK(cards_of(twice, law::eu).front().yield == "almond 60 %");
    CHECK(cards_of(twice, law::us).front().yield.empty());
}

TEST_CASE("a label has its date, or a blank for it") {
    const label::use_by known{label::date_in("2026-04-07"), "because"}, unknown{{}, "because"};
    CHECK(shown(cards_of(crumble, law::eu, known).front().keeping) == "Use by *2026-04-07*");
    CHECK(cards_of(crumble, law::eu, known).front().made_label.empty());
    for (const auto& date : {std::optional(unknown), std::optional<label::use_by>()}) {
        CHECK(cards_of(crumble, law::eu, date).front().keeping.empty());
        CHECK(cards_of(crumble, law::eu, date).front().made_label == "Use by");
    }
}

TEST_CASE("small letters stand as high as the law asks on a label of that size") {
    // Reg. (EU) No 1169/2011, Art. 13(2) and (3), after its French text: 1.2 mm; 0.9 mm where the
    // largest surface is under 80 cm².
    CHECK(label::least_x_height({"", 100, 80}) == 1.2);
    CHECK(label::least_x_height({"", 100, 79.9}) == 0.9);
    CHECK(label::least_x_height(*styles::paper_named("a7")) == 0.9); // 77.7 cm²
    CHECK(label::least_x_height(*styles::paper_named("3x5")) == 1.2);
    // The label may be smaller than the pack.
    CHECK(cards_of(crumble, law::eu, {}, "a7").front().cautions.size() == 2);
    CHECK(cards_of(crumble, law::us, {}, "a7").front().cautions.size() == 1);
}

} // namespace benchcard::testing
