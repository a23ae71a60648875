#pragma once

#include "styles/layout/page.hpp"
#include "styles/style.hpp"

#include <vector>

namespace benchcard::layout {

/// How far the ink of some pages goes beyond what must be clear at each edge: letters lean over
/// their place a little.
box overhang_of(const std::vector<page>& pages, const styles::style& look,
                const font_metrics& metrics);

/// A little more than so far in where there was something over: other letters then stand there.
box further_in(const box& inset, const box& over);

} // namespace benchcard::layout
