#include "compiler/batch/batch.hpp"
#include "compiler/label/shown.hpp"

#include "../recipe/reading.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <rapidcheck/catch.h>

/// Ingredient lists.
namespace benchcard::testing {

namespace {

using safety::law;

/// A recipe, and the draft of its label for the batch as written.
struct labelled {
    std::unique_ptr<commands::compiled> of;
    label::ingredient_list list;
};

labelled label_of(const std::string& text) {
    auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    auto list = label::ingredients_of(batch::scale(c->meaning, 1));
    return {std::move(c), std::move(list)};
}

std::string eu(const std::string& text) {
    return label::ingredients_in(label_of(text).list, law::eu).text;
}
std::string us(const std::string& text) {
    return label::ingredients_in(label_of(text).list, law::us).text;
}

std::string of_capitals(const label::marked_text& t) {
    std::string result;
    for (const auto& a : t.allergens)
        result += (result.empty() ? "" : " ") + t.text.substr(a.begin, a.end - a.begin);
    return result;
}

} // namespace

TEST_CASE("ingredients stand in descending weight as used, their allergens in capitals") {
    CHECK(eu("recipe: Rubbing\n50 g caster sugar\n200 g plain flour\n100 g unsalted butter\n") ==
          "Ingredients: plain flour (WHEAT), unsalted butter (MILK), caster sugar.");
    CHECK(eu("recipe: Rubbing\nmeasures: uk\n40 g ground almonds\n2 large eggs\n10 g celery\n") ==
          "Ingredients: EGGS, ground ALMONDS, CELERY.");
    CHECK(eu("recipe: Rubbing\n100 g spelt flour\n") == "Ingredients: spelt flour (WHEAT: SPELT).");
}

TEST_CASE("a list names the allergens of its own law and no others") {
    const std::string text = "recipe: Crumbs\n90 g rye flour\n50 g pine nuts\n40 g soya flour\n";
    CHECK(eu(text) == "Ingredients: RYE flour, pine nuts, SOYA flour.");
    CHECK(us(text) == "Ingredients: rye flour, PINE NUTS, SOYA flour.");
    CHECK(label::contains_statement(label_of(text).list).text == "Contains: PINE NUTS, SOY.");
}

TEST_CASE("a component is a compound ingredient with a list of its own") {
    const std::string text = "recipe: Slices\ncomponent: Crust\n100 g plain flour\n50 g unsalted "
                             "butter\ncomponent: Cream\n300 g double cream\n20 g caster sugar\n"
                             "assembly: Filled crust\nall Crust\nhalf Cream\n200 g raspberries\n";
    CHECK(eu(text) == "Ingredients: raspberries, Cream (double cream (MILK), caster sugar), Crust "
                      "(plain flour (WHEAT), unsalted butter (MILK)).");
}

TEST_CASE("added water is listed by what is left of it, and not at 5 % or less") {
    // Annex VII, Part A, 1 of Reg. (EU) No 1169/2011: the total of the finished product less that
    // of the other ingredients. 100 g of dough here with 40 g of water; baked to 70 g, 10 g of it
    // is left: 14 %.
    const std::string dough = "30 g plain flour\n40 g water\n20 g caster sugar\n10 g fine salt\n";
    CHECK(eu("recipe: R\n" + dough) ==
          "Ingredients: water, plain flour (WHEAT), caster sugar, fine salt.");
    CHECK(eu("recipe: R\nloss: 15% in the oven\n" + dough) ==
          "Ingredients: plain flour (WHEAT), water, caster sugar, fine salt.");
    CHECK(eu("recipe: R\nloss: 25% in the oven\n" + dough) ==
          "Ingredients: plain flour (WHEAT), caster sugar, water, fine salt.");
    // 63 g with 3 g of water left, 4.8 %; 64 g with 4 g, 6.25 %.
    CHECK(eu("recipe: R\nloss: 37% in the oven\n" + dough) ==
          "Ingredients: plain flour (WHEAT), caster sugar, fine salt.");
    CHECK(eu("recipe: R\nloss: 36% in the oven\n" + dough) ==
          "Ingredients: plain flour (WHEAT), caster sugar, fine salt, water.");
    // What stays in the bowl takes flour with it as well as water.
    CHECK(eu("recipe: R\nloss: 37% in the bowl\n" + dough) ==
          "Ingredients: water, plain flour (WHEAT), caster sugar, fine salt.");
    // As used, in the US form.
    CHECK(us("recipe: R\nloss: 37% in the oven\n" + dough) ==
          "Ingredients: water, plain flour (WHEAT), caster sugar, fine salt.");
}

TEST_CASE("the water of a component evaporates with the product") {
    const std::string text = "recipe: R\ncomponent: Dough\n60 g plain flour\n40 g water\n"
                             "assembly: Baked\nloss: 40% in the oven\nall Dough\n";
    CHECK(eu(text) == "Ingredients: Dough (plain flour (WHEAT)).");
    CHECK(label::water_percent(label_of(text).list) == 0);
}

TEST_CASE("what is 2 % or less stands at the end of the US form") {
    // 21 CFR 101.4(a)(2). 2 g of 100 g is 2 %, 3 g is not.
    CHECK(us("recipe: R\n94 g plain flour\n3 g caster sugar\n2 g fine salt\n1 g unsalted "
             "butter\n") == "Ingredients: plain flour (WHEAT), caster sugar, contains 2% or less "
                            "of each of the following: fine salt, unsalted butter (MILK).");
}

TEST_CASE("what is not known is not said to be little") {
    // A cube of no known weight may be more than 2 %; a dusting is not.
    CHECK(us("recipe: R\n90 g plain flour\n1 stock cube\nsome icing sugar\n") ==
          "Ingredients: plain flour (WHEAT), stock cube, contains 2% or less of each of the "
          "following: icing sugar.");
    // Nor does the weighed part of it stand for all.
    const auto l = label_of("recipe: R\n90 g plain flour\n95 g stock cube\n1 stock cube\n");
    REQUIRE(l.list.items.size() == 2);
    CHECK(l.list.items.back().name == "stock cube");
    CHECK_FALSE(l.list.items.back().used);
    CHECK(eu("recipe: R\n90 g plain flour\nsome icing sugar\n5 g icing sugar\n") ==
          "Ingredients: plain flour (WHEAT), icing sugar.");
}

TEST_CASE("what the title names has its share of the finished product") {
    CHECK(eu("recipe: Hazelnut crumble\n150 g plain flour\n50 g hazelnuts\n") ==
          "Ingredients: plain flour (WHEAT), HAZELNUTS 25 %.");
    // Annex VIII, 4(a): of what has lost moisture, by the finished product; above 100 % by weight.
    CHECK(eu("recipe: Hazelnut crumble\nloss: 50% in the oven\n100 g water\n50 g hazelnuts\n50 g "
             "plain flour\n") == "Ingredients: HAZELNUTS 50 %, plain flour (WHEAT).");
    CHECK(eu("recipe: Tomato paste\nloss: 75% in the pot\n400 g tomatoes\n") ==
          "Ingredients: tomatoes 400 g to 100 g.");
    const auto twice = label_of("recipe: Almond slices\ncomponent: Base\n80 g plain flour\n20 g "
                                "ground almonds\nassembly: Slices\nall Base\n100 g flaked "
                                "almonds\n");
    REQUIRE(twice.list.totals.size() == 1);
    CHECK(twice.list.totals.front().percent == 60);
}

TEST_CASE("a title that names a component has its share, and the kind of food has none") {
    const auto with = [](const std::string& title, const std::string& part) {
        return eu("recipe: " + title + "\ncomponent: " + part +
                  "\n30 g whole milk\n10 g caster sugar\nassembly: End\nall " + part +
                  "\n60 g strawberries\n");
    };
    CHECK(with("Custard tart", "Custard") ==
          "Ingredients: strawberries, Custard 40 % (whole MILK, caster sugar).");
    CHECK(with("Cake with custard", "Custard") ==
          "Ingredients: strawberries, Custard 40 % (whole MILK, caster sugar).");
    CHECK(with("Milk soup", "White soup") ==
          "Ingredients: strawberries, White soup (whole MILK 30 %, caster sugar).");
    CHECK(with("Cake with custard", "Cake") ==
          "Ingredients: strawberries, Cake (whole MILK, caster sugar).");
}

TEST_CASE("what must still be settled is said") {
    const auto l = label_of("recipe: R\n100 g dark chocolate\n20 g moon dust\nsome icing sugar\n"
                            "30 g hazelnuts or almonds\n");
    std::string all;
    for (const auto& s : label::open_questions(l.list, law::both)) all += s + "\n";
    CHECK_THAT(all, Catch::Contains("dark chocolate, moon dust") ||
                        Catch::Contains("dark chocolate, hazelnuts or almonds, moon dust"));
    CHECK_THAT(all, Catch::Contains("icing sugar"));
    CHECK_THAT(all, Catch::Contains("Name the one that was used: hazelnuts or almonds"));
}

TEST_CASE("places in the text are counted in characters") {
    const auto l = label_of("recipe: R\n100 g crème fraîche\n20 g whole milk\n");
    const auto t = label::ingredients_in(l.list, law::eu);
    CHECK(t.text == "Ingredients: crème fraîche (MILK), whole MILK.");
    REQUIRE(t.allergens.size() == 2);
    CHECK(t.allergens[0].begin == 28);
    CHECK(t.allergens[0].end == 32);
    const auto document = nlohmann::json::parse(
        label::as_json({l.list, law::both, label::use_by{std::nullopt, "because"}}));
    CHECK(document["version"] == 1);
    CHECK(document["forms"].size() == 2);
    CHECK(document["forms"][0]["ingredients"]["allergens"][0]["begin"] == 28);
    CHECK(document["use_by"]["day"].is_null());
    CHECK(document["items"][0]["grams"] == "100");
}

TEST_CASE("every allergen of the product stands out in the list") {
    rc::prop("random recipes", [] {
        const std::vector<std::pair<std::string, std::string>> larder = {
            {"10 g plain flour", "WHEAT"},   {"9 g rye flour", "RYE"},
            {"8 g unsalted butter", "MILK"}, {"7 g ground almonds", "ALMONDS"},
            {"6 g celery", "CELERY"},        {"some chopped hazelnuts, for dusting", "HAZELNUTS"},
            {"5 g caster sugar", ""},        {"4 g water", ""}};
        std::string text = "recipe: R\nloss: 8% in the oven\n";
        std::vector<std::string> expected;
        for (int part = 0; part < 3; ++part) {
            const auto letter = std::string(1, static_cast<char>('a' + part));
            text += (part < 2 ? "component: Part" : "assembly: Part") + letter +
                    "\n1 g maple "
                    "syrup\n";
            if (part == 1) text += "1 g Parta\n";
            if (part == 2) text += "half Partb\n";
            for (const auto& [line, name] : larder) {
                if (*rc::gen::inRange(0, 3) != 0) continue;
                text += line + "\n";
                if (!name.empty()) expected.push_back(name);
            }
        }
        const auto l = label_of(text);
        const auto capitals = of_capitals(label::ingredients_in(l.list, law::eu));
        for (const auto& name : expected) RC_ASSERT(capitals.find(name) != std::string::npos);
    });
}

} // namespace benchcard::testing
