#include "compiler/safety/allergen_lists.hpp"

#include "compiler/cards/allergen_strip.hpp"
#include "compiler/ingredients/table.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

/// The two lists of allergens, row by row against the texts of the laws.
namespace benchcard::testing {

namespace {

using safety::law;
using strings = std::vector<std::string>;

std::string shown(const safety::allergens& a, law whose) {
    std::string result;
    for (const auto& run : cards::allergen_strip(a, whose))
        result += run.strong ? "*" + run.text + "*" : run.text;
    return result;
}

std::set<std::string_view> headings(std::string_view safety::allergen::*of) {
    std::set<std::string_view> result;
    for (const auto& a : safety::all_allergens())
        if (!(a.*of).empty()) result.insert(a.*of);
    return result;
}

bool is_on(std::string_view name, law whose) {
    const auto* a = safety::allergen_named(name);
    INFO(name);
    REQUIRE(a);
    return safety::is_on_list(*a, whose);
}

} // namespace

TEST_CASE("the EU's list has the fourteen headings of Annex II, the US list its nine") {
    // Reg. (EU) No 1169/2011, Annex II, 1 to 14.
    CHECK(headings(&safety::allergen::eu) ==
          std::set<std::string_view>{"cereals containing gluten", "crustaceans", "eggs", "fish",
                                     "peanuts", "soybeans", "milk", "nuts", "celery", "mustard",
                                     "sesame seeds", "sulphur dioxide and sulphites", "lupin",
                                     "molluscs"});
    // FALCPA 2004, section 203, and the FASTER Act of 2021.
    CHECK(headings(&safety::allergen::us) ==
          std::set<std::string_view>{"milk", "eggs", "fish", "crustacean shellfish", "tree nuts",
                                     "peanuts", "wheat", "soybeans", "sesame"});
    for (const auto& a : safety::all_allergens()) {
        INFO(a.name);
        CHECK_FALSE(a.source.empty());
        CHECK_FALSE((a.eu.empty() && a.us.empty()));
        CHECK(safety::allergen_named(a.name) == &a);
        for (const auto other : a.also) CHECK(safety::allergen_named(other) == &a);
    }
}

TEST_CASE("where the lists differ") {
    for (const auto* both : {"wheat", "spelt", "khorasan wheat", "kamut", "almonds", "hazelnut",
                             "walnuts", "cashews", "pecans", "Brazil nuts", "pistachios",
                             "macadamia nuts", "sesame", "eggs", "milk", "soybeans"}) {
        CHECK(is_on(both, law::eu));
        CHECK(is_on(both, law::us));
    }
    // FALCPA names wheat alone of the cereals; molluscs are no crustacean shellfish.
    for (const auto* eu :
         {"rye", "barley", "oats", "celery", "mustard", "lupin", "molluscs", "sulphites"}) {
        CHECK(is_on(eu, law::eu));
        CHECK_FALSE(is_on(eu, law::us));
    }
    // FDA, Questions and Answers on Food Allergens, edition 5 (January 2025).
    CHECK(is_on("pine nuts", law::us));
    CHECK_FALSE(is_on("pine nuts", law::eu));
    for (const auto* neither : {"coconut", "chestnut", "chestnuts", "buckwheat", "lychee"}) {
        INFO(neither);
        CHECK(safety::allergen_named(neither) == nullptr);
    }
}

TEST_CASE("every allergen of both lists is reached by an ingredient of the table") {
    std::set<std::string> reached;
    for (const auto* e : ingredients::built_in_table().entries())
        for (const auto& name : e->contains) {
            INFO(e->name << " contains " << name);
            // Each is a name of the lists, letter by letter.
            REQUIRE(safety::allergen_named(name));
            CHECK(safety::listed_name(name) == name);
            reached.insert(name);
        }
    for (const auto& a : safety::all_allergens()) {
        if (a.name == "gluten" || a.name == "nuts") continue; // for packets that say no more
        INFO(a.name);
        CHECK(reached.contains(std::string(a.name)));
    }
}

TEST_CASE("labels choose a list, and nothing means both") {
    CHECK(safety::law_named("eu") == law::eu);
    CHECK(safety::law_named("us") == law::us);
    CHECK(safety::law_named("both") == law::both);
    CHECK(safety::law_named("") == law::both);
}

TEST_CASE("the strip says whose list it is only where they differ, and leaves nothing out") {
    const safety::allergens a{{"almonds", "oats", "pine nuts", "wheat"}, {"celery"}, {"stock"}};
    CHECK(shown(a, law::both) ==
          "Contains *almonds* · *wheat* · *oats* (EU list only) · *pine nuts* (US list only). May "
          "contain *celery* (EU list only). Check the packet of stock");
    CHECK(shown(a, law::eu) ==
          "Contains *almonds* · *oats* · *wheat* · *pine nuts* (not on the EU list). May "
          "contain *celery*. Check the packet of stock");
    CHECK(shown(a, law::us) ==
          "Contains *almonds* · *pine nuts* · *wheat* · *oats* (not on the US list). May "
          "contain *celery* (not on the US list). Check the packet of stock");
    CHECK(shown({{"buckwheat"}, {}, {}}, law::both) == "Contains *buckwheat* (on neither list)");
    CHECK(shown({{"spelt"}, {}, {}}, law::both) == "Contains *spelt (wheat)*");
    CHECK(shown({}, law::both).empty());
}

} // namespace benchcard::testing
