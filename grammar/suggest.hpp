#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/tree.hpp"

#include <string_view>
#include <vector>

namespace benchcard::grammar {

/// The likeliest corrections of a line that is no setting, no ingredient line and no step:
/// `line` is its text without the line end, `where` its span without blanks at the ends.
/// Nothing where there is no likely one.
std::vector<help> suggest_line(std::string_view line, span where, block::sort in);

/// The likeliest correction of a setting that does not exist: the setting that is meant, the
/// ingredient line it was meant to be (`flour: 200 g`), or the heading (`Filling:`).
std::vector<help> suggest_setting(std::string_view word, span word_where, std::string_view value,
                                  span line_where, block::sort in);

/// The likeliest correction of a bracket that holds more than can be read: `from` to `to` is the
/// text between the brackets, `stop` where reading stopped, `at` the span of the whole between.
std::vector<help> suggest_bracket(std::string_view between, std::size_t stop, span at);

/// Whether a step reads like an ingredient line behind a dash: `200 g plain flour`.
bool reads_like_ingredient(std::string_view step_text);

} // namespace benchcard::grammar
