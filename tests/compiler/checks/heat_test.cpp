#include "shown.hpp"

/// Heats that burn or do nothing. The bounds are common practice.
namespace benchcard::testing {

namespace {

kinds said_of_step(const std::string& step, const std::string& title = "Biscuits") {
    return kinds_of(*compiled("recipe: " + title +
                              "\n100 g rolled oats\n50 g honey\n- Mix [oats] with [honey].\n- " +
                              step + "\n"));
}

} // namespace

TEST_CASE("a heat with the letter of the other scale is shown where it stands") {
    CHECK(shown("recipe: Tuiles\n100 g rolled oats\n- Bake [oats] at [350 C] for [8 min].\n") ==
          R"(main.recipe:3:18: hint: 350 °C is very hot for an oven [heat-high]
   3 | - Bake [oats] at [350 C] for [8 min].
     |                  ^^^^^^^
     = note: common practice: kitchen ovens reach 300 °C
     = help: is it `[350 F]`?
1 hint
)");
    CHECK(shown("recipe: Tuiles\n100 g rolled oats\n- Bake [oats] at [180 F] for [8 min].\n") ==
          R"(main.recipe:3:18: hint: 180 °F is not hot enough for baking [heat-low]
   3 | - Bake [oats] at [180 F] for [8 min].
     |                  ^^^^^^^
     = note: common practice: what bakes in less than an hour takes 120 °C and more
     = note: 180 °F is 82 °C
     = help: is it `[180 C]`?
1 hint
)");
}

TEST_CASE("what ovens do is left alone") {
    CHECK(said_of_step("Bake at [300 C] for [10 min].").empty());
    CHECK(said_of_step("Bake at [301 C] for [10 min].") == kinds{"heat-high"});
    CHECK(said_of_step("Bake on the stone at [450 C] for [90 s].").empty());
    CHECK(said_of_step("Bake at [450 C] for [90 s].", "Naan").empty());
    CHECK(said_of_step("Bake at [501 C] for [90 s].", "Naan") == kinds{"heat-high"});
    CHECK(said_of_step("Bake at [350 C] for [45 min].", "Ginger loaf") == kinds{"heat-high"});
    CHECK(said_of_step("Bake at [120 C] for [30 min].").empty());
    CHECK(said_of_step("Bake at [119 C] for [59 min].") == kinds{"heat-low"});
    CHECK(said_of_step("Bake at [100 C] for [60 min].").empty());
    CHECK(said_of_step("Dry in the oven at [80 C] for [30 min].").empty());
    CHECK(said_of_step("Bake at [100 C] for [45 min].", "Meringues").empty());
    CHECK(said_of_step("Bake at [gas 6] for [20 min].").empty());
}

TEST_CASE("pans, fridges and provers have their bounds") {
    CHECK(said_of_step("Fry at [180 C] for [3 min].").empty());
    CHECK(said_of_step("Fry at [350 C] for [3 min].") == kinds{"heat-high"});
    CHECK(said_of_step("Fry at [180 F] for [3 min].") == kinds{"heat-low"});
    CHECK(said_of_step("Boil to [118 C].").empty());
    CHECK(said_of_step("Boil to [118 F].") == kinds{"heat-low"});
    CHECK(said_of_step("Boil to [245 F].").empty());
    CHECK(said_of_step("Boil to [245 C].") == kinds{"heat-high"});
    CHECK(said_of_step("Prove at [26 C] for [2 h].").empty());
    CHECK(said_of_step("Prove at [26 F] for [2 h].") == kinds{"heat-low"});
    CHECK(said_of_step("Prove at [78 C] for [2 h].") == kinds{"heat-high"});
    CHECK(said_of_step("Chill to [5 C].").empty());
    CHECK(said_of_step("Chill to [5 F].") == kinds{"heat-low"});
}

TEST_CASE("two heats in one step, and two scales of one, are not asked about lightly") {
    CHECK(said_of_step("Boil to [118 C], cool to [40 C].").empty());
    const auto pair =
        shown("recipe: Tuiles\n100 g rolled oats\n- Bake [oats] at [350 C = 660 F] for "
              "[8 min].\n");
    CHECK(pair.find("heat-high") != pair.npos);
    CHECK(pair.find("is it") == pair.npos);
}

} // namespace benchcard::testing
