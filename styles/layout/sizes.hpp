#pragma once

#include "styles/style.hpp"

namespace benchcard::layout {

/// The sizes of type on one card, in points, and the air between things.
struct sizes {
    double title = 0;
    double amount = 0;
    double unit = 0;
    double name = 0;
    double detail = 0; ///< beside an ingredient: preparation, imperial, spoons
    double text = 0;
    double small_print = 0;
    double leading = 0; ///< from baseline to baseline, in type sizes
    double space = 0;   ///< the unit that all gaps are made of, in points
};

/// What a card's sizes are searched by, each from 0 to 1.
struct fitting {
    double scale = 0; ///< from the smallest type that the style allows to the largest
    double words = 0; ///< how far running text grows beyond `scale`, as far as the names' size
    double air = 0;   ///< from close to open
};

sizes sizes_at(const styles::style& look, fitting to);

} // namespace benchcard::layout
