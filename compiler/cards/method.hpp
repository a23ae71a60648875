#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <vector>

namespace benchcard::cards {

/// The steps of a component with their amounts set in, scaled to the batch; what a step computes
/// is strong. Parts of a line are rounded so that they add up to what the weigh-out shows.
std::vector<styles::paragraph> method_of(const batch::component_batch& c, const batch::batch& b);

/// The same without the amounts that change with the batch, for a card of several batches: `half of
/// the sugar`.
std::vector<styles::paragraph> method_of_any(const batch::component_batch& c,
                                             const batch::batch& b);

/// The oven settings of the steps, each with the time of its step.
std::vector<styles::oven_row> oven_of(const recipe::component& c);

} // namespace benchcard::cards
