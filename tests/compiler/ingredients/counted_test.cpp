#include "../recipe/reading.hpp"
#include "compiler/commands/conversion.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <string>

/// Things that are counted: what one weighs, or from what to what.
namespace benchcard::testing {

namespace {

struct counted {
    const char* line;
    exact low, high; ///< grams
};

std::string converted(const std::string& amount) {
    const auto c = commands::convert_amount(amount, measures::system::unstated);
    INFO(amount);
    REQUIRE(c.weight);
    return c.weight->substr(0, c.weight->find(';'));
}

} // namespace

TEST_CASE("what fruit gives, and pieces of it, are counted by the fruit") {
    for (const auto& c : {counted{"1 lemon juice", 48, 48},
                          {"1/2 lemon juice", 24, 24},
                          {"2 limes", 134, 134},
                          {"3 lime juice", 132, 132},
                          {"1 orange juice", 86, 86},
                          {"2 lemon zest", 8, 12},
                          {"1 orange zest", 6, 12},
                          {"2 wedges lemon", 14, 14},
                          {"4 slices lemon", 28, 28},
                          {"2 cloves garlic", 6, 6},
                          {"3 garlic cloves", 9, 9}}) {
        INFO(c.line);
        const auto weight = weight_of_line(c.line);
        REQUIRE(weight);
        CHECK(weight->low == c.low);
        CHECK(weight->high == c.high);
        CHECK(weight->used == (c.low + c.high) / 2);
    }
}

TEST_CASE("leaves, sachets and pods are ranges of common practice, and the middle is used") {
    for (const auto& c : {counted{"6 leaves gelatine", exact(96, 10), exact(204, 10)},
                          {"6 leaf gelatine", exact(96, 10), exact(204, 10)},
                          {"6 gelatine leaves", exact(96, 10), exact(204, 10)},
                          {"6 leaves of gelatine", exact(96, 10), exact(204, 10)},
                          {"6 sheets leaf gelatine", exact(96, 10), exact(204, 10)},
                          {"2 gold leaf gelatine", exact(38, 10), exact(42, 10)},
                          {"2 platinum gelatine leaves", exact(32, 10), exact(36, 10)},
                          {"1 sachet baking powder", 10, 17},
                          {"1 packet instant yeast", 7, 8},
                          {"2 sachets vanilla sugar", 14, 20},
                          {"1 vanilla pod", 2, 5},
                          {"2 bay leaves", exact(2, 10), 1},
                          {"1 cube fresh yeast", 40, 42},
                          // Published, and so one weight.
                          {"1 cake fresh yeast", 17, 17},
                          {"1 sachet active dry yeast", exact(72, 10), exact(72, 10)},
                          {"1 envelope gelatine powder", 7, 7}}) {
        INFO(c.line);
        const auto weight = weight_of_line(c.line);
        REQUIRE(weight);
        CHECK(weight->low == c.low);
        CHECK(weight->high == c.high);
        CHECK(weight->used == (c.low + c.high) / 2);
    }
}

TEST_CASE("convert shows the range that one may weigh") {
    CHECK(converted("6 leaves gelatine") == "15 g (9.6 g to 20 g by what one weighs), ½ oz");
    CHECK(converted("3-4 vanilla pods") ==
          "12 g (6 g to 20 g by how much is meant and what one weighs)");
    CHECK(converted("2-3 lemons") == "145 g (116 g to 174 g by how much is meant), 5 oz");
    CHECK(converted("1/2 lemon juice") == "24 g, ⅞ oz");
    CHECK(converted("2 tsp baking powder").starts_with("9.3 g"));
}

} // namespace benchcard::testing
