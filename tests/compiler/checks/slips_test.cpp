#include "../recipe/reading.hpp"

#include "compiler/checks/slips.hpp"

/// Slips of the pen, undone: a pure reckoning on amounts.
namespace benchcard::testing {

namespace {

using checks::amount_written;
using checks::balance_wanted;
using grammar::unit;

bool may_mean(const amount_written& written, const amount_written& meant, bool commonly = true) {
    const auto all = checks::slips_in(written);
    return std::any_of(all.begin(), all.end(),
                       [&](const auto& s) { return s.meant == meant && s.is_common == commonly; });
}

checks::weighed_amount grams(std::size_t line, const exact& number) {
    return {line, {number, unit::gram}, number, measures::system::unstated};
}

std::vector<std::string> closing(const std::vector<checks::weighed_amount>& amounts,
                                 const exact& ready, const exact& wanted) {
    std::vector<std::string> result;
    for (const auto& s :
         checks::closing_slips(amounts, ready, {wanted, wanted, wanted * exact(103, 100)}))
        result.push_back(std::to_string(s.line) + ": " + checks::said(s.meant));
    return result;
}

using lines = std::vector<std::string>;

} // namespace

TEST_CASE("the common slips are undone") {
    CHECK(may_mean({15, unit::gram}, {150, unit::gram}));   // a nought dropped
    CHECK(may_mean({12, unit::gram}, {125, unit::gram}));   // a five dropped
    CHECK(may_mean({1500, unit::gram}, {150, unit::gram})); // a nought too many
    CHECK(may_mean({255, unit::gram}, {25, unit::gram}));   // the last digit struck twice
    CHECK(may_mean({exact(5, 2), unit::gram}, {25, unit::gram}));
    CHECK(may_mean({25, unit::gram}, {exact(1, 4), unit::gram}));
    CHECK(may_mean({500, unit::kilogram}, {500, unit::gram}));
    CHECK(may_mean({8, unit::gram}, {8, unit::ounce}));
    CHECK(may_mean({500, unit::milligram}, {500, unit::gram}));
    CHECK(may_mean({2, unit::teaspoon}, {2, unit::tablespoon}));
    CHECK(may_mean({2, unit::tablespoon}, {2, unit::cup}));
    CHECK(may_mean({500, unit::litre}, {500, unit::millilitre}));
    CHECK(may_mean({100, unit::gram}, {200, unit::gram}));
    CHECK(may_mean({4, {}}, {2, {}}));
}

TEST_CASE("other slips of digits are undone, and are no common ones") {
    CHECK(may_mean({50, unit::gram}, {350, unit::gram}, false));  // the first digit dropped
    CHECK(may_mean({145, unit::gram}, {415, unit::gram}, false)); // two exchanged
    CHECK(may_mean({347, unit::gram}, {34, unit::gram}, false));  // one too many
    CHECK(may_mean({34, unit::gram}, {347, unit::gram}, false));
}

TEST_CASE("a slip is another amount than the written one, above nothing, and each is there once") {
    for (const auto& written :
         {amount_written{11, unit::gram}, {1, {}}, {exact(3, 2), unit::cup}, {900, unit::ounce}}) {
        const auto all = checks::slips_in(written);
        for (std::size_t i = 0; i < all.size(); ++i) {
            CHECK(all[i].meant != written);
            CHECK(all[i].meant.number > 0);
            for (std::size_t k = i + 1; k < all.size(); ++k) CHECK(all[i].meant != all[k].meant);
        }
        CHECK(std::is_sorted(all.begin(), all.end(), [](const auto& a, const auto& b) {
            return a.is_common && !b.is_common;
        }));
    }
}

TEST_CASE("the line whose slip would close the balance is found") {
    // 350 g flour written as 35: 120 + 200 + 65 + 35 = 420, and 720 is wanted of 735.
    const std::vector mix = {grams(0, 35), grams(1, 120), grams(2, 200), grams(3, 65)};
    CHECK(closing(mix, 420, 720) == lines{"0: 350 g"});
    CHECK(closing(mix, 420, 735) == lines{"0: 350 g"});
    // 743 is more than 1 % above 735; a five dropped is as common.
    CHECK(closing(mix, 420, 743) == lines{"0: 355 g"});
    // And 3 % less than what it gives is where a surplus begins.
    CHECK(closing(mix, 420, 714) == lines{"0: 350 g"});
    CHECK(closing(mix, 420, 713).empty());
}

TEST_CASE("a measure taken for its neighbour is weighed as that") {
    const std::vector<checks::weighed_amount> spoons = {
        {0, {2, unit::teaspoon}, 8, measures::system::us}, grams(1, 100)};
    CHECK(closing(spoons, 108, 124) == lines{"0: 2 tbsp"});
    const std::vector<checks::weighed_amount> ounces = {
        {0, {8, unit::gram}, 8, measures::system::unstated}, grams(1, 500)};
    CHECK(closing(ounces, 508, exact(72679, 100)) == lines{"0: 8 oz"});
    // No cup of one size, so it is not asked whether cups were meant.
    const std::vector<checks::weighed_amount> unsettled = {
        {0, {2, unit::tablespoon}, 30, measures::system::unstated}};
    CHECK(closing(unsettled, 30, 480) == lines{"0: 32 tbsp"});
}

TEST_CASE("of several lines that would do all are shown, the nearest first, and of many none") {
    CHECK(closing({grams(0, 102), grams(1, 100), grams(2, 300)}, 502, 602) ==
          lines{"1: 200 g", "0: 204 g"});
    CHECK(closing({grams(0, 100), grams(1, 100), grams(2, 100), grams(3, 100)}, 400, 500).empty());
}

TEST_CASE("a slip that is no common one is shown where it alone would do") {
    CHECK(closing({grams(0, 50), grams(1, 121), grams(2, 203)}, 374, 674) == lines{"0: 350 g"});
    CHECK(closing({grams(0, 50), grams(1, 60), grams(2, 203)}, 313, 613).empty());
}

TEST_CASE("amounts are said as they would be written") {
    CHECK(checks::said({exact(3, 2), unit::cup}) == "1½ cups");
    CHECK(checks::said({exact(1, 2), unit::cup}) == "½ cup");
    CHECK(checks::said({150, unit::gram}) == "150 g");
    CHECK(checks::said({4, {}}) == "4");
}

} // namespace benchcard::testing
