#include "compiler/safety/safety.hpp"

#include "../recipe/reading.hpp"

#include <rapidcheck/catch.h>
#include <set>

/// Allergens and raw things along the component graph.
namespace benchcard::testing {

namespace {

using strings = std::vector<std::string>;

safety::allergens allergens_of_last(const std::string& text) {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    return safety::allergens_of(c->meaning).back();
}

strings texts(const std::vector<safety::caution>& cautions) {
    strings result;
    for (const auto& c : cautions) {
        CHECK_FALSE(c.source.empty());
        result.push_back(c.text);
    }
    return result;
}

strings cautions_of(const commands::compiled& c, const std::string& title) {
    const auto hazards = safety::hazards_of(c.meaning);
    for (std::size_t i = 0; i < c.meaning.components.size(); ++i)
        if (c.meaning.components[i].title == title) return texts(safety::cautions_for(hazards[i]));
    FAIL("no component " << title);
    return {};
}

strings cautions_of_last(const std::string& text) {
    const auto c = compiled(text);
    return cautions_of(*c, c->meaning.product().title);
}

bool mentions(const strings& cautions, const std::string& words) {
    return std::any_of(cautions.begin(), cautions.end(),
                       [&](const auto& c) { return c.find(words) != std::string::npos; });
}

bool has(const strings& list, const std::string& word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

/// What is put into a component of a random recipe, and what must then be printed of it.
struct stock {
    std::string line, contains, check;
};
const std::vector<stock> larder = {
    {"10 g plain flour", "wheat", ""},
    {"10 g butter", "milk", ""},
    {"1 large egg", "egg", ""},
    {"10 g ground almonds", "almonds", ""},
    {"10 g celery", "celery", ""},
    {"10 g moon dust", "", "moon dust"},
    {"10 g raisins", "", "raisins"},
    {"10 g caster sugar", "", ""},
    {"some chopped hazelnuts, for dusting", "hazelnuts", ""},
    {"5 g sesame seeds, optional", "sesame", ""},
    {"10 g hazelnuts or pistachios", "pistachios", ""},
};

} // namespace

TEST_CASE("allergens are gathered from every line, whatever its amount") {
    CHECK(allergens_of_last(with_lines("100 g plain flour\n50 g butter\n1 large egg")).contains ==
          strings{"egg", "milk", "wheat"});
    CHECK(allergens_of_last(with_lines("some plain flour, for dusting")).contains ==
          strings{"wheat"});
    CHECK(allergens_of_last(with_lines("10 g flaked almonds, optional")).contains ==
          strings{"almonds"});
    CHECK(allergens_of_last(with_lines("10 g hazelnuts or almonds")).contains ==
          strings{"almonds", "hazelnuts"});
    CHECK(allergens_of_last(with_lines("10 g hazelnuts or almonds, optional")).contains ==
          strings{"almonds", "hazelnuts"});
    CHECK(allergens_of_last(with_lines("some hazelnuts or almonds, for dusting")).contains ==
          strings{"almonds", "hazelnuts"});
    // The words before a shorter name are heard too.
    CHECK(has(allergens_of_last(with_lines("10 g hazelnut double cream")).contains, "hazelnuts"));
    CHECK(allergens_of_last(with_lines("100 g water")).contains.empty());
}

TEST_CASE("an ingredient that is not known must be read on its packet") {
    CHECK(allergens_of_last(with_lines("10 g moon dust")).check_packet == strings{"moon dust"});
    CHECK(allergens_of_last(with_lines("some moon dust")).check_packet == strings{"moon dust"});
    CHECK(allergens_of_last(with_lines("10 g currants or raisins")).check_packet ==
          strings{"currants", "raisins"});
    // So must one whose definition does not say what it holds.
    const std::string silent = "recipe: R\ningredient: house mix\nweighs: 10 g each\nsource: "
                               "weighed here\ncomponent: C\n10 g house mix\n";
    CHECK(allergens_of_last(silent).check_packet == strings{"house mix"});
}

TEST_CASE("each allergen is traced to what brings it, with the law that names it") {
    const auto c = compiled("recipe: R\ncomponent: Base\n10 g rye flour\n10 g milk "
                            "chocolate\nassembly: End\nall Base\n5 g rye bread\n1 g house mix\n"
                            "ingredient: house mix\ncontains: buckwheat\nmay-contain: sesame\n");
    CHECK(safety::sources_of_allergens(c->meaning) ==
          "\nAllergens\n"
          "  buckwheat: house mix (End)\n"
          "    by no list; the definition of the ingredient\n"
          "  milk: milk chocolate (Base)\n"
          "    by Reg. (EU) No 1169/2011, Annex II, 7; FALCPA 2004, section 203\n"
          "  rye: rye flour (Base), rye bread (End)\n"
          "    by Reg. (EU) No 1169/2011, Annex II, 1\n"
          "  may contain sesame: house mix (End)\n"
          "    by Reg. (EU) No 1169/2011, Annex II, 11; FASTER Act of 2021\n"
          "  check the packet of milk chocolate (Base)\n"
          "  check the packet of rye bread (End)\n");
    CHECK(safety::sources_of_allergens(compiled(with_lines("10 g water"))->meaning).empty());
}

TEST_CASE("no allergen is lost on any path") {
    rc::prop("random components of random components", [] {
        const auto count = *rc::gen::inRange<std::size_t>(1, 8);
        std::vector<std::set<std::string>> contains(count), check(count);
        std::string text = "recipe: R\n";
        for (std::size_t i = 0; i < count; ++i) {
            text +=
                "component: Part" + std::string(1, static_cast<char>('a' + i)) + "\n1 g water\n";
            for (const auto& s : larder) {
                if (*rc::gen::inRange(0, 4) != 0) continue;
                text += s.line + "\n";
                if (!s.contains.empty()) contains[i].insert(s.contains);
                if (!s.check.empty()) check[i].insert(s.check);
            }
            for (std::size_t used = 0; used < i; ++used) {
                if (*rc::gen::inRange(0, 2) != 0) continue;
                text += *rc::gen::element<std::string>("1 g", "some", "half", "all") + " Part" +
                        std::string(1, static_cast<char>('a' + used)) + "\n";
                contains[i].insert(contains[used].begin(), contains[used].end());
                check[i].insert(check[used].begin(), check[used].end());
            }
        }
        const auto c = compiled(text);
        const auto found = safety::allergens_of(c->meaning);
        RC_ASSERT(found.size() == count);
        for (std::size_t k = 0; k < count; ++k) {
            // The recipe's order may differ from the text's only where a part stands before one it
            // uses.
            const auto i = static_cast<std::size_t>(c->meaning.components[k].title.back() - 'a');
            for (const auto& a : contains[i]) RC_ASSERT(has(found[k].contains, a));
            for (const auto& a : check[i]) RC_ASSERT(has(found[k].check_packet, a));
        }
    });
}

TEST_CASE("raw egg in a dessert that is never cooked asks for pasteurised egg") {
    const auto cautions =
        cautions_of_last(with_lines("3 large eggs\n100 g dark chocolate\n- Melt [chocolate], fold "
                                    "in [eggs]; chill for [3 h] below [5 C]."));
    REQUIRE(cautions.size() == 1);
    CHECK_THAT(cautions.front(), Catch::StartsWith("Raw egg, and no step cooks it") &&
                                     Catch::Contains("pasteurised"));
}

TEST_CASE("what is cooked later says so, and no more") {
    const std::string text = "recipe: R\ncomponent: Dough\n500 g plain flour\n1 large egg\n- Mix "
                             "[flour] and [egg].\nassembly: Bread\n";
    const auto baked = compiled(text + "all Dough\n- Bake [Dough] at [200 C] for [30 min].\n");
    REQUIRE(kinds_of(*baked).empty());
    CHECK(cautions_of(*baked, "Dough") ==
          strings{"Raw flour and egg until cooked: do not taste, wash hands and bench after."});
    const auto raw = compiled(text + "all Dough\n- Roll [Dough] and chill for [2 h].\n");
    CHECK(mentions(cautions_of(*raw, "Dough"), "Raw flour, and no step cooks it"));
    CHECK(mentions(cautions_of(*raw, "Bread"), "Raw flour, and no step cooks it"));
    CHECK(mentions(cautions_of(*raw, "Bread"), "Raw egg, and no step cooks it"));
}

TEST_CASE("what came in cooked is no hazard, and what comes in raw after the oven is one") {
    const std::string baked =
        "recipe: R\ncomponent: Sponge\n3 large eggs\n- Bake [eggs] at [180 C] for [20 min].\n";
    const auto clean = compiled(baked + "assembly: Cake\nall Sponge\n- Cut [Sponge].\n");
    CHECK(cautions_of(*clean, "Cake").empty());
    CHECK_FALSE(mentions(cautions_of(*clean, "Sponge"), "no step cooks it"));
    // The mousse goes on what was baked before: its egg is not cooked by that.
    const auto mousse =
        compiled(baked + "component: Mousse\n3 large eggs\n- Whisk [eggs].\nassembly: Cake\nall "
                         "Sponge\nall Mousse\n- Spread [Mousse] on [Sponge].\n");
    CHECK(mentions(cautions_of(*mousse, "Mousse"), "Raw egg, and no step cooks it"));
    CHECK(mentions(cautions_of(*mousse, "Cake"), "Raw egg, and no step cooks it"));
    CHECK_FALSE(mentions(cautions_of(*mousse, "Sponge"), "no step cooks it"));
}

TEST_CASE("used by one that cooks it and by one that does not, it is not cooked") {
    const auto c =
        compiled("recipe: R\ncomponent: Batter\n3 large eggs\n- Whisk [eggs].\n"
                 "component: Hot\nhalf Batter\n- Bake [Batter] at [180 C] for [20 min].\n"
                 "component: Cold\nhalf Batter\n- Chill [Batter] for [2 h].\n"
                 "assembly: End\nall Hot\nall Cold\n- Put [Cold] on [Hot].\n");
    REQUIRE(kinds_of(*c).empty());
    CHECK(mentions(cautions_of(*c, "Batter"), "no step cooks it"));
    CHECK(mentions(cautions_of(*c, "Cold"), "no step cooks it"));
    CHECK(mentions(cautions_of(*c, "End"), "no step cooks it"));
    CHECK_FALSE(mentions(cautions_of(*c, "Hot"), "no step cooks it"));
}

TEST_CASE("what a house file makes for others is for cooking only") {
    const auto c =
        compiled("recipe: House\ncomponent: Pastry\n500 g plain flour\n1 large egg\n- Mix [flour] "
                 "and [egg].\ncomponent: Syrup\n100 g water\n- Boil [water] for [1 min].\n");
    CHECK(cautions_of(*c, "Pastry") ==
          strings{"Raw flour and egg, not cooked here: only for what is cooked later. Do not "
                  "taste, wash hands and bench after."});
    // The product itself is never excused so.
    const auto last = compiled("recipe: House\ncomponent: Syrup\n100 g water\n- Boil [water] for "
                               "[1 min].\ncomponent: Mousse\n3 large eggs\n- Whisk [eggs].\n");
    CHECK(mentions(cautions_of(*last, "Mousse"), "pasteurised"));
}

TEST_CASE("a step cooks by time with heat or with a word for cooking") {
    const auto does = [](const std::string& step) {
        const auto c = compiled(with_lines("100 g water\n- Take [water]. " + step));
        return safety::cooks(c->meaning.components.front().steps.front());
    };
    CHECK(does("Bake at [180 C] for [20 min]."));
    CHECK(does("Bake at [350 F] for [20 min]."));
    CHECK(does("Bake at [gas 4] for [20 min]."));
    CHECK(does("Simmer for [1 h]."));
    CHECK(does("Boil for [2 min]."));
    CHECK(does("Hold at [75 C] for [1 min]."));
    CHECK_FALSE(does("Chill for [3 h], below [5 C]."));
    CHECK_FALSE(does("Prove at [28 C] for [1 h]."));
    CHECK_FALSE(does("Bring to the boil."));
    CHECK_FALSE(does("Warm to [40 C] for [10 min]."));
    CHECK_FALSE(does("Pour boiling water over it."));
    CHECK_FALSE(does("Leave [overnight] at [180 C]."));
}

TEST_CASE("every raw thing never cooked has its own words, and none tells to heat flour at home") {
    using safety::raw;
    strings all;
    for (const auto what : {raw::flour, raw::egg, raw::meat, raw::poultry, raw::fish, raw::pulses,
                            raw::beans, raw::sprouts}) {
        const auto never = texts(safety::cautions_for({{what, false, false}}));
        REQUIRE(never.size() == 1);
        CHECK_THAT(never.front(), Catch::Contains("no step"));
        CHECK_FALSE(has(all, never.front()));
        all.push_back(never.front());
        const auto here = texts(safety::cautions_for({{what, true, false}}));
        CHECK(here.size() == 1);
        CHECK(texts(safety::cautions_for({{what, false, true}})) == here);
        for (const auto* claim : {"is safe", "are safe", "bake the flour", "toast the flour"})
            CHECK_FALSE(mentions(never, claim));
    }
    CHECK(safety::cautions_for({}).empty());
    CHECK(
        texts(safety::cautions_for(
            {{raw::flour, true, false}, {raw::egg, true, false}, {raw::meat, true, false}})) ==
        strings{"Raw flour, egg and meat until cooked: do not taste, wash hands and bench after."});
}

TEST_CASE("what goes in after the cooking is not cooked by it") {
    const auto of = [](const std::string& steps) {
        return cautions_of_last(with_lines("500 g whole milk\n3 large eggs\n" + steps));
    };
    CHECK(mentions(of("- Boil [milk] for [5 min]; cool.\n- Whisk in [eggs] and chill."),
                   "Raw egg, and no step cooks it"));
    CHECK(mentions(of("- Boil [milk] and [eggs: 2] for [5 min].\n- Whisk in [eggs: rest]."),
                   "Raw egg, and no step cooks it"));
    CHECK(mentions(of("- Boil [milk] for [5 min].\n- Whisk in [rest]."),
                   "Raw egg, and no step cooks it"));
    CHECK_FALSE(mentions(of("- Whisk [milk] into [eggs].\n- Cook at [82 C] for [3 min]."),
                         "no step cooks it"));
    // Spoken of again is not put in again.
    CHECK_FALSE(mentions(of("- Boil [eggs] for [9 min]; put in [milk].\n- Peel [eggs]."),
                         "no step cooks it"));
}

TEST_CASE("boiling water and what was baked before cook nothing") {
    const auto of = [](const std::string& steps) {
        return cautions_of_last(with_lines("500 g whole milk\n3 large eggs\n" + steps));
    };
    for (const auto* step : {"- Pour boiling water under [milk] and [eggs]; whisk for [5 min].",
                             "- Spread [milk] and [eggs] on the baked base; leave for [2 h].",
                             "- Whisk [milk] and [eggs] for [5 min], with baking powder."}) {
        INFO(step);
        CHECK(mentions(of(step), "Raw egg, and no step cooks it"));
    }
}

TEST_CASE("beans of the kidney bean's kind need a boil, and an oven is none") {
    const auto of = [](const std::string& step) {
        return cautions_of_last(with_lines("500 g dried kidney beans\n2 l water\n" + step));
    };
    CHECK(mentions(of("- Bake [beans] in [water] at [120 C] for [6 h]."), "no step boils them"));
    CHECK(mentions(of("- Cook [beans] in [water] at [80 C] for [8 h]."), "no step boils them"));
    const auto boiled = of("- Boil [beans] hard in [water] for [30 min].");
    CHECK_FALSE(mentions(boiled, "no step boils them"));
    CHECK(mentions(boiled, "30 min for kidney beans"));
    // Lentils simmer.
    CHECK_FALSE(mentions(cautions_of_last(with_lines("500 g red lentils\n2 l water\n- Simmer "
                                                     "[lentils] in [water] for [30 min].")),
                         "no step"));
    CHECK(mentions(cautions_of_last(with_lines("100 g bean sprouts\n- Scatter [sprouts].")),
                   "Raw sprouts, and no step cooks them"));
}

TEST_CASE("a definition's raw words are read in the singular and the plural") {
    const std::string text = "recipe: R\ncomponent: C\n10 g house wash\n- Brush on [house wash].\n"
                             "ingredient: house wash\ncontains: eggs, soybeans\nraw: eggs\n";
    CHECK(mentions(cautions_of_last(text), "Raw egg, and no step cooks it"));
    CHECK(allergens_of_last(text).contains == strings{"egg", "soya"});
}

namespace {

/// All cautions of the last component.
strings all_of_last(const std::string& text) {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    return texts(safety::cautions_of(c->meaning).back());
}

} // namespace

TEST_CASE("hot sugar, hot oil, lye and dry ice are cautioned against, and nothing like them") {
    CHECK(mentions(all_of_last(with_lines("100 g caster sugar\n- Boil [sugar] to [118 C].")),
                   "Hot sugar"));
    CHECK_FALSE(mentions(all_of_last(with_lines("100 g caster sugar\n- Boil [sugar] to [104 C].")),
                         "Hot sugar"));
    CHECK_FALSE(mentions(
        all_of_last(with_lines("100 g caster sugar\n- Bake [sugar] at [150 C] for [1 h].")),
        "Hot sugar"));
    CHECK(mentions(all_of_last(with_lines("1 l sunflower oil\n- Heat [oil] to [180 C] and fry.")),
                   "Hot oil"));
    CHECK_FALSE(mentions(
        all_of_last(with_lines("1 l sunflower oil\n- Bake with [oil] at [180 C] for [1 h].")),
        "Hot oil"));
    CHECK(mentions(all_of_last(with_lines("40 g lye\n1 l water\n- Stir [lye] into [water].")),
                   "Lye burns"));
    CHECK(mentions(all_of_last(with_lines("400 g dry ice\n- Crush [dry ice].")), "Dry ice"));
}

TEST_CASE("honey is carried to the product") {
    const std::string text = "recipe: R\ncomponent: Syrup\n100 g honey\n- Boil [honey] for [1 "
                             "min].\nassembly: Cake\n100 g Syrup\n50 g honeydew melon\n- Pour "
                             "[Syrup].\n";
    CHECK(mentions(all_of_last(text), "infants under twelve months"));
    CHECK_FALSE(
        mentions(all_of_last(with_lines("50 g honeydew melon\n- Slice.")), "infants under"));
}

TEST_CASE("cooling and holding are by the rules of the labels") {
    const auto of = [](const std::string& labels) {
        return all_of_last("recipe: R\nlabels: " + labels +
                           "\nkeeps: 3 days chilled\n500 g whole milk\n300 g chicken\n- Simmer "
                           "[chicken] in [milk] for [30 min]; cool. Keep hot what is served.\n");
    };
    // FDA Food Code, 3-501.14, 3-501.16 and 3-401.11; WSI 2006/31 and SSI 2006/3, Schedule 4.
    CHECK(mentions(of("us"), "21 °C (70 °F) within 2 h and to 5 °C (41 °F) within 4 h more"));
    CHECK(mentions(of("us"), "57 °C (135 °F)"));
    CHECK(mentions(of("us"), "74 °C (165 °F)"));
    CHECK(mentions(of("eu"), "8 °C or below"));
    CHECK(mentions(of("eu"), "63 °C (145 °F) or above"));
    CHECK(mentions(of("both"), "21 °C (70 °F)"));
    CHECK(mentions(of("both"), "Hold it at 63 °C"));
    CHECK_FALSE(mentions(all_of_last(with_lines("100 g caster sugar\n- Boil [sugar] for [1 h].")),
                         "Cool it"));
}

} // namespace benchcard::testing
