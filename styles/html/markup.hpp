#pragma once

#include "styles/card.hpp"

#include <string>
#include <string_view>

namespace benchcard::html {

/// A text as it may stand between tags and in a quoted attribute; control characters are left out.
std::string escaped(std::string_view text);
/// The same, and no line ends between a number and its unit.
std::string worded(const std::string& text);
/// Words in two weights: `<b>` where they are strong.
std::string marked_up(const styles::paragraph& p);

} // namespace benchcard::html
