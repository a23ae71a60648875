#include "shown.hpp"

/// Pieces that go into products by sets.
namespace benchcard::testing {

namespace {

std::string buns(const std::string& makes, int products, const std::string& use) {
    return "recipe: Buns\nmakes: " + std::to_string(products) +
           " buns\ncomponent: Halves\nmakes: " + makes +
           "\n1000 g  plain flour\nassembly: Buns\nper: 1 bun\n" + use + "\n";
}

} // namespace

TEST_CASE("an odd half is shown with its reckoning") {
    CHECK(shown(buns("55 halves", 27, "2 halves   Halves")) ==
          R"(main.recipe:4:8: hint: one half stays over, too few for one more bun [odd-piece-left]
   4 | makes: 55 halves
     |        ^^^^^^^^^
main.recipe:8:1: note: 27 buns take 2 halves each: 54 of 55 halves
   8 | 2 halves   Halves
     | ^^^^^^^^^^^^^^^^^
     = help: make 54 halves, or 56 halves
1 hint
)");
}

TEST_CASE("sets that come out even say nothing, and left-overs that make one more neither") {
    CHECK(kinds_of(*compiled(buns("54 halves", 27, "2 halves Halves"))).empty());
    CHECK(kinds_of(*compiled(buns("56 halves", 27, "2 halves Halves"))).empty());
    CHECK(kinds_of(*compiled(buns("57 halves", 27, "2 halves Halves"))).empty());
    CHECK(kinds_of(*compiled(buns("55 halves", 54, "1 half Halves"))).size() == 0);
    CHECK(kinds_of(*compiled(buns("53 halves", 27, "2 halves Halves"))) ==
          kinds{"demand-exceeds-yield"});
}

TEST_CASE("of large sets a few spare pieces are meant, and a worked out number is not compared") {
    CHECK(kinds_of(*compiled(buns("50 pieces", 6, "8 pieces Halves"))).empty());
    CHECK(kinds_of(*compiled(buns("50 pieces", 12, "4 pieces Halves"))) == kinds{"odd-piece-left"});
    CHECK(kinds_of(*compiled(buns("halves of 18 g", 27, "2 halves Halves"))).empty());
}

namespace {

std::string creams(const std::string& settings, const std::string& use) {
    return "recipe: Glasses\nmakes: 10 glasses\ncomponent: Cream\n" + settings +
           "\n1 kg double cream\nassembly: Glasses\nper: 1 glass\n" + use + " Cream\n";
}

} // namespace

TEST_CASE("a component of which little is used is shown where that little stands") {
    CHECK(shown(creams("makes: 1 kg", "9 g")) ==
          R"(main.recipe:8:1: hint: 90 g of Cream are used, and 1000 g made [much-left-over]
   8 | 9 g Cream
     | ^^^
main.recipe:4:8: note: 910 g stay over, 91 % of it
   4 | makes: 1 kg
     |        ^^^^
main.recipe:2:8: note: Glasses is for 10 glasses
   2 | makes: 10 glasses
     |        ^^^^^^^^^^
     = help: if it is meant so, say why: `accept: much-left-over, …` in Glasses
1 hint
)");
    CHECK(shown(creams("makes: 10 pots", "1/2 pot")) ==
          R"(main.recipe:8:1: hint: 5 pots of Cream are used, and 10 pots made [much-left-over]
   8 | 1/2 pot Cream
     | ^^^
main.recipe:4:8: note: 5 pots stay over, 50 % of it
   4 | makes: 10 pots
     |        ^^^^^^^
main.recipe:2:8: note: Glasses is for 10 glasses
   2 | makes: 10 glasses
     |        ^^^^^^^^^^
     = help: if it is meant so, say why: `accept: much-left-over, …` in Glasses
1 hint
)");
}

TEST_CASE("two fifths may stay over, and more of what is made for others too") {
    CHECK(kinds_of(*compiled(creams("makes: 1 kg", "60 g"))).empty());
    CHECK(kinds_of(*compiled(creams("makes: 1 kg", "59 g"))) == kinds{"much-left-over"});
    CHECK(kinds_of(*compiled(creams("makes: 1 kg\nwhole-batch: yes", "9 g"))).empty());
    CHECK(kinds_of(*compiled("recipe: Glasses\ncomponent: Cream\n1 kg double cream\nassembly: "
                             "Glasses\nhalf Cream\n"))
              .empty());
    CHECK(kinds_of(
              *compiled("recipe: Glasses\nuse: house.recipe\n100 g Cream\n",
                        {{"house.recipe", "recipe: House\ncomponent: Cream\n1 kg double cream\n"}}))
              .empty());
}

TEST_CASE("a component may be counted by its piece though its mix is not known") {
    CHECK(kinds_of(*compiled("recipe: Tart\nmakes: 2 tarts\ncomponent: Pastry\nmakes: cases of 265 "
                             "g\n500 g plain flour\n2 zarzaparillas\nassembly: Tarts\nper: 1 "
                             "tart\n1 case Pastry\n")) == kinds{"unknown-ingredient"});
}

TEST_CASE("what is used above where it is made is shown at its use") {
    const std::string custard =
        "component: Custard\nmakes: 400 g\n400 g whole milk\n- Boil [milk].\n";
    const std::string trifle =
        "component: Trifle\n400 g Custard\n200 g raspberries\n- Pour [Custard] over "
        "[raspberries].\n";
    CHECK(kinds_of(*compiled("recipe: Trifle\n" + custard + trifle)).empty());
    const auto c = compiled("recipe: Trifle\n" + trifle + custard);
    REQUIRE(kinds_of(*c) == kinds{"used-before-made"});
    CHECK(c->messages.front().message == "Custard is used here, and it is made further down");
    CHECK(c->files.sources[0].text_of(c->messages.front().where) == "400 g Custard");
}

} // namespace benchcard::testing
