#pragma once

#include "compiler/batch/batch.hpp"

#include <string>

namespace benchcard::cards {

/// The weigh-out of every component as a text table: amount, ounces, cups and spoons, name, and
/// baker's percentages where they are asked for. 80 columns; a long name goes on below itself.
std::string weigh_table(const batch::batch& b);

} // namespace benchcard::cards
