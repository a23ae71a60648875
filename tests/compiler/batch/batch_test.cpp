#include "compiler/batch/batch.hpp"

#include "../recipe/reading.hpp"
#include "grammar/parse.hpp"

#include <rapidcheck/catch.h>

/// One recipe and one order: amounts to weigh out.
namespace benchcard::testing {

namespace {

const std::string tarts = "recipe: Tarts\nmakes: 12 tarts\nmeasures: us\n"
                          "component: Pastry\nmakes: 30 rounds of 25 g\nloss: 2% in the bowl\n2 "
                          "cups plain flour\n1 1/3 cups icing sugar\n3 large eggs\n240 g butter\n"
                          "component: Cream\nmakes: 1.5 l\nloss: 5% in the pan\n1 l whole "
                          "milk\n400 g caster sugar\n5-6 large eggs\n"
                          "assembly: Tarts\nper: 1 tart\nloss: 8% in the oven\n2 rounds "
                          "Pastry\n100 ml Cream\nabout 30 g raspberries\n";

batch::order made(const std::string& said) {
    const grammar::source text(0, "order", said);
    const auto wanted = grammar::parse_yield(text);
    INFO(said);
    REQUIRE(wanted.made);
    return batch::to_make{*wanted.made};
}

/// The factor of an order; 0 where it is refused.
exact ordered_factor(const recipe::recipe& r, const batch::order& order) {
    const auto factor = batch::factor_of(r, order);
    const auto* value = std::get_if<exact>(&factor);
    return value ? *value : exact(0);
}

std::string refused(const recipe::recipe& r, const std::string& said) {
    const auto factor = batch::factor_of(r, made(said));
    const auto* no = std::get_if<batch::refusal>(&factor);
    return no ? no->message : "";
}

exact a_factor() {
    const int below = *rc::gen::element(1, 2, 3, 4, 7, 16, 100);
    return exact(*rc::gen::inRange(1, 20 * below), below);
}

/// Every figure of a batch, in order.
std::vector<exact> figures_of(const batch::batch& b) {
    std::vector<exact> all;
    const auto add = [&](const auto& spread) {
        if (spread) all.insert(all.end(), {spread->low, spread->used, spread->high});
    };
    for (const auto& c : b.components) {
        for (const auto& l : c.lines) add(l.grams), add(l.ml), add(l.count);
        for (const auto& value :
             {c.mix, c.ready, c.baked, c.pieces, c.made_grams, c.left_pieces, c.left_grams})
            if (value) all.push_back(*value);
    }
    return all;
}

} // namespace

TEST_CASE("what is ordered gives the factor") {
    const auto c = compiled(tarts);
    REQUIRE(kinds_of(*c).empty());
    const auto& r = c->meaning;
    CHECK(ordered_factor(r, batch::as_written{}) == 1);
    CHECK(ordered_factor(r, batch::scaled{exact(3, 2)}) == exact(3, 2));
    CHECK(ordered_factor(r, made("48 tarts")) == 4);
    CHECK(ordered_factor(r, made("48")) == 4);
    CHECK(ordered_factor(r, made("48 pieces")) == 4);
    CHECK(ordered_factor(r, made("1 tart")) == exact(1, 12));
    CHECK(ordered_factor(r, made("5 tarts")) == exact(5, 12));
    CHECK(ordered_factor(r, made("1 kg")) == 1000 / r.product().made.grams->used);
}

TEST_CASE("an order that does not fit is refused, in words") {
    const auto c = compiled(tarts);
    CHECK(refused(c->meaning, "48 buns") == "the recipe makes tarts, not buns");
    CHECK(refused(c->meaning, "2 l") == "the recipe makes 12 tarts, so it cannot be scaled to 2 l");
    const auto soup = compiled("recipe: Soup\nmakes: 2 l\n2 kg water\n");
    CHECK(ordered_factor(soup->meaning, made("5 l")) == exact(5, 2));
    CHECK(ordered_factor(soup->meaning, made("1 kg")) == exact(1, 2));
    CHECK(refused(soup->meaning, "40 bowls") ==
          "the recipe makes 2000 g, so it cannot be scaled to 40 bowls");
}

TEST_CASE("the written batch has what the recipe says") {
    const auto c = compiled(tarts);
    const auto b = batch::scale(c->meaning, 1);
    REQUIRE(b.components.size() == 3);
    const auto& pastry = b.components[0];
    CHECK(*pastry.mix == 250 + 160 + 150 + 240);
    CHECK(*pastry.ready == 784);
    CHECK(*pastry.made_grams == 750);
    CHECK(*pastry.pieces == 30);
    CHECK(*pastry.left_pieces == 6); // 12 tarts of 2 rounds
    const auto& cream = b.components[1];
    CHECK(*cream.left_grams == *cream.made_grams * exact(300, 1500));
    CHECK(b.components[2].lines[0].count->used == 24);
    CHECK(b.components[2].lines[1].ml->used == 1200);
    CHECK(*b.components[2].pieces == 12);
    CHECK(*b.components[2].baked == *b.components[2].made_grams * 92 / 100);
}

TEST_CASE("scaling by one factor and then another is scaling by both at once") {
    const auto c = compiled(tarts);
    rc::prop("every figure, exactly", [&] {
        const exact a = a_factor(), b = a_factor();
        const auto once = figures_of(batch::scale(c->meaning, a));
        const auto both = figures_of(batch::scale(c->meaning, a * b));
        RC_ASSERT(once.size() == both.size());
        for (std::size_t i = 0; i < once.size(); ++i) RC_ASSERT(once[i] * b == both[i]);
    });
}

TEST_CASE("the lines add up to the mix, in every batch") {
    const auto c = compiled(tarts);
    rc::prop("exactly", [&] {
        for (const auto& component : batch::scale(c->meaning, a_factor()).components) {
            exact sum = 0;
            for (const auto& l : component.lines) sum += l.grams->used;
            RC_ASSERT(sum == *component.mix);
        }
    });
}

TEST_CASE("what is made is what is used and what is left") {
    const auto c = compiled(tarts);
    rc::prop("exactly", [&] {
        const auto b = batch::scale(c->meaning, a_factor());
        const auto& end = b.components.back();
        RC_ASSERT(end.lines[0].count->used + *b.components[0].left_pieces ==
                  *b.components[0].pieces);
        RC_ASSERT(end.lines[1].grams->used + *b.components[1].left_grams ==
                  *b.components[1].made_grams);
    });
}

TEST_CASE("an order makes what was ordered") {
    const auto c = compiled(tarts);
    rc::prop("so many tarts", [&] {
        const int wanted = *rc::gen::inRange(1, 2000);
        const auto factor = ordered_factor(c->meaning, made(std::to_string(wanted) + " tarts"));
        RC_ASSERT(*batch::scale(c->meaning, factor).components.back().pieces == wanted);
    });
    rc::prop("so many grams", [&] {
        const int wanted = *rc::gen::inRange(10, 100000); // a thousandth of it, or more
        const auto factor = ordered_factor(c->meaning, made(std::to_string(wanted) + " g"));
        RC_ASSERT(*batch::scale(c->meaning, factor).components.back().made_grams == wanted);
    });
}

} // namespace benchcard::testing
