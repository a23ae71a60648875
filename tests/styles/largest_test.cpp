#include "styles/layout/largest.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <rapidcheck.h>

using namespace benchcard;

TEST_CASE("the largest that passes is found, however unevenly a page fills", "[layout]") {
    constexpr int steps = 64;
    CHECK(rc::check("as by trying one after the other", [] {
        const int last = *rc::gen::inRange(0, steps + 1); // the last that passes
        const int known = *rc::gen::inRange(0, last + 1);
        const double bend = *rc::gen::element(0.25, 0.5, 1.0, 2.0, 5.0);
        // Of some attempts that fail it is not because they are too full.
        const bool fails_otherwise = *rc::gen::arbitrary<bool>();
        int tried = 0;
        const double found = layout::largest(
            [&](double at) {
                ++tried;
                const double full = std::pow(at, bend) - std::pow((last + 0.5) / steps, bend);
                return layout::trial{at * steps <= last, fails_otherwise ? -1.0 : full};
            },
            known * layout::largest_step);
        RC_ASSERT(found == last * layout::largest_step);
        RC_ASSERT(tried <= 20);
    }));
}
