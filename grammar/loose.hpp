#pragma once

#include <string>
#include <string_view>

namespace benchcard::grammar {

/// An ingredient line as people paste it, written as a line of the language:
/// `2 1/4 cups (280g) plain flour` → `2 1/4 cups = 280 g plain flour`,
/// `1 (14-ounce) can condensed milk` → `1 x 14 ounce can condensed milk`,
/// `butter, 2 sticks` → `2 sticks butter`. Bullets before it are left out. A line that is none of
/// these comes back as it is, without blanks at its ends.
std::string as_ingredient_line(std::string_view pasted);

} // namespace benchcard::grammar
