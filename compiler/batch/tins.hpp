#pragma once

#include "grammar/tree.hpp"

#include <string>

namespace benchcard::batch {

/// A tin as it is called: `23 cm round`, `20 × 30 cm`, `900 g loaf`.
std::string said_tin(const grammar::tin& t);

} // namespace benchcard::batch
