#include "proportions.hpp"

/// House rules: `require:`.
namespace benchcard::testing {

namespace {

/// A recipe of one component under a house's rule.
std::unique_ptr<commands::compiled> under(const std::string& rule, const std::string& head,
                                          const std::string& component) {
    return compiled("recipe: Compote\nuse: house.recipe\n" + head + "component: Compote\n" +
                        component,
                    {{"house.recipe", "recipe: House\nrequire: " + rule + "\n"}});
}

const std::string plums = "1 kg plums\n";

} // namespace

TEST_CASE("what the house requires and is missing is an error that points at the rule") {
    const auto c = under("station, keeps", "", "station: stove\n" + plums);
    REQUIRE(kinds_of(*c) == kinds{"house-rule"});
    const auto& m = c->messages.front();
    CHECK(m.level == grammar::severity::error);
    CHECK(m.message == "Compote has no `keeps:`");
    CHECK(c->files.sources[0].text_of(m.where) == "Compote");
    REQUIRE(m.notes.size() == 1);
    CHECK(m.notes[0].text == "the house requires it here");
    CHECK(c->files.sources[1].text_of(*m.notes[0].where) == "keeps");
    CHECK_THAT(remarks_of(m), Catch::Contains("keeps: 3 days chilled"));
}

TEST_CASE("it holds for every component, of the recipe and of the files it uses") {
    const auto c = compiled("recipe: Tart\nrequire: station\nuse: house.recipe\ncomponent: "
                            "Filling\n1 kg plums\nassembly: Tart\nstation: oven\nall Filling\nall "
                            "Base\n",
                            {{"house.recipe", "recipe: House\ncomponent: Base\n1 kg plain flour\n"
                                              "component: Spare\n1 kg plain flour\n"}});
    CHECK(kinds_of(*c) == kinds{"house-rule", "house-rule"});
    CHECK(c->messages[0].message == "Filling has no `station:`");
    CHECK(c->messages[1].message == "Base has no `station:`"); // and Spare is not used
}

TEST_CASE("settings of the head are asked for in each file that takes part") {
    CHECK(kinds_of(*under("revision, date, source", "revision: 2\ndate: 2026-11-25\n", plums)) ==
          kinds{"house-rule"});
    const auto c = under("source", "", plums);
    REQUIRE(kinds_of(*c) == kinds{"house-rule"});
    CHECK(c->messages.front().message == "Compote has no `source:`");
    CHECK(kinds_of(*under("source", "source: the old notebook\n", plums)).empty());
}

TEST_CASE("one breach is said once, however many files ask") {
    const auto c = compiled("recipe: Compote\nuse: house.recipe\nrequire: keeps\n1 kg plums\n",
                            {{"house.recipe", "recipe: House\nrequire: keeps, keeps\n"}});
    CHECK(kinds_of(*c) == kinds{"house-rule"});
}

TEST_CASE(
    "allergens for every ingredient: one message a name, the hint that says less is dropped") {
    const auto c = under("allergens for every ingredient", "", "1 kg plums\n20 g mystery spice\n");
    REQUIRE(kinds_of(*c) == kinds{"house-rule"});
    CHECK(c->messages.front().message == "the allergens of mystery spice are not stated");
    const std::string own = "\ningredient: mystery spice\n";
    CHECK(kinds_of(*under("allergens for every ingredient", "",
                          "1 kg plums\n20 g mystery spice\n" + own + "contains: none\n"))
              .empty());
    CHECK(kinds_of(*under("allergens for every ingredient", "",
                          "1 kg plums\n20 g mystery spice\n" + own)) == kinds{"house-rule"});
}

TEST_CASE("weights: cups and sticks have their weight beside them, spoons need none") {
    const std::string us = "measures: us\n";
    const auto c =
        under("weights", us, "1 cup plain flour\n1 tsp fine salt\n100 ml water\n2 eggs\n");
    REQUIRE(kinds_of(*c) == kinds{"house-rule"});
    CHECK(c->messages.front().message == "this cup of plain flour has no weight beside it");
    CHECK(c->files.sources[0].text_of(c->messages.front().where) == "1 cup");
    CHECK(kinds_of(*under("weights", us, "1 cup = 125 g plain flour\n")).empty());
}

TEST_CASE("steps") {
    CHECK(kinds_of(*under("steps", "", plums)) == kinds{"house-rule"});
    CHECK(kinds_of(*under("steps", "", plums + "- Simmer [plums].\n")).empty());
}

TEST_CASE("what the recipe makes is what its product makes") {
    CHECK(kinds_of(*under("makes", "makes: 1 kg\n", plums)).empty());
    CHECK(kinds_of(*under("makes", "", plums)) == kinds{"house-rule"});
}

TEST_CASE("a requirement that does not exist gets the nearest and all there are") {
    const auto c = under("keps", "", plums);
    REQUIRE(kinds_of(*c) == kinds{"unknown-requirement"});
    const auto& m = c->messages.front();
    CHECK(m.message == "a house cannot require `keps`");
    CHECK_THAT(remarks_of(m), Catch::Contains("the nearest is `keeps`"));
    CHECK_THAT(remarks_of(m), Catch::Contains("allergens for every ingredient"));
    CHECK(kinds_of(*under("component", "", plums)) == kinds{"unknown-requirement"});
    CHECK(kinds_of(*under("accept", "", plums)) == kinds{"unknown-requirement"});
}

TEST_CASE("a line that could not be read may be what is required") {
    CHECK(kinds_of(*under("keeps", "", plums + "kepes: 3 days\n")) == kinds{"unknown-setting"});
}

TEST_CASE("a house's rule cannot be accepted") {
    CHECK(kinds_of(*under("keeps", "", "accept: house-rule, we eat it at once\n" + plums)) ==
          kinds{"house-rule", "accept-error"});
}

} // namespace benchcard::testing
