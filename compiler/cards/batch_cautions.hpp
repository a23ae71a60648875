#pragma once

#include "compiler/batch/batch.hpp"

#include <string>
#include <vector>

namespace benchcard::cards {

/// What an order asks for that the component as written cannot give: a mixer too small or too
/// large for it, a mix that is made whole, a tin that does not grow with it.
std::vector<std::string> order_cautions(const batch::component_batch& c, const batch::batch& b);

/// The same, and that times change with a batch much larger or smaller: what its card says.
std::vector<std::string> batch_cautions(const batch::component_batch& c, const batch::batch& b);

} // namespace benchcard::cards
