#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <vector>

namespace benchcard::cards {

/// The cards of a batch, one a component and the last for the assembly, in the order of making:
/// every word and figure that is printed, ready to print.
std::vector<styles::card> deal(const batch::batch& b);

/// The same for several batches of one recipe, side by side: a table with a column a batch instead
/// of the weigh-out, and a method without the amounts that differ. `batches` is not empty.
std::vector<styles::card> deal_columns(const std::vector<batch::batch>& batches);

} // namespace benchcard::cards
