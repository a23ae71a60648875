#include "../recipe/reading.hpp"

#include "compiler/checks/slips.hpp"

/// Slips of the pen, undone: a pure reckoning on amounts.
namespace benchcard::testing {

namespace {

using checks::amount_written;
using checks::balance_wanted;
using checks::likelihood;
using grammar::unit;

bool may_mean(const amount_written& written, const amount_written& meant,
              likelihood is = likelihood::common) {
    const auto all = checks::slips_in(written);
    return std::any_of(all.begin(), all.end(),
                       [&](const auto& s) { return s.meant == meant && s.is == is; });
}

bool never_means(const amount_written& written, const amount_written& meant) {
    const auto all = checks::slips_in(written);
    return std::none_of(all.begin(), all.end(), [&](const auto& s) { return s.meant == meant; });
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
    CHECK(may_mean({25, unit::gram}, {exact(5, 2), unit::gram}));
    CHECK(may_mean({500, unit::kilogram}, {500, unit::gram}));
    CHECK(may_mean({8, unit::gram}, {8, unit::ounce}));
    CHECK(may_mean({500, unit::milligram}, {500, unit::gram}));
    CHECK(may_mean({2, unit::teaspoon}, {2, unit::tablespoon}));
    CHECK(may_mean({2, unit::tablespoon}, {2, unit::cup}));
    CHECK(may_mean({500, unit::litre}, {500, unit::millilitre}));
}

TEST_CASE("other slips of digits are undone, and are less common") {
    CHECK(may_mean({100, unit::gram}, {200, unit::gram}, likelihood::fair));
    CHECK(may_mean({4, {}}, {2, {}}, likelihood::fair));
    CHECK(may_mean({exact(1, 4), unit::cup}, {exact(5, 4), unit::cup}, likelihood::fair));
    CHECK(may_mean({50, unit::gram}, {350, unit::gram}, likelihood::fair));
    CHECK(may_mean({145, unit::gram}, {415, unit::gram}, likelihood::rare)); // two exchanged
    CHECK(may_mean({347, unit::gram}, {34, unit::gram}, likelihood::rare));  // one too many
    CHECK(may_mean({2250, unit::gram}, {250, unit::gram}, likelihood::fair));
    CHECK(may_mean({34, unit::gram}, {347, unit::gram}, likelihood::rare));
    CHECK(may_mean({25, unit::gram}, {exact(1, 4), unit::gram}, likelihood::rare));
}

TEST_CASE("what no cook would write is not meant") {
    CHECK(never_means({1, unit::teaspoon}, {10, unit::teaspoon}));
    CHECK(never_means({150, unit::gram}, {150, unit::milligram}));
    CHECK(never_means({40, unit::gram}, {405, unit::gram}));
    CHECK(never_means({exact(3, 2), unit::kilogram}, {exact(3, 2), unit::gram}));
    CHECK(never_means({5, unit::gram}, {5, unit::gram}));
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
        CHECK(std::is_sorted(all.begin(), all.end(),
                             [](const auto& a, const auto& b) { return a.is < b.is; }));
    }
}

TEST_CASE("the line whose slip would close the balance is found") {
    // 350 g flour written as 35: 120 + 200 + 165 + 35 = 520, and 820 is wanted of 835.
    const std::vector mix = {grams(0, 35), grams(1, 120), grams(2, 200), grams(3, 165)};
    CHECK(closing(mix, 520, 830) == lines{"0: 350 g"});
    CHECK(closing(mix, 520, 835) == lines{"0: 350 g"});
    // 844 is more than 1 % above 835; a five dropped is as common.
    CHECK(closing(mix, 520, 844) == lines{"0: 355 g"});
    // And 3 % less than what it gives is where a surplus begins.
    CHECK(closing(mix, 520, 811) == lines{"0: 350 g"});
    CHECK(closing(mix, 520, 810) == lines{"0: 335 g"});
}

TEST_CASE("a measure taken for its neighbour is weighed as that") {
    const std::vector<checks::weighed_amount> spoons = {
        {0, {2, unit::teaspoon}, 8, measures::system::us}, grams(1, 100)};
    CHECK(closing(spoons, 108, 124) == lines{"0: 2 tbsp"});
    const std::vector<checks::weighed_amount> ounces = {
        {0, {8, unit::gram}, 8, measures::system::unstated},
        {1, {10, unit::ounce}, exact(2835, 10), measures::system::unstated}};
    CHECK(closing(ounces, exact(2915, 10), exact(5103, 10)) == lines{"0: 8 oz"});
    // Where nothing else is in ounces none are meant.
    CHECK(closing({grams(0, 8), grams(1, 283)}, 291, exact(5098, 10)).empty());
    // No cup of one size, so it is not asked whether cups were meant.
    const std::vector<checks::weighed_amount> unsettled = {
        {0, {2, unit::tablespoon}, 30, measures::system::unstated}};
    CHECK(closing(unsettled, 30, 480).empty());
    auto settled = unsettled;
    settled.front().measures = measures::system::metric; // 16⅔ tbsp of 15 ml
    CHECK(closing(settled, 30, 500) == lines{"0: 2 cups"});
}

TEST_CASE("of several lines that would do the nearest are shown, three at the most") {
    CHECK(closing({grams(0, 102), grams(1, 100), grams(2, 300)}, 502, 602) ==
          lines{"1: 200 g", "0: 204 g"});
    CHECK(closing({grams(0, 100), grams(1, 100), grams(2, 100), grams(3, 100)}, 400, 500) ==
          lines{"0: 200 g", "1: 200 g", "2: 200 g"});
}

TEST_CASE("first digits are sought with the common slips, where these are few") {
    CHECK(closing({grams(0, 50), grams(1, 21), grams(2, 203)}, 274, 574) ==
          lines{"0: 350 g", "1: 321 g"});
    // Four first digits would do, so that only the common slip is shown.
    CHECK(closing({grams(0, 50), grams(1, 21), grams(2, 33), grams(3, 41)}, 145, 445) ==
          lines{"2: 335 g"});
}

TEST_CASE("rare slips are shown where no other would do, and they are few") {
    CHECK(closing({grams(0, 145), grams(1, 60)}, 205, 475) == lines{"0: 415 g"});
    CHECK(closing({grams(0, 145), grams(1, 145)}, 290, 560) == lines{"0: 415 g", "1: 415 g"});
    CHECK(closing({grams(0, 145), grams(1, 145), grams(2, 145), grams(3, 145)}, 580, 850) ==
          lines{"0: 415 g", "1: 415 g", "2: 415 g"});
}

TEST_CASE("the amount of another line is the likelier, as in a pound cake") {
    // 20 of 240, 240, 240: a digit dropped in the middle, which alone is rare.
    CHECK(closing({grams(0, 20), grams(1, 240), grams(2, 240)}, 500, 720) == lines{"0: 240 g"});
    // Without its twins the others may as well be twice what they are.
    CHECK(closing({grams(0, 20), grams(1, 230), grams(2, 250)}, 500, 720).front() != "0: 240 g");
}

TEST_CASE("the one line in ounces among grams is the likeliest") {
    const std::vector<checks::weighed_amount> odd = {
        {0, {6, unit::ounce}, exact(1701, 10), measures::system::unstated},
        grams(1, 180),
        grams(2, 200)};
    CHECK(closing(odd, exact(5501, 10), 388).front() == "0: 6 g");
}

TEST_CASE("the whole of a mixed number may be lost") {
    const std::vector<checks::weighed_amount> cups = {
        {0, {exact(1, 4), unit::cup}, 60, measures::system::us}, grams(1, 1000)};
    CHECK(closing(cups, 1060, 1300) == lines{"0: 1¼ cups"});
}

TEST_CASE("more salt than any mix holds is not meant") {
    auto salt = grams(0, 12);
    CHECK(closing({salt, grams(1, 730)}, 742, 850) == lines{"0: 120 g"});
    salt.most = 50;
    CHECK(closing({salt, grams(1, 730)}, 742, 850) == lines{});
}

TEST_CASE("of several packs it is the weight of one that is asked about") {
    const std::vector<checks::weighed_amount> tins = {
        {0, {40, unit::gram, exact(4)}, 160, measures::system::unstated}, grams(1, 1000)};
    CHECK(closing(tins, 1160, 2600) == lines{"0: 4 x 400 g"});
}

TEST_CASE("amounts are said as they would be written") {
    CHECK(checks::said({exact(3, 2), unit::cup}) == "1½ cups");
    CHECK(checks::said({exact(1, 2), unit::cup}) == "½ cup");
    CHECK(checks::said({150, unit::gram}) == "150 g");
    CHECK(checks::said({4, {}}) == "4");
}

} // namespace benchcard::testing
