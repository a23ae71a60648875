#include "compiler/cards/figures.hpp"

#include "../recipe/reading.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/measures/kitchen.hpp"
#include "grammar/parse.hpp"

#include <rapidcheck/catch.h>

/// What a row of the weigh-out shows.
namespace benchcard::testing {

namespace {

styles::weigh_row row_of(const std::string& line, const std::string& head = "",
                         const exact& factor = 1) {
    const auto c = compiled(with_lines(line, head));
    INFO(line);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    return cards::deal(batch::scale(c->meaning, factor)).back().weigh_out.back();
}

std::string amount_of(const std::string& line, const std::string& head = "",
                      const exact& factor = 1) {
    const auto row = row_of(line, head, factor);
    return row.amount + (row.unit.empty() ? "" : " " + row.unit);
}

const std::string us = "measures: us\n";

} // namespace

TEST_CASE("what is poured is in millilitres, what is dry in grams, what is counted in pieces") {
    CHECK(amount_of("1 cup whole milk", us) == "237 ml");
    CHECK(amount_of("250 g whole milk", us) == "250 g");
    CHECK(amount_of("1 cup plain flour", us) == "125 g");
    CHECK(amount_of("3 large eggs", us) == "3");
    CHECK(amount_of("some plain flour") == " some");
    CHECK(amount_of("12 l water") == "12 l");
    CHECK(amount_of("15-20 g natural yogurt", "", 40) == "600–800 g");
    CHECK(amount_of("6 leaves = 10 g leaf gelatine") == "6 leaves");
    CHECK(row_of("6 leaves = 10 g leaf gelatine").preparation == "(10 g)");
    CHECK(amount_of("6 leaves = 10 g leaf gelatine", "", exact(1, 6)) == "1 leaf");
}

TEST_CASE("what is no level measure is shown with the range it may mean") {
    // A US teaspoon holds 6 g of salt (SR28, NDB 02047).
    CHECK(amount_of("1 heaped tsp fine salt", us) == "9 g");
    CHECK(row_of("1 heaped tsp fine salt", us).preparation == "(7.5–12 g as filled)");
    CHECK(row_of("a pinch of fine salt", us).preparation == "(0.3–0.8 g as filled)");
    CHECK(row_of("a dash of fine salt", us).preparation == "(0.3–0.8 g as filled)");
    // ¾ to 1 cup of 236.5882365 ml.
    CHECK(row_of("1 scant cup whole milk", us).preparation == "(177–237 ml as filled)");
    CHECK(row_of("1 cup whole milk", us).preparation == "");
}

TEST_CASE("a box of eggs is no egg") {
    CHECK(row_of("1 large egg", us).preparation == "(50 g)");
    CHECK(row_of("1 box large eggs", us).preparation == "");
    CHECK(row_of("2 dozen large eggs", us).preparation == "(1200 g)");
    CHECK(amount_of("half a dozen large eggs", us) == "6");
}

TEST_CASE("an egg is not halved, a lemon is") {
    const auto egg = row_of("1 large egg", us, exact(1, 2));
    CHECK(egg.amount + egg.unit == "25g");
    CHECK(egg.preparation == "(1 beaten, then weighed)");
    CHECK(amount_of("1 lemon", us, exact(1, 2)) == "½");
}

TEST_CASE("whole eggs are counted and the rest is weighed") {
    // 1.36 eggs of 50 g (US large): 18 g of another.
    const auto egg = row_of("1 large egg", us, exact(34, 25));
    CHECK(egg.amount == "1");
    CHECK(egg.name == "large egg + 18 g beaten egg (weigh it)");
    CHECK(egg.preparation == "(68 g)");
    CHECK(row_of("2 large eggs", us, exact(5, 4)).name ==
          "large eggs + 25 g beaten egg (weigh it)");
    CHECK(row_of("4 egg whites", us, exact(3, 8)).name ==
          "egg white + 17 g beaten egg white (weigh it)"); // half of 33 g
    CHECK(row_of("2 tins = 800 g tomatoes", "", exact(3, 4)).name ==
          "tomatoes + 200 g tomatoes (weigh it)");
    const auto leaf = row_of("6 leaves = 10 g leaf gelatine", "", exact(1, 4));
    CHECK(leaf.amount == "1");
    CHECK(leaf.unit == "leaf");
    CHECK(leaf.name == "leaf gelatine + 0.8 g leaf gelatine (weigh it)");
}

TEST_CASE("sachets of powder are weighed") {
    // 7.2 g a sachet (active dry yeast): 1.37 of them are 9.9 g, out of two.
    const auto row = row_of("1 sachet active dry yeast", "", exact(137, 100));
    CHECK(row.amount + " " + row.unit == "9.9 g");
    CHECK(row.preparation == "(from 2)");
    CHECK(amount_of("1 sachet active dry yeast", "", 2) == "2");
}

TEST_CASE("lemons are cut, and what is near is said to be") {
    const auto lemons = [](const exact& number) { return row_of("1 lemon", us, number); };
    CHECK(lemons(exact(137, 100)).amount == "1⅓"); // 2.7 % less
    CHECK(lemons(exact(137, 100)).preparation == "(79 g)");
    CHECK(lemons(exact(8, 5)).amount == "1⅔"); // 4 % more
    CHECK(lemons(exact(8, 5)).preparation == "(about this many, 93 g in all)");
    CHECK(lemons(exact(127, 10)).amount == "12½");
    CHECK(lemons(exact(244, 10)).amount == "24");
    CHECK(lemons(exact(1, 10)).amount + lemons(exact(1, 10)).unit == "5.8g");
    rc::prop("no counted thing is ever printed in decimals", [] {
        const exact number(*rc::gen::inRange(1, 3000), *rc::gen::inRange(1, 40));
        if (number * 8 < 1) return;
        for (const auto* line : {"1 large egg", "1 lemon", "1 sachet active dry yeast",
                                 "2 sprigs thyme", "1 leaf = 2 g leaf gelatine"}) {
            const auto row = row_of(line, us, number);
            if (row.unit != "g") RC_ASSERT(row.amount.find('.') == std::string::npos);
        }
    });
}

TEST_CASE("amounts are to the step of the house's scale") {
    const auto head = [](const std::string& step) { return us + "scale-step: " + step; };
    CHECK(amount_of("187 g plain flour", head("5 g")) == "185 g");
    CHECK(amount_of("187.3 g plain flour", head("0.1 g")) == "187.3 g");
    CHECK(amount_of("8.1 g fine salt", head("1 g")) == "8 g");
    CHECK(amount_of("12.34 kg plain flour", head("50 g")) == "12.35 kg");
    CHECK(amount_of("187 g plain flour", us) == "187 g");
    // 1.5 g would be a third off on a scale of 1 g: it is spooned.
    const auto salt = row_of("1.5 g fine salt", "scale-step: 1 g\n");
    CHECK(salt.amount == "1.5");
    CHECK(salt.spoons == "¼ tsp");
    // 42 g would be 5 % off on a scale of 5 g, and what a spoon of it weighs is not known.
    CHECK(row_of("42 g leaf gelatine", head("5 g")).preparation == "(finer than the scale's 5 g)");
    rc::prop("on the step and within half of it, or with a spoon or a word", [&] {
        const exact step(*rc::gen::element(1, 2, 5, 10, 20, 50), 10);
        const exact grams(*rc::gen::inRange(1, 99000), 10);
        const auto text = measures::in_decimals(grams, 1) + " g plain flour";
        const auto row = row_of(text, head(measures::in_decimals(step, 1) + " g"));
        const auto shown = *grammar::parse_number(row.amount);
        const bool is_shown = denominator(exact(shown / step)) == 1 &&
                              abs(shown - grams) * 2 <= step &&
                              abs(shown - grams) * 100 <= 3 * grams;
        RC_ASSERT(is_shown || !row.spoons.empty() ||
                  row.preparation.find("finer") != std::string::npos);
    });
}

TEST_CASE("what does not go in at once is made in equal mixes") {
    const auto c = compiled("recipe: Dough\nat-most: 4 kg\n600 g plain flour\n400 g water\n");
    const auto card = cards::deal(batch::scale(c->meaning, exact(62, 10))).front();
    REQUIRE(card.totals.size() == 2);
    CHECK(card.totals[1] ==
          styles::total_row{"2", "mixes", "of 3100 g: no more than 4000 g goes in at once"});
    CHECK(card.weigh_out[0].preparation == "(1860 g a mix)");
    CHECK(card.weigh_out[1].preparation == "(1240 g a mix)");
    CHECK(cards::deal(batch::scale(c->meaning, 4)).front().totals.size() == 1);
}

TEST_CASE("a name is in the number of the batch") {
    CHECK(row_of("1 large egg", us, 4).name == "large eggs");
    CHECK(row_of("2 medium eggs", us, exact(1, 2)).name == "medium egg");
    CHECK(row_of("2 medium eggs", us, 3).name == "medium eggs");
    CHECK(row_of("20 cloves garlic", us, exact(1, 20)).name == "clove garlic");
    CHECK(row_of("1 clove garlic", us, 3).name == "cloves garlic");
    CHECK(row_of("1 bay leaf", us, 2).name == "bay leaves");
    CHECK(row_of("1 lemon or lime", us, 2).name == "lemons or limes");
    CHECK(row_of("200 g eggs", us, exact(1, 200)).name == "eggs");
}

TEST_CASE("a packed cup says that it is packed") {
    CHECK(row_of("1 packed cup light brown sugar", us).spoons == "1 cup packed");
    CHECK(row_of("1 cup light brown sugar", us).spoons == "1 cup");
}

TEST_CASE("cups and ounces of a range are those of its middle, and say so") {
    const auto row = row_of("100-120 g natural yogurt", us);
    CHECK(row.imperial == "about 4 oz"); // 110 g are 3.88 oz
    CHECK(row.spoons.starts_with("about "));
}

TEST_CASE("pieces weigh as they come to the bench") {
    const auto text = [](const std::string& loss) {
        return "recipe: Buns\nmakes: 10 buns\ncomponent: Shells\nmakes: 10 shells of 40 g\n" +
               loss + "400 g butter\nassembly: Buns\nper: 1 bun\n1 shell Shells\n";
    };
    const auto row = [&](const std::string& loss) {
        return cards::deal(batch::scale(compiled(text(loss))->meaning, 1)).back().weigh_out.front();
    };
    CHECK(row("").preparation == "(40 g each)");
    CHECK(row("loss: 35% in the oven\n").preparation == "(26 g each, baked)");
    CHECK(row("").unit == "shells");
}

TEST_CASE("what is over is shown in the measure it is made in") {
    const auto totals = [](const std::string& makes, const std::string& use) {
        const auto c =
            compiled("recipe: Soup\ncomponent: Stock\nmakes: " + makes +
                     "\nkeeps: 3 days chilled\n2 kg water\nassembly: Soup\n" + use + " Stock\n");
        return cards::deal(batch::scale(c->meaning, 1)).front().totals;
    };
    REQUIRE(totals("2 l", "1.5 l").size() == 1);
    CHECK(totals("2 l", "1.5 l").front() ==
          styles::total_row{"500", "ml", "over after this order, keeps 3 days chilled"});
    CHECK(totals("2 kg", "1500 g").front() ==
          styles::total_row{"500", "g", "over after this order, keeps 3 days chilled"});
    CHECK(totals("20 tubs of 100 g", "15 tubs").front() ==
          styles::total_row{"5", "", "tubs over (500 g) after this order, keeps 3 days chilled"});
    CHECK(totals("20 tubs of 100 g", "19 tubs").front() ==
          styles::total_row{"1", "", "tub over (100 g) after this order, keeps 3 days chilled"});
    CHECK(totals("2 kg", "1990 g").empty());
}

TEST_CASE(
    "what a mix gives above what is to be made is shown, if it is more than clings to a bowl") {
    const auto total = [](const std::string& makes) {
        const auto c = compiled("recipe: Dough\ncomponent: Dough\nmakes: " + makes +
                                "\n600 g plain flour\n400 g water\n");
        const auto totals = cards::deal(batch::scale(c->meaning, 1)).front().totals;
        REQUIRE(totals.size() == 1);
        return totals.front().text;
    };
    CHECK(total("975 g") == "mix: 975 g, 25 g over");
    CHECK(total("990 g") == "mix");
    CHECK(total("39 rounds of 25 g") == "mix: 39 rounds of 25 g, 25 g over");
}

TEST_CASE("a number that is worked out from a range of sizes is given for both ends") {
    const auto yield = [](const std::string& makes) {
        const auto c = compiled("recipe: Dough\ncomponent: Dough\nmakes: " + makes +
                                "\n600 g plain flour\n400 g water\n");
        return cards::deal(batch::scale(c->meaning, 1)).front().yield;
    };
    // 1000 ÷ 21 = 47.6, ÷ 22 = 45.5, ÷ 20 = 50
    CHECK(yield("rounds of 20-22 g") == "47 rounds of about 21 g (45 of 22 g to 50 of 20 g)");
    CHECK(yield("rounds of 20 g") == "50 rounds of 20 g");
    CHECK(yield("47 rounds of 20-22 g") == "47 rounds of about 21 g");
}

} // namespace benchcard::testing
