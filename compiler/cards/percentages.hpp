#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::cards {

/// Baker's percentages of a component: each line and the whole against what `percent:` names.
struct percentages {
    std::vector<std::string> of_lines; ///< `62.5 %`, one a line; empty where it has no weight
    /// All lines, and of flour the hydration: `59 %`, `hydration, about; 228.7 % of 820 g flour`.
    std::optional<styles::total_row> total;
};

/// Reckoned against all of the base that is in the component: in its own lines, and in what it
/// uses of other components that are not baked (a preferment). Hydration is the water in all of
/// that, the water in milk, eggs and butter counted (common practice), for what is in the
/// program's own table. Nothing without `percent:` and where there is nothing of the base.
std::optional<percentages> percentages_of(const batch::component_batch& c, const batch::batch& b);

} // namespace benchcard::cards
