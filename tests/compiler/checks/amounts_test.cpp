#include "shown.hpp"

/// Ranges of ingredients.
namespace benchcard::testing {

namespace {

kinds dip(const std::string& juice) {
    return kinds_of(*compiled("recipe: Dip\n500 g plain yogurt\n" + juice + " lemon juice\n"));
}

} // namespace

TEST_CASE("a range is wide where its ends are more than four times apart") {
    CHECK(shown("recipe: Dip\n500 g plain yogurt\n15-200 g lemon juice\n") ==
          R"(main.recipe:3:1: hint: 200 is 13 times 15 [range-wide]
   3 | 15-200 g lemon juice
     | ^^^^^^
     = help: if a digit was lost, put it back; otherwise give one amount, and the rest `to taste`
1 hint
)");
    CHECK(dip("15-60 g").empty());
    CHECK(dip("15-61 g") == kinds{"range-wide"});
    CHECK(dip("1-2 tbsp").empty());
    CHECK(kinds_of(*compiled("recipe: Dip\n500 g plain yogurt\n1-6 lemons\n")).empty());
}

} // namespace benchcard::testing
