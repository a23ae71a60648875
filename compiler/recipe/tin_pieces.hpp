#pragma once

#include <string>

namespace benchcard::recipe {

/// Whether one piece of that name has a tin to itself: `tart`, `tin loaf`; of buns and slices there
/// are many in one.
bool fills_a_tin_alone(const std::string& piece);

} // namespace benchcard::recipe
