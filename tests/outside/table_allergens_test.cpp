#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

/// What the built-in table says of allergens and of raw food, against the lists that laws give.
namespace benchcard::ingredients {
namespace {

const entry& known(std::string_view name) {
    const auto found = built_in_table().find(name, country::uk);
    INFO(name);
    REQUIRE(found.match);
    return *found.match;
}

bool holds(const std::vector<std::string>& list, std::string_view what) {
    return std::find(list.begin(), list.end(), what) != list.end();
}

struct food {
    std::string_view name, what;
};

} // namespace

TEST_CASE("Each allergen of Annex II of Regulation (EU) No 1169/2011 is known from a food") {
    for (const auto& f : {
             food{"plain flour", "wheat"},
             {"spelt flour", "spelt"},
             {"rye flour", "rye"}, // 1
             {"pearl barley", "barley"},
             {"rolled oats", "oats"}, // 1
             {"prawns", "crustaceans"},
             {"eggs", "egg"},
             {"salmon", "fish"}, // 2-4
             {"peanuts", "peanuts"},
             {"tofu", "soya"},
             {"butter", "milk"}, // 5-7
             {"ground almonds", "almonds"},
             {"hazelnuts", "hazelnuts"},
             {"walnuts", "walnuts"}, // 8
             {"cashews", "cashews"},
             {"pecans", "pecans"},
             {"brazil nuts", "brazil nuts"}, // 8
             {"pistachios", "pistachios"},
             {"macadamia nuts", "macadamia nuts"}, // 8
             {"celery", "celery"},
             {"celeriac", "celery"},
             {"mustard powder", "mustard"}, // 9, 10
             {"tahini", "sesame"},
             {"red wine", "sulphites"},
             {"dried apricots", "sulphites"}, // 11, 12
             {"lupin flour", "lupin"},
             {"mussels", "molluscs"}, // 13, 14
         }) {
        INFO(f.name);
        CHECK(holds(known(f.name).contains, f.what));
    }
}

TEST_CASE("Pine nuts are a nut of the United States list, coconut and chestnut of neither") {
    // Food and Drug Administration, allergen questions and answers, edition 5 (January 2025).
    CHECK(holds(known("pine nuts").contains, "pine nuts"));
    for (const auto* name : {"fresh coconut", "desiccated coconut", "coconut oil", "chestnuts"}) {
        INFO(name);
        CHECK(known(name).contains.empty());
    }
}

TEST_CASE("A name that ends in another's does not take over or lose an allergen") {
    for (const auto& f : {food{"cashew butter", "cashews"},
                          {"peanut butter", "peanuts"},
                          {"almond milk", "almonds"},
                          {"soya milk", "soya"},
                          {"mustard oil", "mustard"},
                          {"sesame seed oil", "sesame"},
                          {"hazelnut chocolate", "hazelnuts"},
                          {"prawn stock", "crustaceans"},
                          {"pistachio flour", "pistachios"},
                          {"rye bread", "rye"},
                          {"malt vinegar", "barley"}}) {
        INFO(f.name);
        CHECK(holds(known(f.name).contains, f.what));
    }
    for (const auto* name :
         {"cashew butter", "cocoa butter", "peanut butter", "apple butter", "butter beans",
          "cream of tartar", "soya milk", "coconut milk", "oat milk", "vegan butter",
          "coconut yogurt", "coconut cream", "plant-based double cream"}) {
        INFO(name);
        CHECK_FALSE(holds(known(name).contains, "milk"));
    }
    for (const auto* name :
         {"buckwheat flour", "rice flour", "chickpea flour", "gluten-free flour", "coconut flour",
          "gluten-free self-raising flour", "pistachio flour", "gluten-free breadcrumbs"}) {
        INFO(name);
        CHECK_FALSE(holds(known(name).contains, "wheat"));
    }
}

TEST_CASE("What is sold raw and what its maker has treated are told apart") {
    for (const auto& f : {food{"plain flour", "flour"},
                          {"wholemeal flour", "flour"},
                          {"rice flour", "flour"},
                          {"oat flour", "flour"},
                          {"eggs", "egg"},
                          {"egg whites", "egg"},
                          {"minced beef", "meat"},
                          {"chicken", "poultry"},
                          {"turkey", "poultry"},
                          {"quail", "poultry"},
                          {"salmon", "fish"},
                          {"prawns", "fish"},
                          {"kidney beans", "beans"},
                          {"cannellini beans", "beans"},
                          {"red lentils", "pulses"},
                          {"bean sprouts", "sprouts"}}) {
        INFO(f.name);
        CHECK(holds(known(f.name).raw, f.what));
    }
    for (const auto* name :
         {"heat-treated flour", "pasteurised egg", "pasteurised egg whites", "cornstarch",
          "tinned kidney beans", "cooked prawns", "cooked chicken", "tinned tuna"}) {
        INFO(name);
        CHECK(known(name).raw.empty());
    }
}

TEST_CASE("A name that means two things asks whose it is") {
    const auto& table = built_in_table();
    REQUIRE(table.find("cornflour", country::uk).match);
    REQUIRE(table.find("cornflour", country::us).match);
    CHECK(table.find("cornflour", country::uk).match->name == "cornstarch");
    CHECK(table.find("cornflour", country::us).match->name == "maize flour");
    CHECK(table.find("tomato purée", country::uk).match->name == "tomato paste");
    CHECK(table.find("tomato purée", country::us).match->name == "passata");
    for (const auto* name : {"cornflour", "corn flour", "tomato puree"}) {
        INFO(name);
        CHECK_FALSE(table.find(name, country::any).match);
        CHECK(table.find(name, country::any).readings.size() == 2);
    }
    for (const auto* name : {"cream", "yeast", "ginger", "pepper"}) {
        INFO(name);
        CHECK_FALSE(table.find(name, country::uk).match);
    }
}

TEST_CASE("Every entry says where its figures come from and what it contains") {
    const auto entries = built_in_table().entries();
    CHECK(entries.size() >= 180);
    for (const auto* e : entries) {
        INFO(e->name);
        CHECK(e->contents_stated);
        bool by_volume = false, by_volume_unstated = false;
        for (const auto& f : e->figures) {
            CHECK_FALSE(f.source.empty());
            CHECK(f.low.value > 0);
            if (!f.volume) continue;
            by_volume = true;
            by_volume_unstated |= f.state.empty();
            // From sprigs of dill to syrup: outside this a figure has a slipped digit or unit.
            CHECK(approximately(f.density()) > 0.03);
            CHECK(approximately(f.density()) < 1.5);
        }
        CHECK(by_volume == by_volume_unstated);
    }
}

} // namespace benchcard::ingredients
