#pragma once

#include "grammar/source.hpp"
#include "grammar/tree.hpp"

#include <string>
#include <string_view>
#include <vector>

/// How one line is written canonically; the order of lines is tidy.cpp's.
namespace benchcard::grammar {

/// An ingredient line as the three things that stand in columns, and the comment behind it.
struct line_columns {
    std::string amount;  ///< `1 1/2`, `about 5`, `some`
    std::string measure; ///< `cups = 250 g`, `cases`; may be empty
    std::string name;    ///< `plain flour, sifted`
    std::string comment; ///< with its `#`; may be empty
};
line_columns columns_of(const item& line, const ingredient_line& written, const source& text);

/// How wide the first two columns of some lines are, in characters.
struct column_widths {
    std::size_t amount = 0; ///< of the amounts that have a measure; the others may run past it
    std::size_t before_name = 0;
};
column_widths widths_of(const std::vector<line_columns>& lines);
std::string in_columns(const line_columns& line, const column_widths& widths);

/// A setting: its word as the language has it, a colon, one blank and the value.
std::string tidy_setting(const item& line, const setting& written, const source& text);

/// Lines of running words (a step, a note): no blanks at their ends, and those that go on
/// indented by two. One text a line.
std::vector<std::string> tidy_prose(const item& lines, const std::string& first, span where,
                                    const source& text);

/// A text without blanks at its ends.
std::string_view trimmed(std::string_view text);
/// The same, with runs of blanks made one.
std::string one_blanked(std::string_view text);
/// A line with the comment behind it, if there is one.
std::string with_comment(std::string line, std::string_view comment);

} // namespace benchcard::grammar
