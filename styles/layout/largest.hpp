#pragma once

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace benchcard::layout {

/// Whether an attempt will do, and by how much it is too full; negative where there is room left.
struct trial {
    bool passes = false;
    double excess = 0;
};

/// How finely `largest` looks.
inline constexpr double largest_step = 1.0 / 64;

/// The largest number from `known` to `most`, in steps, of which `tries` gives a trial that passes;
/// `known` is known to, and what is smaller than one that passes is taken to pass too. It is looked
/// for where the page should be just full, and half way wherever that leads nowhere.
template <typename Tries> double largest(const Tries& tries, double known = 0, double most = 1) {
    struct end {
        double at;
        double excess;
    };
    if (most <= known) return known;
    const trial all = tries(most);
    if (all.passes) return most;
    end good{known, tries(known).excess}, bad{most, all.excess};
    int passed = static_cast<int>(known / largest_step);
    int failed = static_cast<int>(std::ceil(most / largest_step));
    int in_a_row = 0; // so often the same end was moved
    while (failed - passed > 1) {
        int middle = (passed + failed) / 2;
        if (good.excess < 0 && bad.excess > 0 && std::abs(in_a_row) < 2) {
            const double share = good.excess / (good.excess - bad.excess);
            const double full = good.at + (bad.at - good.at) * share;
            middle = std::clamp(static_cast<int>(full / largest_step), passed + 1, failed - 1);
        }
        const trial made = tries(middle * largest_step);
        (made.passes ? good : bad) = {middle * largest_step, made.excess};
        (made.passes ? passed : failed) = middle;
        in_a_row = made.passes ? std::max(in_a_row, 0) + 1 : std::min(in_a_row, 0) - 1;
    }
    return good.at;
}

} // namespace benchcard::layout
