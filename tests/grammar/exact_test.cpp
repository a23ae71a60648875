#include "grammar/exact.hpp"

#include <catch2/catch.hpp>
#include <limits>
#include <rapidcheck.h>

using benchcard::exact;

namespace {

using rational = exact::rational; // Boost's, which has no bound, says what is right

constexpr auto most = std::numeric_limits<std::int64_t>::max();
constexpr auto least = std::numeric_limits<std::int64_t>::min();

/// Small numbers, those about the ends of a machine word, and any.
std::int64_t made_up_word() {
    return *rc::gen::oneOf(rc::gen::inRange<std::int64_t>(-20, 21),
                           rc::gen::inRange<std::int64_t>(-2'000'000'000, 2'000'000'000),
                           rc::gen::element(most, most - 1, least, least + 1),
                           rc::gen::arbitrary<std::int64_t>());
}

/// A number in both forms; beyond a word's reach once in a while.
std::pair<exact, rational> made_up() {
    const auto above = made_up_word();
    auto below = made_up_word();
    if (below == 0) below = 1;
    std::pair result(exact(above, below), rational(above) / below);
    if (*rc::gen::inRange(0, 4) == 0) {
        result.first = result.first * most * most;
        result.second = result.second * most * most;
    }
    return result;
}

bool are_same(const exact& ours, const rational& right) {
    return ours.as_rational() == right && ours == exact(right) && ours.str() == right.str() &&
           numerator(ours) == numerator(right) && denominator(ours) == denominator(right);
}

} // namespace

TEST_CASE("exact numbers are reckoned as Boost's rationals are", "[exact]") {
    CHECK(rc::check("all four ways, and compared", [] {
        const auto [a, right_a] = made_up();
        const auto [b, right_b] = made_up();
        RC_ASSERT(are_same(a, right_a));
        RC_ASSERT(are_same(a + b, right_a + right_b));
        RC_ASSERT(are_same(a - b, right_a - right_b));
        RC_ASSERT(are_same(a * b, right_a * right_b));
        if (right_b != 0) RC_ASSERT(are_same(a / b, right_a / right_b));
        RC_ASSERT((a < b) == (right_a < right_b));
        RC_ASSERT((a == b) == (right_a == right_b));
        RC_ASSERT(are_same(a + b - b, right_a)); // back within a word
        RC_ASSERT(static_cast<double>(a) == static_cast<double>(right_a));
        RC_ASSERT(are_same(abs(a), right_a < 0 ? rational(-right_a) : right_a));
        const auto down = floor(a);
        RC_ASSERT(denominator(down) == 1 && down <= a && a < down + 1);
    }));
}

TEST_CASE("exact numbers at the ends of a machine word", "[exact]") {
    CHECK(exact(least).str() == "-9223372036854775808");
    CHECK((-exact(least)).str() == "9223372036854775808");
    CHECK((exact(most) + 1).str() == "9223372036854775808");
    CHECK(exact(most) + 1 - 1 == exact(most));
    CHECK(exact(1, least) * least == 1);
    CHECK(exact(2, -4).str() == "-1/2");
    CHECK_THROWS_AS(exact(1) / 0, std::overflow_error);
    CHECK_THROWS_AS(exact(1, 0), std::overflow_error);
}
