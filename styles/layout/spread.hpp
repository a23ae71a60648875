#pragma once

#include "styles/layout/stack.hpp"

#include <optional>

namespace benchcard::layout {

/// A card on one page in two halves: what is weighed at the left, what is done at the right.
struct spread_parts {
    block head;
    std::vector<block> left, right;
    std::vector<block> bottom; ///< across both, at the foot
    double left_width = 0;     ///< points
};

/// Where the right half of a spread begins, from the left margin, and how wide it is.
struct half {
    double x = 0, width = 0;
};
half right_half(const area& on, double left_width);

/// The page, or nothing where it does not hold all of it.
std::optional<page> spread(const spread_parts& of, const area& on, const block& foot,
                           purpose wanted);

} // namespace benchcard::layout
