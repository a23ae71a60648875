#pragma once

#include "compiler/batch/batch.hpp"

#include <string>
#include <vector>

namespace benchcard::cards {

/// The weigh-out of every component for several batches of one recipe, side by side: a column a
/// batch, and the names behind them. A component that is not made so many times as its batch says
/// so below its title. `batches` is not empty.
std::string weigh_columns(const std::vector<batch::batch>& batches);

} // namespace benchcard::cards
