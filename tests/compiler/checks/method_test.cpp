#include "shown.hpp"

/// What a method leaves out, and tins.
namespace benchcard::testing {

namespace {

std::string baked(const std::string& steps, const std::string& settings = "") {
    return "recipe: Flapjack\ncomponent: Flapjack\n" + settings +
           "\n200 g rolled oats\n100 g golden syrup\n- Stir [oats] into [golden syrup].\n" + steps +
           "\n";
}

kinds kinds_when(const std::string& steps, const std::string& settings = "") {
    return kinds_of(*compiled(baked(steps, settings)));
}

std::string custard(const std::string& last_steps, const std::string& keeps = "2 days chilled") {
    return "recipe: Custard\ncomponent: Custard\nkeeps: " + keeps +
           "\n500 g whole milk\n120 g egg yolks\n- Stir [milk] into [egg yolks].\n" + last_steps +
           "\n";
}

std::string in_a_tin(const std::string& tin, const std::string& makes, const std::string& grams) {
    return "recipe: Cake\nmakes: " + makes + "\nassembly: Cake\ntin: " + tin + "\n" + grams +
           " plain flour\n";
}

} // namespace

TEST_CASE("an oven without a time is shown at its heat") {
    CHECK(
        shown(baked("- Bake at [160 C] until golden.")) ==
        R"(main.recipe:7:11: warning: the oven has its heat, and neither this step nor one after it says for how long [oven-without-time]
   7 | - Bake at [160 C] until golden.
     |           ^^^^^^^
     = help: give the time, as in `[35-40 min]`, beside the sign that it is done
1 warning
)");
}

TEST_CASE("a time in the step or after it is enough, in brackets or in words") {
    CHECK(kinds_when("- Bake at [160 C] for [25 min].").empty());
    CHECK(kinds_when("- Preheat the oven to [160 C].\n- Bake for [25 min].").empty());
    CHECK(kinds_when("- Bake at [160 C] for half an hour.").empty());
    CHECK(kinds_when("- Preheat the oven to [160 C].\n- Bake until golden.") ==
          kinds{"oven-without-time"});
    CHECK(kinds_when("- Chill for [20 min].\n- Bake at [160 C].") == kinds{"oven-without-time"});
}

TEST_CASE("an oven set for another part, one that keeps warm, and a pan need no time") {
    CHECK(kinds_when("- Preheat the oven to [160 C].").empty());
    CHECK(kinds_when("- Keep warm in the oven at [80 C] until served.").empty());
    CHECK(kinds_when("- Boil to [118 C].").empty());
}

TEST_CASE("a bake without its heat is shown at the verb") {
    CHECK(
        shown(baked("- Press into a tin and bake for [25 min].")) ==
        R"(main.recipe:7:24: warning: this is baked, and no step here says how hot [bake-without-heat]
   7 | - Press into a tin and bake for [25 min].
     |                        ^^^^
     = help: give the heat, as in `[180 C]`, `[160 C fan]` or `[gas 4]`
1 warning
)");
    CHECK(
        shown(baked("- Press into a tin and leave.", "loss: 5% in the oven")) ==
        R"(main.recipe:3:10: warning: something is lost in the oven, and no step here says how hot that is [bake-without-heat]
   3 | loss: 5% in the oven
     |          ^^^^^^^^^^^
     = help: give the heat, as in `[180 C]`, `[160 C fan]` or `[gas 4]`
1 warning
)");
}

TEST_CASE("heat anywhere in the block is enough, and only the verb bakes") {
    CHECK(kinds_when("- Heat the oven to [160 C fan].\n- Bake for [25 min].").empty());
    CHECK(kinds_when("- Bake at 160 C for [25 min].").empty());
    CHECK(kinds_when("- Bake at 160°C for [25 min].").empty());
    CHECK(kinds_when("- Bake at gas 4 for [25 min].").empty());
    CHECK(kinds_when("- Bake as for the tarts.").empty());
    CHECK(kinds_when("- Line a baking sheet; it is ready to bake tomorrow.").empty());
    CHECK(kinds_when("- Press into a tin, then roast for [25 min].") == kinds{"bake-without-heat"});
    CHECK(kinds_when("- Bake for [25 min].", "loss: 5% in the oven") == kinds{"bake-without-heat"});
}

TEST_CASE("what is heated, has egg in it and keeps chilled says how it is cooled") {
    CHECK(
        shown(custard("- Heat to [82 C].")) ==
        R"(main.recipe:3:8: hint: Custard is heated and keeps chilled, and no step says how it is cooled [cooling-not-said]
   3 | keeps: 2 days chilled
     |        ^^^^^^^^^^^^^^
     = help: say how, and for how long: `- Spread in a shallow tray and chill for [2 h].`
1 hint
)");
    CHECK(kinds_of(*compiled(custard("- Heat to [82 C].\n- Chill for [2 h]."))).empty());
    CHECK(kinds_of(*compiled(custard("- Heat to [82 C].\n- Stand it in iced water."))).empty());
    CHECK(kinds_of(*compiled(custard("- Heat to [82 C].", "1 day"))).empty());
    CHECK(kinds_of(*compiled(custard("- Leave it."))).empty());
    // To chill it before it is heated does not count.
    CHECK(kinds_of(*compiled(custard("- Chill for [2 h].\n- Heat to [82 C]."))) ==
          kinds{"cooling-not-said"});
}

TEST_CASE("a tin that overflows is shown with its reckoning") {
    CHECK(
        shown(in_a_tin("450 g loaf", "1 loaf", "1600 g")) ==
        R"(main.recipe:4:6: warning: one loaf weighs 1600 g, and this tin holds 900 ml to the brim [tin-overflows]
   4 | tin: 450 g loaf
     |      ^^^^^^^^^^
     = note: a tin named by its loaf holds about 2 ml a gram of that to the brim, and a batter weighs about 1 g a ml (common practice)
     = help: state the tin that it is baked in, or what one weighs
1 warning
)");
    CHECK(
        shown(in_a_tin("20 cm round", "1 cake", "4 kg")) ==
        R"(main.recipe:4:6: warning: one cake weighs 4000 g, and this tin holds 3142 ml to the brim [tin-overflows]
   4 | tin: 20 cm round
     |      ^^^^^^^^^^^
     = note: its base is 314 cm²; the deepest tins are 10 cm and the flattest 1 cm deep, and a batter weighs about 1 g a ml (common practice)
     = help: state the tin that it is baked in, or what one weighs
1 warning
)");
}

TEST_CASE("a tin that is far from full is shown with its reckoning") {
    CHECK(
        shown(in_a_tin("23 cm round", "1 cake", "60 g")) ==
        R"(main.recipe:4:6: warning: one cake weighs 60 g, and this tin is not a quarter full with less than 104 g [tin-not-filled]
   4 | tin: 23 cm round
     |      ^^^^^^^^^^^
     = note: its base is 415 cm²; the deepest tins are 10 cm and the flattest 1 cm deep, and a batter weighs about 1 g a ml (common practice)
     = help: state the tin that it is baked in, or how many go into one
1 warning
)");
}

TEST_CASE("tins are reckoned widely") {
    const auto kinds_in = [](const std::string& tin, const std::string& makes,
                             const std::string& grams) {
        return kinds_of(*compiled(in_a_tin(tin, makes, grams)));
    };
    // π × 11.5² = 415 cm²: from 104 g to 4155 g.
    CHECK(kinds_in("23 cm round", "1 cake", "105 g").empty());
    CHECK(kinds_in("23 cm round", "1 cake", "103 g") == kinds{"tin-not-filled"});
    CHECK(kinds_in("23 cm round", "1 cake", "4150 g").empty());
    CHECK(kinds_in("23 cm round", "1 cake", "4160 g") == kinds{"tin-overflows"});
    CHECK(kinds_in("9 in", "1 cake", "100 g") == kinds{"tin-not-filled"});
    CHECK(kinds_in("20 cm square", "1 cake", "101 g").empty());
    CHECK(kinds_in("20 cm square", "1 cake", "99 g") == kinds{"tin-not-filled"});
    // 450 g loaf: from 225 to 900 g.
    CHECK(kinds_in("450 g loaf", "1 loaf", "230 g").empty());
    CHECK(kinds_in("450 g loaf", "1 loaf", "220 g") == kinds{"tin-not-filled"});
    CHECK(kinds_in("450 g loaf", "1 loaf", "890 g").empty());
    CHECK(kinds_in("450 g loaf", "1 loaf", "910 g") == kinds{"tin-overflows"});
    // Twelve buns may share a tin, tarts do not; thin sheets are baked on large ones.
    CHECK(kinds_in("23 cm round", "12 buns", "900 g").empty());
    CHECK(kinds_in("23 cm round", "12 tarts", "900 g") == kinds{"tin-not-filled"});
    CHECK(kinds_in("40 x 60 cm", "1 cake", "400 g").empty());
    // What is not known is not compared.
    CHECK(kinds_in("23 cm round", "1 cake", "some").empty());
}

} // namespace benchcard::testing
