#pragma once

#include "compiler/batch/batch.hpp"

#include "styles/card.hpp"

#include <string>
#include <vector>

namespace benchcard::cards {

/// How each amount of a batch came about, so that a person with a pocket calculator can redo it:
/// for every line the amount, the measure and whose it is, the figure and its source, the batch,
/// and the rounding at the end; for every component the sum, the losses and the pieces.
std::string why(const batch::batch& b);

/// The same, a title and its lines for the whole and for each component.
std::vector<styles::figures> explained(const batch::batch& b);

/// The same for one line: its steps, one a line.
std::string why_of(const batch::weigh_line& l, const batch::component_batch& c,
                   const batch::batch& b);

} // namespace benchcard::cards
