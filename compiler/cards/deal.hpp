#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <vector>

namespace benchcard::cards {

/// The cards of a batch, one a component and the last for the assembly, in the order of making:
/// every word and figure that is printed, ready to print.
std::vector<styles::card> deal(const batch::batch& b);

/// A short sign of what a card says, its number and this sign aside: `7K4Q-92`. Changes when and
/// only when that does.
std::string fingerprint_of(const styles::card& c);

} // namespace benchcard::cards
