#include "shown.hpp"

#include <algorithm>

/// Amounts that no spoon or scale shows.
namespace benchcard::testing {

namespace {

bool is_measurable(const std::string& line) {
    const auto c =
        compiled("recipe: R\nmeasures: us\n500 g water\n300 g plain flour\n" + line + "\n");
    return std::none_of(c->messages.begin(), c->messages.end(),
                        [](const auto& m) { return m.kind == "not-measurable"; });
}

} // namespace

TEST_CASE("spoons, cups and pieces are halved and thirded, no finer") {
    for (const auto* line :
         {"0.1 tbsp lemon juice", "1/22 tsp fine salt", "0.3 cloves garlic", "0.2 large eggs",
          "11 pinches cayenne pepper", "22 tsp vanilla extract"}) {
        INFO(line);
        CHECK_FALSE(is_measurable(line));
    }
    for (const auto* line : {"1/8 tsp fine salt", "2/3 cup caster sugar", "1.5 tbsp lemon juice",
                             "half a lemon", "3 pinches cayenne pepper", "14 tbsp butter",
                             "2-3 large eggs", "about 0.2 tsp fine salt"}) {
        INFO(line);
        CHECK(is_measurable(line));
    }
}

TEST_CASE("what is lighter than a scale shows is asked about, but not what is weighed finely") {
    for (const auto* line : {"0.3 g fine salt", "0.6 g caster sugar", "0.1 g nutmeg"}) {
        INFO(line);
        CHECK_FALSE(is_measurable(line));
    }
    for (const auto* line : {"1 g fine salt", "0.5 g nutmeg", "0.3 g saffron", "0.4 g fresh yeast",
                             "0.8 g xanthan gum", "some fine salt"}) {
        INFO(line);
        CHECK(is_measurable(line));
    }
}

TEST_CASE("a house whose scale is finer weighs less, and one whose is coarser more") {
    const auto said = [](const std::string& step, const std::string& amount) {
        return kinds_of(*compiled("recipe: Biscuits\nscale-step: " + step +
                                  "\n500 g plain flour\n" + amount + " fine salt\n"));
    };
    CHECK(said("0.1 g", "0.4 g").empty());
    CHECK(said("0.5 g", "0.4 g") == kinds{"not-measurable"});
    CHECK(said("5 g", "5 g").empty());
    CHECK(said("5 g", "4 g") == kinds{"not-measurable"});
}

} // namespace benchcard::testing
