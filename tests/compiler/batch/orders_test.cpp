#include "compiler/batch/orders.hpp"

#include "../recipe/reading.hpp"
#include "compiler/batch/fit.hpp"
#include "grammar/parse.hpp"

#include <cmath>
#include <rapidcheck/catch.h>

/// The ways to order, and how components are fitted to an order.
namespace benchcard::testing {

namespace {

/// 12 tarts take 24 of 30 rounds, and 1.2 of 1.5 l.
const std::string whole_tarts =
    "recipe: Tarts\nmakes: 12 tarts\n"
    "component: Pastry\nmakes: 30 rounds of 25 g\nkeeps: 3 days chilled\n500 g plain flour\n"
    "250 g unsalted butter\n3 large eggs\n"
    "component: Cream\nmakes: 1.5 l\n1 l whole milk\n400 g caster sugar\n5 large eggs\n"
    "assembly: Tarts\nper: 1 tart\ntin: 23 cm round\n2 rounds Pastry\n100 ml Cream\n"
    "30 g raspberries\n5 g unsalted butter\nsome icing sugar\n";

const std::string cake = "recipe: Cake\nmakes: 2 cakes\ntin: 23 cm round\n400 g plain flour\n"
                         "400 g unsalted butter\n400 g caster sugar\n8 large eggs\n";

const std::string bread = "recipe: Bread\nmakes: 10 loaves\n"
                          "component: Poolish\nmakes: 1000 g\npercent: flour\n500 g strong white "
                          "flour\n500 g water\n"
                          "component: Dough\nmakes: 10 pieces of 300 g\npercent: flour\n"
                          "1300 g strong white flour\n200 g dark rye flour\n500 g Poolish\n"
                          "1000 g water\n"
                          "assembly: Loaves\nper: 1 loaf\n1 piece Dough\n";

batch::order make_of(const std::string& said) {
    const grammar::source text(0, "order", said);
    const auto wanted = grammar::parse_yield(text);
    INFO(said);
    REQUIRE(wanted.made);
    return batch::to_make{*wanted.made};
}

batch::order make_component(const std::string& amount, const std::string& name) {
    auto order = make_of(amount);
    std::get<batch::to_make>(order).of = name;
    return order;
}

batch::order from(const std::vector<std::string>& all) {
    batch::from_stock result;
    for (const auto& said : all) {
        const grammar::source text(0, "order", said);
        const auto line = grammar::parse_ingredient_line(text).line;
        INFO(said);
        REQUIRE(line);
        result.have.push_back(*line);
    }
    return result;
}

batch::order tin(const std::string& said) {
    const auto t = grammar::parse_tin(grammar::source(0, "order", said));
    INFO(said);
    REQUIRE(t);
    return batch::in_tin{*t};
}

using fit = batch::fit;

batch::batch made(const recipe::recipe& r, const batch::order& order, fit how = fit::need) {
    auto b = batch::batch_for(r, order, how);
    if (const auto* no = std::get_if<batch::refusal>(&b)) FAIL(no->message);
    return std::get<batch::batch>(std::move(b));
}

std::string refused(const recipe::recipe& r, const batch::order& order) {
    const auto b = batch::batch_for(r, order, fit::need);
    const auto* no = std::get_if<batch::refusal>(&b);
    return no ? no->message : "";
}

std::string reckoned(const batch::batch& b) {
    std::string result;
    for (const auto& text : b.reckoning) result += text + "\n";
    return result;
}

/// What a batch takes of an ingredient, in grams.
exact taken(const batch::batch& b, const std::string& name) {
    exact total = 0;
    for (const auto& c : b.components)
        for (const auto& l : c.lines)
            if (l.of->name == name && l.grams) total += l.grams->used;
    return total;
}

exact any_factor() {
    const int below = *rc::gen::element(1, 2, 3, 4, 7, 16, 100);
    return exact(*rc::gen::inRange(1, 20 * below), below);
}

} // namespace

TEST_CASE("of each component what is needed is made") {
    const auto c = compiled(whole_tarts);
    const auto b = made(c->meaning, make_of("24 tarts"));
    CHECK(b.factor == 2);
    CHECK(b.components[0].factor == exact(2 * 24, 30));
    CHECK(*b.components[0].pieces == 48);
    CHECK(*b.components[0].left_pieces == 0);
    CHECK(b.components[1].factor == exact(2 * 4, 5));
    CHECK(*b.components[1].left_grams == 0);
}

TEST_CASE("the written batch is made as written where nothing is ordered") {
    const auto c = compiled(whole_tarts);
    const auto b = batch::batch_for(c->meaning, batch::as_written{}, std::nullopt);
    CHECK(std::get<batch::batch>(b).components[0].factor == 1);
    CHECK(*std::get<batch::batch>(b).components[0].left_pieces == 6);
}

TEST_CASE("an order that comes to part of a piece names those beside it that do not") {
    const auto c = compiled(whole_tarts); // 12 tarts
    CHECK(made(c->meaning, batch::scaled{exact(9, 8)}).reckoning ==
          std::vector<std::string>{"13½ tarts: for whole ones order 13, × 1.083, or 14, × 1.167"});
    CHECK(made(c->meaning, batch::scaled{exact(1, 24)}).reckoning ==
          std::vector<std::string>{"½ tart: for whole ones order 1, × 0.083"});
    CHECK(made(c->meaning, batch::scaled{exact(5, 4)}).reckoning.empty());
}

TEST_CASE("whole batches leave the rest over") {
    const auto c = compiled(whole_tarts);
    const auto b = made(c->meaning, make_of("20 tarts"), fit::whole);
    CHECK(b.factor == exact(5, 3)); // the assembly is put together as ordered
    CHECK(b.components[0].factor == 2);
    CHECK(*b.components[0].left_pieces == 20);
    CHECK(b.components[1].factor == 2);
    const auto simple = made(compiled(cake)->meaning, make_of("3 cakes"), fit::whole);
    CHECK(simple.factor == 2);
    CHECK(*simple.components.back().left_pieces == 1);
}

TEST_CASE("a mix that is made whole or not at all is made whole") {
    auto text = whole_tarts;
    text.replace(text.find("keeps: 3"), 0, "whole-batch: yes\n");
    const auto c = compiled(text);
    const auto b = made(c->meaning, make_of("5 tarts"));
    CHECK(b.components[0].factor == 1);
    CHECK(*b.components[0].left_pieces == 20);
    CHECK(b.components[1].factor == exact(1, 3));
}

TEST_CASE("a bowlful that is meant to be used up keeps what stays in the bowl") {
    const auto c = compiled("recipe: A\nmakes: 2 cakes\ncomponent: Cream\nmakes: 810 g\n810 g "
                            "double cream\nassembly: A\n800 g Cream\n");
    CHECK(made(c->meaning, batch::scaled{3}).components[0].factor == 3);
}

TEST_CASE("pieces of a component, or so much of it, order the whole recipe") {
    const auto c = compiled(whole_tarts);
    const auto& r = c->meaning;
    CHECK(made(r, make_of("24 rounds")).factor == 1);
    CHECK(*made(r, make_of("36 rounds")).components[0].pieces == 36);
    CHECK(*made(r, make_of("36 rounds Pastry")).components[0].pieces == 36);
    CHECK(*made(r, make_component("300 g", "pastry")).components[0].made_grams == 300);
    CHECK(made(r, make_component("600 ml", "Cream")).factor == exact(1, 2));
    CHECK(reckoned(made(r, make_of("36 rounds"))) ==
          "Pastry: 36 rounds, where the recipe takes 24 rounds: × 1.5\n");
    CHECK(refused(r, make_of("36 buns")) == "the recipe makes tarts, not buns");
    CHECK(refused(r, make_component("300 g", "Custard")) ==
          "the recipe has no component called `Custard`; it has Pastry, Cream, Tarts");
    CHECK(refused(r, make_of("3 pots Cream")) ==
          "Cream makes 1731 g, so it cannot be scaled to 3 pots Cream");
}

TEST_CASE("what is there allows so much") {
    const auto c = compiled(whole_tarts);
    const auto& r = c->meaning;
    // 24 of 30 rounds take 200 g, and 12 tarts 60 g more: 21⅔ g a tart
    const auto b = made(r, from({"400 g butter"}));
    CHECK(*b.components.back().pieces == 18);
    CHECK(taken(b, "unsalted butter") == 390);
    CHECK(reckoned(b) == "18 tarts, limited by the butter\n"
                         "butter: 400 g there, 390 g needed, 10 g left\n");
    // eggs: 24/30 of 3 and 4/5 of 5 are 6.4 for 12 tarts
    CHECK(*made(r, from({"3 eggs"})).components.back().pieces == 5);
    CHECK(reckoned(made(r, from({"400 g butter", "3 eggs"}))) ==
          "5 tarts, limited by the eggs\nbutter: 400 g there, 108 g needed, 292 g left\n"
          "eggs: 3 there, 2⅔ needed, ⅓ left\n");
    CHECK(refused(r, from({"1 egg yolk"})) !=
          ""); // which no line is, though its name ends in no egg
    CHECK(refused(r, from({"20 g butter"})) == "20 g butter is not enough: 1 tart takes 22 g");
    CHECK(refused(r, from({"20 g honey"})) ==
          "the recipe uses no honey; it uses plain flour, butter, egg, whole milk, caster sugar, "
          "raspberry");
    CHECK(refused(r, from({"200 g icing sugar"})) ==
          "the recipe uses some icing sugar, and not so much of it");
    CHECK(refused(r, from({"200 g Cream"})) ==
          "Cream is made here, and --from takes what it is made of");
    // Bare flour is plain flour's own name.
    CHECK(refused(compiled("recipe: A\n100 g plain flour\n50 g dark rye flour\n")->meaning,
                  from({"200 g flour"})) == "");
    CHECK(refused(r, from({"200 g butter", "100 g unsalted butter"})) ==
          "butter and unsalted butter are the same here: give it once");
}

TEST_CASE("milk by the litre allows as much as by its weight") {
    const auto c = compiled("recipe: A\nmakes: 2 kg\n1 l whole milk\n1 kg caster sugar\n");
    CHECK(made(c->meaning, from({"500 ml whole milk"})).factor == exact(1, 2));
    CHECK(made(c->meaning, from({"250 g caster sugar"})).factor == exact(1, 4));
}

TEST_CASE("never more than is there, and one piece more would be") {
    for (const auto& text : {whole_tarts, cake}) {
        const auto c = compiled(text);
        for (const auto how : {fit::need, fit::written, fit::whole})
            rc::prop("butter and eggs", [&] {
                const int butter = *rc::gen::inRange(1, 5000), flour = *rc::gen::inRange(1, 5000);
                const auto order = from({std::to_string(butter) + " g unsalted butter",
                                         std::to_string(flour) + " g plain flour"});
                const auto b = batch::batch_for(c->meaning, order, how);
                const auto too_much = [&](const batch::batch& one) {
                    return taken(one, "unsalted butter") > butter ||
                           taken(one, "plain flour") > flour;
                };
                const exact step = 1 / c->meaning.product().made.pieces->used;
                const auto* some = std::get_if<batch::batch>(&b);
                const auto factor =
                    some ? std::get<batch::answer>(batch::answer_to(c->meaning, order, how)).factor
                         : exact(0);
                if (some) RC_ASSERT(!too_much(*some));
                RC_ASSERT(too_much(batch::scale_each(
                    c->meaning, batch::factors_for(c->meaning, factor + step, how))));
            });
    }
}

TEST_CASE("a tin of another size has the ratio of plain geometry") {
    const auto c = compiled(cake);
    const auto b = made(c->meaning, tin("20 cm round"));
    CHECK(b.factor == exact(400, 529)); // (20 / 23)²
    CHECK(*b.components[0].pieces == 2);
    CHECK(reckoned(b) ==
          "23 cm round holds 415 cm², 20 cm round 314 cm²: × 0.756, filled as deep\n");
    const auto sides = made(c->meaning, tin("20 x 30 cm")).factor;
    CHECK(std::abs(approximately(sides) - 600 / (23 * 23 * std::acos(-1.0) / 4)) < 1e-9);
    CHECK(std::abs(approximately(made(c->meaning, tin("8 in square")).factor) -
                   20.32 * 20.32 / (23 * 23 * std::acos(-1.0) / 4)) < 1e-9);
    CHECK(refused(c->meaning, tin("900 g loaf")) ==
          "23 cm round and 900 g loaf cannot be compared: the recipe's tin is given by its size "
          "across, and this one by the weight of its loaf");
    CHECK(refused(compiled("recipe: A\n100 g plain flour\n")->meaning, tin("20 cm round")) ==
          "the recipe names no tin, so there is none to compare with");
    const auto loaf = compiled("recipe: L\nmakes: 2 loaves\ntin: 900 g loaf\n1.6 kg plain flour\n");
    CHECK(made(loaf->meaning, tin("450 g loaf")).factor == exact(1, 2));
    CHECK(*made(loaf->meaning, tin("450 g loaf")).components[0].pieces == 2);
}

TEST_CASE("of buns in a tin the number changes, and of tarts the size") {
    const auto buns = compiled("recipe: B\nmakes: 24 buns\ntin: 20 x 30 cm\n1.6 kg plain flour\n");
    CHECK(*made(buns->meaning, tin("20 x 20 cm")).components[0].pieces == 16);
    const auto c = compiled(whole_tarts);
    const auto b = made(c->meaning, tin("20 cm round"));
    CHECK(*b.components.back().pieces == 12);
    CHECK(*b.components[0].pieces == 24);
    CHECK(b.components.back().lines[0].count->used == 24);
    CHECK(*b.components[0].left_pieces == 0);
    CHECK(b.components[0].each == exact(400, 529));
}

TEST_CASE("flour orders the dough, and the flour of its preferment counts") {
    const auto c = compiled(bread);
    // half the poolish is used: 250 + 1300 + 200
    const auto b = made(c->meaning, batch::of_base{3500});
    CHECK(b.factor == 2);
    CHECK(taken(b, "strong white flour") + taken(b, "dark rye flour") == 3500);
    CHECK(reckoned(b) == "flour: 3500 g, where the recipe takes 1750 g: × 2\n");
    CHECK(refused(compiled(cake)->meaning, batch::of_base{3500}) ==
          "no component says what its percentages are of, so there is no flour to order by");
}

TEST_CASE("fitted to what is needed, scaling composes, and demand never exceeds what is made") {
    for (const auto& text : {whole_tarts, bread, cake}) {
        const auto c = compiled(text);
        rc::prop("composes", [&] {
            const exact a = any_factor(), b = any_factor();
            const auto once = batch::factors_for(c->meaning, a, fit::need);
            const auto both = batch::factors_for(c->meaning, a * b, fit::need);
            for (std::size_t i = 0; i < once.size(); ++i) RC_ASSERT(once[i] * b == both[i]);
        });
        for (const auto how : {fit::written, fit::need, fit::whole})
            rc::prop("there is enough", [&] {
                const auto made = batch::scale_each(
                    c->meaning, batch::factors_for(c->meaning, any_factor(), how));
                for (const auto& one : made.components) {
                    if (one.left_pieces) RC_ASSERT(*one.left_pieces >= 0);
                    if (one.left_grams) RC_ASSERT(*one.left_grams >= 0);
                }
            });
    }
}

} // namespace benchcard::testing
