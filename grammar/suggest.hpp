#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/tree.hpp"

#include <optional>
#include <string_view>

namespace benchcard::grammar {

/// The likeliest correction of a line that is no setting, no ingredient line and no step:
/// `line` is its text without the line end, `where` its span without blanks at the ends.
/// Nothing where there is no likely one.
std::optional<help> suggest_line(std::string_view line, span where);

/// The likeliest correction of a setting that does not exist: the nearest setting that can stand
/// in such a block, or the ingredient line it was meant to be (`flour: 200 g`).
std::vector<help> suggest_setting(std::string_view word, span word_where, std::string_view value,
                                  span line_where, block::sort in);

} // namespace benchcard::grammar
