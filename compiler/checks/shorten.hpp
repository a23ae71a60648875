#pragma once

#include "grammar/diagnostic.hpp"

#include <cstddef>

namespace benchcard::checks {

/// Puts messages in the order of their places. Where there are more than a person or a program can
/// use, the first are kept, errors before all, and a last message says how many more there are.
void put_in_order(grammar::diagnostics& messages);

} // namespace benchcard::checks
