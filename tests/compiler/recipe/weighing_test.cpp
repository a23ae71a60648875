#include "compiler/measures/systems.hpp"
#include "reading.hpp"

#include <rapidcheck/catch.h>

/// What lines weigh. Weights of measures are the table's: USDA National Nutrient Database for
/// Standard Reference 28 and GNU units 3.15, whose figures tests/outside holds against the sources.
namespace benchcard::testing {

namespace {

const std::string us = "measures: us\n", uk = "measures: uk\n", metric = "measures: metric\n";
const exact us_cup = exact(2365882365, 10000000); // ml; GNU units 2.22, 1/16 of 231 cubic inches
const exact us_tsp = us_cup / 48;

bool near(const exact& value, const exact& wanted) { return abs(value - wanted) * 1000 <= wanted; }

std::string kind_of(const std::string& line, const std::string& before = "") {
    const auto all = kinds_of(*compiled(with_lines(line, before)));
    return all.empty() ? "" : all.front();
}

} // namespace

TEST_CASE("units of weight are exact") {
    CHECK(grams_of("400 g plain flour") == 400);
    CHECK(grams_of("1.5 kg plain flour") == 1500);
    CHECK(grams_of("500 mg fine salt") == exact(1, 2));
    CHECK(grams_of("1 lb butter") == exact(45359237, 100000));
    CHECK(grams_of("8 oz butter") == exact(45359237, 200000));
    CHECK(grams_of("1 lb 4 oz butter") == exact(45359237, 100000) * 5 / 4);
    CHECK(grams_of("2 x 400 g chopped tomatoes") == 800);
    CHECK(grams_of("1/3 kg butter") * 3 == 1000);
}

TEST_CASE("a cup weighs what its state says") {
    CHECK(grams_of("1 cup plain flour", us) == 125);
    CHECK(grams_of("1 cup sifted plain flour", us) == exact(1133981, 10000));
    CHECK(grams_of("1 cup spooned plain flour", us) == exact(1204855, 10000));
    CHECK(grams_of("1 cup scooped plain flour", us) == exact(1417476, 10000));
    // After the comma it is sifted when it is in the bowl: the cup was filled as ever.
    CHECK(grams_of("1 cup plain flour, sifted", us) == 125);
    CHECK(grams_of("1 cup icing sugar", us) == 120);
    CHECK(grams_of("1 cup sifted icing sugar", us) == 100);
    CHECK(grams_of("1 cup icing sugar, sifted", us) == 120);
    CHECK(grams_of("1 packed cup light brown sugar", us) == 220);
    CHECK(grams_of("1 cup packed light brown sugar", us) == 220);
    CHECK(grams_of("1 cup loose light brown sugar", us) == 145);
    CHECK(grams_of("1 packed cup raisins", us) == 165);
    CHECK(grams_of("1 cup raisins", us) == 145);
    CHECK(grams_of("1 cup chopped hazelnuts", us) == 115);
    CHECK(grams_of("1 cup hazelnuts, chopped", us) == 135);
    CHECK(grams_of("1 cup ground hazelnuts", us) == 75);
    CHECK(grams_of("1 cup flaked almonds", us) == 92);
}

TEST_CASE("spoons and jugs follow the measures") {
    CHECK(grams_of("1 tsp fine salt", us) == 6);
    CHECK(grams_of("1 tsp fine salt") == exact(6) * 5 / us_tsp);
    CHECK(grams_of("1 tsp fine salt", uk) == grams_of("1 tsp fine salt"));
    CHECK(grams_of("1 tbsp fine salt", "measures: australian\n") == exact(6) * 20 / us_tsp);
    CHECK(grams_of("1 l water") == 1000);
    CHECK(grams_of("5 dl water") == 500);
    CHECK(grams_of("3 cl water") == 30);
    CHECK(grams_of("1 cup water", metric) == 250);
    CHECK(grams_of("1 cup water", us) == us_cup);
    CHECK(grams_of("1 cup water", "measures: us-label\n") == 240);
    CHECK(near(grams_of("1 pint water", uk), exact(56826125, 100000)));
    CHECK(near(grams_of("1 pint water", us), exact(473176473, 1000000)));
    CHECK(near(grams_of("1 fl oz water", uk), exact(284130625, 10000000)));
    CHECK(near(grams_of("1 fl oz water", us), exact(295735296, 10000000)));
    CHECK(near(grams_of("1 quart water", us) * 4, grams_of("1 gallon water", us)));
}

TEST_CASE("terms add up, and thirds make a whole") {
    CHECK(grams_of("1 cup + 2 tbsp plain flour", us) == exact(125) * 9 / 8);
    CHECK(grams_of("1 cup + 2 tbsp sifted plain flour", us) == exact(1133981, 10000) * 9 / 8);
    CHECK(grams_of("1/3 cup plain flour", us) * 3 == grams_of("1 cup plain flour", us));
    rc::prop("so many n-ths of a cup weigh as much as the same share of one", [] {
        const int above = *rc::gen::inRange(1, 40), below = *rc::gen::inRange(1, 40);
        const auto part =
            grams_of(std::to_string(above) + "/" + std::to_string(below) + " cup plain flour", us);
        RC_ASSERT(part == exact(125) * above / below);
    });
}

TEST_CASE(
    "the range of a plain cup is that of the ways to fill it, of a stated one is its sources'") {
    const auto plain = *weight_of_line("1 cup plain flour", us);
    CHECK(plain.low == exact(1133981, 10000));
    CHECK(plain.high == exact(1417476, 10000));
    const auto sifted = *weight_of_line("1 cup sifted plain flour", us);
    CHECK(sifted.low == sifted.high);
    const auto weighed = *weight_of_line("125 g plain flour");
    CHECK(weighed.low == weighed.high);
    // A cut is another thing, not another way to fill the cup.
    const auto whole = *weight_of_line("1 cup hazelnuts", us);
    CHECK(whole.low == 135);
}

TEST_CASE("a range is reckoned with by its middle") {
    const auto range = *weight_of_line("15-20 g natural yogurt");
    CHECK(range.low == 15);
    CHECK(range.used == exact(35, 2));
    CHECK(range.high == 20);
    CHECK(grams_of("3-4 large eggs", us) == 175);
}

TEST_CASE("heaped, rounded and scant warn, and give the range they may mean") {
    CHECK(kind_of("1 heaped tsp fine salt", us) == "not-a-measure");
    CHECK(kind_of("1 level tsp fine salt", us).empty());
    const auto level = grams_of("1 level tsp fine salt", us);
    const auto heaped = *weight_of_line("1 heaped tsp fine salt", us);
    const auto rounded = *weight_of_line("1 rounded tsp fine salt", us);
    const auto scant = *weight_of_line("1 scant tsp fine salt", us);
    CHECK(heaped.low > level);
    CHECK(heaped.high == level * 2);
    CHECK(rounded.low > level);
    CHECK(rounded.high < heaped.high);
    CHECK(scant.used < level);
    CHECK(scant.high == level);
}

TEST_CASE("a stick is a measure of butter alone") {
    CHECK(grams_of("1 stick butter") == exact(45359237, 400000));
    CHECK(grams_of("2 sticks unsalted butter", us) == exact(45359237, 200000));
    CHECK(kind_of("1 stick plain flour") == "not-in-sticks");
    CHECK(kind_of("1 stick rapeseed oil") == "not-in-sticks");
}

TEST_CASE("eggs weigh by size and country") {
    // US: USDA SR28 01123. UK: Regulation (EC) No 589/2008's grades less the shell, 12 %.
    CHECK(grams_of("1 large egg", us) == 50);
    CHECK(grams_of("2 medium eggs", us) == 88);
    CHECK(grams_of("1 extra large egg", us) == 56);
    CHECK(grams_of("1 jumbo egg", us) == 63);
    CHECK(grams_of("1 egg", us) == 50);
    CHECK(grams_of("1 large egg", uk) == exact(5984, 100));
    CHECK(grams_of("2 medium eggs", uk) == exact(10208, 100));
    CHECK(grams_of("1 small egg", uk) == exact(4664, 100));
    CHECK(grams_of("1 egg", uk) == exact(5104, 100));
    CHECK(grams_of("1 egg") == exact(5104, 100));
    CHECK(grams_of("1 large egg, beaten", us) == 50);
    CHECK(grams_of("1 egg yolk", us) == 17);
    CHECK(grams_of("1 egg white", us) == 33);
    CHECK(grams_of("1 large egg yolk", us) + grams_of("1 large egg white", us) == 50);
    CHECK(grams_of("65 g eggs") == 65);
}

TEST_CASE("pieces weigh by their name and size") {
    CHECK(grams_of("20 cloves garlic") == 60);
    CHECK(grams_of("20 garlic cloves") == 60);
    CHECK(grams_of("4 small pears") == 592);
    CHECK(grams_of("1 pear") == 178);
    CHECK(grams_of("6 leaves = 10 g leaf gelatine") == 10);
    CHECK_FALSE(weight_of_line("6 wild boar sausages"));
    CHECK(kind_of("6 wild boar sausages") == "no-piece-weight");
}

TEST_CASE("a cup that is nobody's lists what each reading weighs") {
    const auto c = compiled(with_lines("1 cup plain flour"));
    REQUIRE(kinds_of(*c) == kinds{"unsettled-measure"});
    const auto remarks = remarks_of(message(*c, "unsettled-measure"));
    CHECK_THAT(remarks, Catch::Contains("`measures: us`: 237 ml, 125 g of plain flour"));
    CHECK_THAT(remarks, Catch::Contains("`measures: metric`: 250 ml, 132 g of plain flour"));
    CHECK_THAT(remarks, Catch::Contains("`measures: us-label`: 240 ml, 127 g of plain flour"));
    CHECK(kind_of("1 cup plain flour", uk) == "unsettled-measure");
    CHECK(kind_of("1 pint water", metric) == "unsettled-measure");
    CHECK(kind_of("1 tsp plain flour").empty());
    // A stated weight settles it.
    CHECK(grams_of("1 cup = 125 g plain flour") == 125);
    CHECK(kind_of("1 cup = 125 g plain flour").empty());
}

TEST_CASE("a volume whose weight is not known is an error that offers the definition") {
    const auto c = compiled(with_lines("1 cup leaf gelatine", us));
    REQUIRE(kinds_of(*c) == kinds{"no-volume-figure"});
    CHECK_THAT(remarks_of(c->messages.front()), Catch::Contains("`ingredient: leaf gelatine`"));
    CHECK_FALSE(weight_of_line("1 cup leaf gelatine", us));
    const auto unknown = compiled(with_lines("1 cup moon dust", us));
    REQUIRE(kinds_of(*unknown) == kinds{"unknown-volume"});
    CHECK_THAT(remarks_of(unknown->messages.front()), Catch::Contains("`ingredient: moon dust`"));
    // By weight it may be anything, with a hint.
    const auto weighed = compiled(with_lines("100 g moon dust"));
    REQUIRE(kinds_of(*weighed) == kinds{"unknown-ingredient"});
    CHECK(weighed->messages.front().level == grammar::severity::hint);
    CHECK(weighed->meaning.components.front().mix->used == 100);
}

TEST_CASE("a defined ingredient weighs as its definition says") {
    const std::string teff =
        "ingredient: teff flour\nweighs: 160 g per cup spooned, 175 g per cup packed, 150 g per "
        "cup\nweighs: 58 g per ball\ncontains: none\nsource: weighed here\n";
    const auto text = [&](const std::string& line) {
        return "recipe: Test\nmeasures: us\n" + teff + "component: Mix\n" + line + "\n";
    };
    const auto weight = [&](const std::string& line) {
        const auto c = compiled(text(line));
        CHECK(kinds_of(*c).empty());
        return c->meaning.components.front().lines.front().grams->used;
    };
    CHECK(weight("2 cups spooned teff flour") == 320);
    CHECK(weight("1 packed cup teff flour") == 175);
    CHECK(weight("1 cup teff flour") == 150);
    CHECK(weight("2 balls teff flour") == 116);
}

TEST_CASE("a stated pair is checked against what the measure may weigh") {
    // A US cup of flour: 113.4 g sifted to 141.7 g scooped, and 3 % for rounding.
    for (const auto* fits :
         {"2 cups = 250 g plain flour", "1 cup = 111 g plain flour", "1 cup = 145 g plain flour"}) {
        INFO(fits);
        CHECK(kind_of(fits, us).empty());
    }
    for (const auto* not_so : {"2 cups = 200 g plain flour", "1 cup = 109 g plain flour",
                               "1 cup = 147 g plain flour", "1 cup = 250 g plain flour"}) {
        INFO(not_so);
        CHECK(kind_of(not_so, us) == "pair-disagrees");
    }
    CHECK(kind_of("1 cup sifted = 125 g plain flour", us) != ""); // a measure stands before `=`
    CHECK(kind_of("1 cup = 125 g sifted plain flour", us) == "pair-disagrees");
    CHECK(kind_of("2 = 100 g large eggs", us).empty());
    CHECK(grams_of("2 cups = 260 g plain flour", us) == 260);
    rc::prop("the weight counts, and a pair within the range is never an error", [] {
        const int weight = *rc::gen::inRange(114, 142);
        const auto line = "1 cup = " + std::to_string(weight) + " g plain flour";
        RC_ASSERT(grams_of(line, us) == weight);
        RC_ASSERT(kind_of(line, us).empty());
    });
}

TEST_CASE("some of a thing is not weighed") {
    const auto c = compiled(with_lines("100 g butter\nsome plain flour, for dusting"));
    CHECK(c->meaning.components.front().mix->used == 100);
    CHECK_FALSE(c->meaning.components.front().lines.back().grams);
}

} // namespace benchcard::testing
