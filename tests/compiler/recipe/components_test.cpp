#include "compiler/recipe/demand.hpp"
#include "reading.hpp"

#include <rapidcheck/catch.h>

/// What components make of what goes into them, and what of that is used.
namespace benchcard::testing {

namespace {

/// A dough of 1000 g with some settings, and an assembly with these.
std::string dough(const std::string& settings, const std::string& assembly = "") {
    auto text =
        "recipe: Buns\ncomponent: Dough\n" + settings + "\n600 g plain flour\n400 g water\n";
    if (!assembly.empty()) text += "assembly: Buns\n" + assembly + "\n";
    return text;
}

const recipe::component& made(const commands::compiled& c) { return component_of(c, "Dough"); }

recipe::demand demand_of(const commands::compiled& c, const std::string& title) {
    for (std::size_t i = 0; i < c.meaning.components.size(); ++i)
        if (c.meaning.components[i].title == title) return recipe::demands_of(c.meaning)[i];
    FAIL("no component " << title);
    return {};
}

} // namespace

TEST_CASE("what goes in, less what is lost before portioning, is there to portion") {
    const auto c =
        compiled(dough("loss: 2% in the bowl\nloss: 10% in the oven\nmakes: 19 rounds of 50 g"));
    CHECK(kinds_of(*c).empty());
    CHECK(made(*c).mix->used == 1000);
    CHECK(made(*c).ready->used == 980);
    CHECK(made(*c).made.grams->used == 950);
    CHECK(made(*c).baked->used == 855);
}

TEST_CASE("losses come one after the other") {
    const auto c = compiled(dough("loss: 10% in the pan\nloss: 10% in the bowl"));
    CHECK(made(*c).ready->used == 810);
    const auto range = compiled(dough("loss: 10-20% in the pan"));
    CHECK(made(*range).ready->low == 800);
    CHECK(made(*range).ready->used == 850);
    CHECK(made(*range).ready->high == 900);
}

TEST_CASE("losses of the oven, the fryer, the griddle and on cooling come after portioning") {
    for (const auto* place : {"in the oven", "in the fryer", "on cooling", "in baking",
                              "on the griddle", "in the steamer"}) {
        const auto c =
            compiled(dough("loss: 10% " + std::string(place) + "\nmakes: 20 rounds of 50 g"));
        INFO(place);
        CHECK(made(*c).ready->used == 1000);
        CHECK(made(*c).baked->used == 900);
    }
    for (const auto* place : {"in the bowl", "in the pan", "in the sieve"}) {
        const auto c = compiled(dough("loss: 10% " + std::string(place)));
        INFO(place);
        CHECK(made(*c).ready->used == 900);
        CHECK(made(*c).baked->used == 900);
    }
}

TEST_CASE("what a component makes may be stated in five ways") {
    const auto whole = compiled(dough("makes: 1 kg"));
    CHECK(made(*whole).made.grams->used == 1000);
    CHECK_FALSE(made(*whole).made.pieces);

    const auto volume = compiled(dough("makes: 1.2 l"));
    CHECK(*made(*volume).made.ml == 1200);
    CHECK(made(*volume).made.grams->used == 1000);

    const auto count_and_weight = compiled(dough("makes: 40 rounds of 22 g"));
    CHECK(made(*count_and_weight).made.pieces->used == 40);
    CHECK(made(*count_and_weight).made.each->used == 22);
    CHECK(made(*count_and_weight).made.grams->used == 880);
    CHECK(made(*count_and_weight).made.piece == "round");

    const auto weight_alone = compiled(dough("makes: rounds of 22 g"));
    CHECK(made(*weight_alone).made.pieces->used == 45); // 1000 ÷ 22 = 45.45
    CHECK(made(*weight_alone).made.grams->used == 990);

    const auto count_alone = compiled(dough("makes: 40 rounds"));
    CHECK(made(*count_alone).made.each->used == 25);
    CHECK(made(*count_alone).made.grams->used == 1000);

    const auto range = compiled(dough("makes: 40 rounds of 20-22 g"));
    CHECK(made(*range).made.each->low == 20);
    CHECK(made(*range).made.each->used == 21);
    CHECK(made(*range).made.grams->used == 840);

    const auto unstated = compiled(dough(""));
    CHECK(made(*unstated).made.grams->used == 1000);
}

TEST_CASE("a mix that is too small says so, by more than 1 %") {
    CHECK(kinds_of(*compiled(dough("makes: 1010 g"))).empty());
    const auto c = compiled(dough("loss: 2% in the bowl\nmakes: 40 rounds of 25 g"));
    REQUIRE(kinds_of(*c) == kinds{"mix-too-small"});
    CHECK(c->messages.front().level == grammar::severity::error);
    CHECK(c->messages.front().message == "40 rounds of 25 g need 1000 g, and the mix gives 980 g");
    const auto remarks = remarks_of(c->messages.front());
    CHECK_THAT(remarks, Catch::Contains("the ingredients weigh 1000 g, less 2 % in the bowl"));
    CHECK_THAT(remarks, Catch::Contains("980 g make 39 rounds of 25 g, or 40 of 24 g"));
    CHECK(kinds_of(*compiled(dough("makes: rounds of 1200 g"))) == kinds{"mix-too-small"});
    // 120 g of flour may be 136 as a cup is filled: a warning.
    const auto doubtful = compiled(with_lines("makes: 135 g\n1 cup plain flour", "measures: us\n"));
    REQUIRE(kinds_of(*doubtful) == kinds{"mix-too-small"});
    CHECK(doubtful->messages.front().level == grammar::severity::warning);
}

TEST_CASE("one unknown weight, and no check runs on the sum") {
    const auto c = compiled(
        "recipe: Test\ncomponent: Dough\nmakes: 9 kg\n600 g plain flour\n6 wild boar sausages\n");
    CHECK(kinds_of(*c) == kinds{"no-piece-weight"});
    CHECK_FALSE(made(*c).mix);
}

TEST_CASE("amounts per piece are made so many times") {
    const auto c = compiled(
        "recipe: Buns\nmakes: 24 buns\nassembly: Buns\nper: 1 bun\n50 g plain flour\n30 g water\n");
    CHECK(kinds_of(*c).empty());
    CHECK(c->meaning.product().times == 24);
    CHECK(c->meaning.product().mix->used == 24 * 80);
    CHECK(c->meaning.product().made.each->used == 80);
    const auto three =
        compiled("recipe: Buns\nmakes: 24 buns\nassembly: Buns\nper: 3 buns\n50 g plain flour\n");
    CHECK(three->meaning.product().times == 8);
    CHECK(kinds_of(*compiled("recipe: Buns\nassembly: Buns\nper: 1 bun\n50 g plain flour\n")) ==
          kinds{"per-without-makes"});
    CHECK(kinds_of(*compiled(
              "recipe: Buns\nmakes: 24 buns\nassembly: Buns\nper: 1 loaf\n50 g plain flour\n")) ==
          kinds{"per-other-piece"});
}

TEST_CASE("a component is used by pieces, by weight, by share and by volume") {
    const auto by_pieces = compiled(dough("makes: 20 rounds of 50 g", "12 rounds Dough"));
    CHECK(by_pieces->meaning.product().lines.front().grams->used == 600);
    CHECK(*demand_of(*by_pieces, "Dough").left_pieces == 8);

    const auto by_weight = compiled(dough("makes: 1 kg", "900 g Dough"));
    CHECK(by_weight->meaning.product().lines.front().grams->used == 900);
    CHECK(*demand_of(*by_weight, "Dough").left_grams == 100);

    const auto half = compiled(dough("makes: 1 kg", "half Dough"));
    CHECK(half->meaning.product().lines.front().grams->used == 500);
    CHECK(*demand_of(*half, "Dough").left_grams == 500);

    const auto all = compiled(dough("makes: 1 kg", "all Dough"));
    CHECK(all->meaning.product().lines.front().grams->used == 1000);
    CHECK(*demand_of(*all, "Dough").left_grams == 0);

    const auto by_volume = compiled(dough("makes: 1 l", "250 ml Dough"));
    CHECK(by_volume->meaning.product().lines.front().grams->used == 250);
    CHECK(*demand_of(*by_volume, "Dough").left_grams == 750);

    const auto whole = compiled(dough("makes: 1 kg", "1 Dough"));
    CHECK(kinds_of(*whole).empty());
    CHECK(*demand_of(*whole, "Dough").left_grams == 0);

    for (const auto* c : {&by_pieces, &by_weight, &half, &all, &whole})
        CHECK(kinds_of(**c).empty());
    CHECK(kinds_of(*by_volume) == kinds{"much-left-over"});
}

TEST_CASE("a piece that was baked before it is used weighs what the oven left") {
    const auto c =
        compiled(dough("makes: 20 shells of 50 g\nloss: 30% in the oven", "20 shells Dough"));
    CHECK(c->meaning.product().lines.front().grams->used == 700);
    CHECK(*demand_of(*c, "Dough").left_pieces == 0);
}

TEST_CASE("a piece that a component does not make is an error") {
    CHECK(kinds_of(*compiled(dough("makes: 20 rounds of 50 g", "12 squares Dough"))) ==
          kinds{"unknown-piece"});
    CHECK(kinds_of(*compiled(dough("makes: 1 kg", "12 squares Dough"))) == kinds{"unknown-piece"});
}

TEST_CASE("shares of many users add up") {
    const auto c =
        compiled("recipe: Two\ncomponent: Base\nmakes: 1 kg\n1 kg water\ncomponent: One\nhalf "
                 "Base\ncomponent: Other\nhalf Base\nassembly: End\nall One\nall Other\n");
    CHECK(kinds_of(*c).empty());
    CHECK(*demand_of(*c, "Base").left_grams == 0);
    CHECK(demand_of(*c, "Base").users.size() == 2);
    CHECK(c->meaning.product().mix->used == 1000);
}

TEST_CASE("what is made in pieces of a weight is never more than there is to portion") {
    rc::prop("pieces × weight fits, one more does not", [] {
        const int flour = *rc::gen::inRange(50, 5000), each = *rc::gen::inRange(1, 50),
                  loss = *rc::gen::inRange(0, 30);
        const auto c = compiled(
            "recipe: Test\ncomponent: Dough\nmakes: rounds of " + std::to_string(each) + " g\n" +
            (loss > 0 ? "loss: " + std::to_string(loss) + "% in the bowl\n" : "") +
            std::to_string(flour) + " g plain flour\n");
        const auto& m = made(*c);
        const exact ready = exact(flour) * (100 - loss) / 100;
        RC_PRE(ready >= each);
        RC_ASSERT(m.ready->used == ready);
        RC_ASSERT(m.made.pieces->used * each <= ready);
        RC_ASSERT((m.made.pieces->used + 1) * each > ready);
    });
}

} // namespace benchcard::testing
