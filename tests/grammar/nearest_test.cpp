#include "grammar/nearest.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <rapidcheck.h>

using namespace benchcard::grammar;

namespace {

/// The distance as its definition has it: by the last letters of both words, whatever it costs.
std::size_t defined_distance(const std::string& a, const std::string& b) {
    if (a.empty() || b.empty()) return a.size() + b.size();
    const auto front = [](const std::string& s, std::size_t without) {
        return s.substr(0, s.size() - without);
    };
    auto cheapest =
        std::min({defined_distance(front(a, 1), b) + 1, defined_distance(a, front(b, 1)) + 1,
                  defined_distance(front(a, 1), front(b, 1)) + (a.back() != b.back())});
    const bool is_swapped =
        a.size() > 1 && b.size() > 1 && a.back() == b[b.size() - 2] && b.back() == a[a.size() - 2];
    if (is_swapped) cheapest = std::min(cheapest, defined_distance(front(a, 2), front(b, 2)) + 1);
    return cheapest;
}

/// Up to six of few letters, so that many words are near each other.
std::string a_word() {
    return *rc::gen::resize(
        6, rc::gen::container<std::string>(rc::gen::elementOf(std::string("abc"))));
}

} // namespace

TEST_CASE("the distance of two words is counted in slips", "[nearest]") {
    CHECK(distance("flour", "flour") == 0);
    CHECK(distance("flour", "fluor") == 1);
    CHECK(distance("flour", "four") == 1);
    CHECK(distance("crème", "creme") == 1);
    CHECK(distance("", "salt") == 4);
    CHECK(rc::check([] {
        const auto a = a_word(), b = a_word();
        RC_ASSERT(distance(a, b) == defined_distance(a, b));
    }));
}

TEST_CASE("a word is near where it is one slip in three characters away", "[nearest]") {
    CHECK(rc::check([] {
        const auto a = a_word(), b = a_word();
        const bool is_near = defined_distance(a, b) <= std::max<std::size_t>(1, a.size() / 3);
        RC_ASSERT(nearest(a, {b}).empty() != is_near);
    }));
    CHECK(nearest("suger", {"salt", "sugar", "Suger", "sage"}) ==
          std::vector<std::string>{"Suger", "sugar"});
}
