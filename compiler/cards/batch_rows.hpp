#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <string>
#include <vector>

namespace benchcard::cards {

/// One line of a weigh-out for several batches side by side.
struct batch_row {
    std::string name;               ///< `plain flour`
    std::string preparation;        ///< `sifted`
    std::vector<std::string> cells; ///< `400 g`, one a batch
};

/// The lines of a component, by its place in the recipe, and below them its mix. `cards` are those
/// of each batch.
std::vector<batch_row> batch_rows(const std::vector<batch::batch>& batches,
                                  const std::vector<std::vector<styles::card>>& cards,
                                  std::size_t component);

} // namespace benchcard::cards
