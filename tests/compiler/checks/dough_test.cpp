#include "proportions.hpp"

/// Salt, yeast, water and raising agents against the flour.
namespace benchcard::testing {

TEST_CASE("a tablespoon of salt for a teaspoon is said with the arithmetic, where it stands") {
    const auto c = compiled("recipe: Rolls\ncomponent: Dough\n200 g strong white flour\n130 g "
                            "water\n12 g fine salt\n4 g fresh yeast\n");
    REQUIRE(kinds_of(*c) == kinds{"salt-high"});
    const auto& m = c->messages.front();
    CHECK(m.level == grammar::severity::hint);
    CHECK(m.message == "12 g of fine salt is 6 % of the flour in Dough");
    CHECK(remarks_of(m) == "common practice in bread: 1 % to 3 %\n");
    CHECK(c->files.sources[0].text_of(m.where) == "12 g fine salt");
}

TEST_CASE("salt in bread: 0.8 % to 4 % of the flour, in rich dough from 0.3 %") {
    const auto loaf = [](const std::string& salt) {
        return said_of("Loaf", "1 kg strong white flour\n650 g water\n20 g fresh yeast\n" + salt);
    };
    CHECK(loaf("40 g fine salt").empty());
    CHECK(loaf("41 g fine salt") == kinds{"salt-high"});
    CHECK(loaf("8 g fine salt").empty());
    CHECK(loaf("7 g fine salt") == kinds{"salt-low"});
    CHECK(loaf("") == kinds{"salt-low"});
    CHECK(loaf("some fine salt").empty());
    CHECK(loaf("1 pinch fine salt").empty());
    CHECK(loaf("60 g feta").empty());
    CHECK(loaf("7 g fine salt\n200 g unsalted butter").empty());
    CHECK(loaf("2 g fine salt\n200 g unsalted butter") == kinds{"salt-low"});
    CHECK(loaf("50 g fine salt, for boiling\n18 g fine salt").empty());
}

TEST_CASE("no salt at all is said at the title") {
    const auto c = compiled("recipe: Rye\ncomponent: Rye dough\n1 kg medium rye flour\n700 g "
                            "water\n400 g sourdough starter\n");
    REQUIRE(kinds_of(*c) == kinds{"salt-low"});
    CHECK(c->messages.front().message ==
          "there is no salt in Rye dough, which is raised with yeast");
    CHECK(c->files.sources[0].text_of(c->messages.front().where) == "Rye dough");
}

TEST_CASE(
    "a first stage has its salt from the dough it goes into, and brings its flour and yeast") {
    const auto two = [](const std::string& lines) {
        const auto c = compiled("recipe: Loaves\ncomponent: First stage\n500 g strong white "
                                "flour\n500 g water\n1 g fresh yeast\ncomponent: Dough\n500 g "
                                "strong white flour\nall First stage\n150 g water\n" +
                                lines);
        return kinds_of(*c);
    };
    CHECK(two("20 g fine salt\n").empty());
    CHECK(two("36 g fine salt\n").empty()); // of 1 kg, not of 500 g
    CHECK(two("44 g fine salt\n") == kinds{"salt-high"});
    CHECK(two("").size() == 1); // said of the dough alone
}

TEST_CASE("ingredients of one's own may be flour: nothing is said that they could make right") {
    const std::string own = "\ningredient: mill blend\ncontains: wheat\n";
    CHECK(said_of("Loaf",
                  "100 g strong white flour\n900 g mill blend\n650 g water\n20 g fine "
                  "salt\n20 g fresh yeast",
                  own)
              .empty());
    CHECK(said_of("Loaf",
                  "1 kg strong white flour\n100 g mill blend\n650 g water\n60 g fine "
                  "salt\n20 g fresh yeast",
                  own) == kinds{"salt-high"});
}

TEST_CASE("nothing follows from an unknown weight") {
    CHECK(said_of("Loaf", "1 strong white flour\n650 g water\n90 g fine salt\n20 g fresh yeast") ==
          kinds{"no-piece-weight"});
}

TEST_CASE("yeast that races: dry counted 2.5 times, instant 3 times") {
    const auto loaf = [](const std::string& yeast) {
        return said_of("Loaf", "1 kg strong white flour\n650 g water\n18 g fine salt\n" + yeast);
    };
    CHECK(loaf("100 g fresh yeast").empty());
    CHECK(loaf("101 g fresh yeast") == kinds{"yeast-high"});
    CHECK(loaf("40 g active dry yeast").empty());
    CHECK(loaf("41 g active dry yeast") == kinds{"yeast-high"});
    CHECK(loaf("33 g instant yeast").empty());
    CHECK(loaf("34 g instant yeast") == kinds{"yeast-high"});
    CHECK(loaf("130 g fresh yeast\n200 g caster sugar").empty());
    CHECK(loaf("150 g fresh yeast\n200 g caster sugar") == kinds{"yeast-high"});
}

TEST_CASE("what dry yeast is as fresh yeast is said") {
    const auto c = compiled("recipe: Loaf\n500 g strong white flour\n325 g water\n9 g fine salt\n"
                            "25 g instant yeast\n");
    REQUIRE(kinds_of(*c) == kinds{"yeast-high"});
    CHECK(c->messages.front().message == "25 g of instant yeast is 5 % of the flour in Loaf");
    CHECK_THAT(remarks_of(c->messages.front()), Catch::Contains("that is 15 % as fresh yeast"));
}

TEST_CASE("too little yeast for the time it is given") {
    const auto loaf = [](const std::string& yeast, const std::string& steps) {
        return said_of("Loaf", "1 kg strong white flour\n650 g water\n18 g fine salt\n" + yeast,
                       steps);
    };
    const std::string quick = "- Mix [rest]; rise for [90 min]; bake for [40 min] at [220 C].\n";
    CHECK(loaf("4 g fresh yeast", quick).empty());
    CHECK(loaf("2 g fresh yeast", quick) == kinds{"yeast-low"});
    CHECK(loaf("2 g fresh yeast", "- Mix [rest]; rise [overnight]; bake at [220 C] for [40 min].\n")
              .empty());
    CHECK(loaf("2 g fresh yeast", "- Mix [rest]; rise for [12 h]; bake at [220 C] for [40 min].\n")
              .empty());
    CHECK(loaf("2 g fresh yeast", "").empty());
    CHECK(loaf("2 g fresh yeast\n300 g sourdough starter", quick).empty());
}

TEST_CASE("water by the name of the dough, in whatever it comes") {
    CHECK(said_of("Baguettes", "1 kg strong white flour\n660 g water\n20 g fine salt\n12 g fresh "
                               "yeast")
              .empty());
    CHECK(said_of("Baguettes", "1 kg strong white flour\n500 g water\n20 g fine salt\n12 g fresh "
                               "yeast") == kinds{"hydration-low"});
    CHECK(said_of("Loaf", "1 kg strong white flour\n500 g water\n20 g fine salt\n12 g fresh yeast")
              .empty());
    CHECK(said_of("Brioche", "500 g strong white flour\n300 g eggs\n250 g unsalted butter\n60 g "
                             "caster sugar\n10 g fine salt\n15 g fresh yeast")
              .empty());
    CHECK(said_of("Brioche",
                  "500 g strong white flour\n30 g eggs\n250 g unsalted butter\n60 g "
                  "caster sugar\n10 g fine salt\n15 g fresh yeast") == kinds{"hydration-low"});
    CHECK(said_of("Egg pasta", "400 g plain flour\n220 g eggs").empty());
    CHECK(said_of("Egg pasta", "400 g plain flour\n450 g eggs") == kinds{"hydration-high"});
    CHECK(said_of("Bagels", "500 g strong white flour\n280 g water\n9 g fine salt\n6 g fresh yeast"
                            "\n2 l water, for boiling")
              .empty());
    CHECK(said_of("Bagels", "500 g strong white flour\n560 g water\n9 g fine salt\n6 g fresh "
                            "yeast") == kinds{"hydration-high"});
}

TEST_CASE("a dough without a name of its own is what it goes into") {
    const auto c = compiled("recipe: Bagels\ncomponent: Dough\n500 g strong white flour\n560 g "
                            "water\n9 g fine salt\n6 g fresh yeast\nassembly: Bagels\nall Dough\n");
    CHECK(kinds_of(*c) == kinds{"hydration-high"});
    const auto filling = compiled("recipe: Bagels\ncomponent: Crumble\n500 g plain flour\n300 g "
                                  "unsalted butter\nassembly: Bagels\nall Crumble\n");
    CHECK(kinds_of(*filling).empty());
}

TEST_CASE("a dough with nothing wet in it is said at the title") {
    const auto c = compiled("recipe: White loaf\n500 g strong white flour\n9 g fine salt\n6 g "
                            "fresh yeast\n");
    REQUIRE(kinds_of(*c) == kinds{"hydration-low"});
    CHECK(c->messages.front().message == "there is nothing wet in White loaf");
}

TEST_CASE("doughs of rye, grain and seed may be wet") {
    CHECK(said_of("Rye loaf", "1 kg dark rye flour\n1.3 kg water\n20 g fine salt\n300 g rye "
                              "sourdough starter")
              .empty());
    CHECK(said_of("Seeded loaf", "500 g strong white flour\n600 g rolled oats\n750 g water\n18 g "
                                 "fine salt\n12 g fresh yeast")
              .empty());
}

TEST_CASE("where all is too much for the flour it is the flour that is asked about, once") {
    const auto c = compiled("recipe: White loaf\n50 g strong white flour\n330 g water\n10 g fine "
                            "salt\n10 g fresh yeast\n");
    REQUIRE(kinds_of(*c) == kinds{"flour-low"});
    const auto& m = c->messages.front();
    CHECK(
        m.message ==
        "50 g of strong white flour looks like too little for what is mixed with it in White loaf");
    CHECK(c->files.sources[0].text_of(m.where) == "50 g strong white flour");
    CHECK_THAT(remarks_of(m),
               Catch::Contains("10 g of fine salt is 20 % of the flour in White loaf; common "
                               "practice in bread: 1 % to 3 %"));
    CHECK(said_of("White loaf", "5 kg strong white flour\n330 g water\n10 g fine salt\n10 g fresh "
                                "yeast") == kinds{"flour-high"});
}

TEST_CASE("baking powder and bicarbonate to the flour, ground nuts and cocoa with it") {
    const auto cake = [](const std::string& raising) {
        return said_of("Cake", "200 g plain flour\n200 g caster sugar\n200 g unsalted butter\n200 "
                               "g eggs\n" +
                                   raising);
    };
    CHECK(cake("22 g baking powder").empty());
    CHECK(cake("23 g baking powder") == kinds{"leavening-high"});
    CHECK(cake("10 g bicarbonate of soda").empty());
    CHECK(cake("11 g bicarbonate of soda") == kinds{"leavening-high"});
    CHECK(cake("11 g bicarbonate of soda\n60 g cocoa powder").empty());
    CHECK(cake("").empty()); // a cake may be raised by its eggs
}

TEST_CASE("what must rise has baking powder enough") {
    const auto scones = [](const std::string& lines) {
        return said_of("Scones", "100 g unsalted butter\n250 g whole milk\n" + lines);
    };
    CHECK(scones("450 g plain flour\n20 g baking powder").empty());
    CHECK(scones("450 g plain flour\n2 g baking powder") == kinds{"leavening-low"});
    CHECK(scones("450 g self-raising flour\n2 g baking powder").empty());
    CHECK(scones("450 g plain flour\n2 g baking powder\n4 g bicarbonate of soda").empty());
}

} // namespace benchcard::testing
