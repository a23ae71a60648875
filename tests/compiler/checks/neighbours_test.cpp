#include "shown.hpp"

/// Amounts that are far from those around them.
namespace benchcard::testing {

namespace {

std::string sponge(const std::string& flour) {
    return with_lines(flour + " plain flour\n300 g caster sugar\n250 g unsalted butter");
}

std::string spoons(const std::string& base) {
    return "recipe: Cake\nmeasures: us\ncomponent: Sponge\n2 cups plain flour\ncomponent: "
           "Crumble\n1 cup plain flour\ncomponent: Base\n" +
           base + "\n";
}

} // namespace

TEST_CASE("500 kg for 500 g is shown with its reckoning") {
    CHECK(
        shown(sponge("500 kg")) ==
        R"(main.recipe:4:1: warning: 500 kg of plain flour is far from its neighbours: 909 times all the others together [out-of-scale]
   4 | 500 kg plain flour
     | ^^^^^^
     = note: the other lines weigh 550 g
     = help: is it 500 g?
1 warning
)");
    CHECK(
        shown(sponge("500 mg")) ==
        R"(main.recipe:4:1: warning: 500 mg of plain flour is far from its neighbours: the others together weigh 1100 times as much [out-of-scale]
   4 | 500 mg plain flour
     | ^^^^^^
     = note: the other lines weigh 550 g
     = help: is it 500 g?
1 warning
)");
}

TEST_CASE("kilograms are far from grams by two hundred times the others together") {
    CHECK(kinds_of(*compiled(sponge("500 g"))).empty());
    CHECK(kinds_of(*compiled(sponge("110 kg"))).empty());
    CHECK(kinds_of(*compiled(sponge("111 kg"))) == kinds{"out-of-scale"});
    // A pot of tomatoes with its seasoning, and a stock that is nearly all water.
    CHECK(
        kinds_of(*compiled(with_lines("5 kg tomatoes\n20 g fine salt\n6 g black pepper"))).empty());
    CHECK(kinds_of(*compiled(with_lines("10 l water\n8 g fine salt\n6 g black pepper"))).empty());
    CHECK(kinds_of(*compiled(with_lines("20 l water\n8 g fine salt\n6 g black pepper"))) ==
          kinds{"out-of-scale"});
    // Saffron is weighed in milligrams.
    CHECK(kinds_of(*compiled(with_lines("500 mg saffron\n300 g caster sugar\n250 g butter")))
              .empty());
}

TEST_CASE("what the balance has shown is not shown again") {
    CHECK(kinds_of(*compiled("recipe: Test\ncomponent: Mix\nmakes: 1 kg\n500 kg plain flour\n300 g "
                             "caster sugar\n250 g unsalted butter\n")) == kinds{"mix-left-over"});
}

TEST_CASE("a teaspoon among cups is shown") {
    CHECK(
        shown(spoons("1 tsp plain flour\n100 g unsalted butter")) ==
        R"(main.recipe:8:1: hint: plain flour is measured in cups everywhere else in this recipe [spoon-among-cups]
   8 | 1 tsp plain flour
     | ^^^^^
main.recipe:6:1: note: the least of the others is 48 times as much
   6 | 1 cup plain flour
     | ^^^^^
     = help: if it is meant so, say what for: `1 tsp plain flour, for dusting`
1 hint
)");
}

TEST_CASE("a teaspoon with a purpose, or beside other measures, is meant") {
    CHECK(kinds_of(*compiled(spoons("1 tsp plain flour, for dusting"))).empty());
    CHECK(kinds_of(*compiled(spoons("3 tsp plain flour"))).empty());
    CHECK(kinds_of(*compiled(spoons("1 tsp plain flour\n100 g plain flour"))).empty());
    CHECK(kinds_of(*compiled("recipe: Cake\nmeasures: us\ncomponent: Sponge\n2 cups caster "
                             "sugar\ncomponent: Yeast\n1 tsp caster sugar\n"))
              .empty());
}

} // namespace benchcard::testing
