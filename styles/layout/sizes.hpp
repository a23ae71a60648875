#pragma once

#include "styles/style.hpp"

namespace benchcard::layout {

/// The sizes of type on one card, in points, and the air between things.
struct sizes {
    double title = 0;
    double amount = 0;
    double unit = 0;
    double name = 0;
    double text = 0;
    double small_print = 0;
    double leading = 0; ///< from baseline to baseline, in type sizes
    double space = 0;   ///< the unit that all gaps are made of, in points
};

/// The sizes at `scale`, from 0 (the smallest type that the style allows) to 1 (the largest),
/// and `air`, from 0 (close) to 1 (open).
sizes sizes_at(const styles::style& look, double scale, double air);

} // namespace benchcard::layout
