#pragma once

#include <string>
#include <string_view>

/// Plain text in columns, for a terminal.
namespace benchcard::cards {

inline constexpr std::size_t page_width = 80;

/// The columns of a terminal that a text takes.
std::size_t width_of(std::string_view text);

/// The text with blanks behind it, up to a width in columns.
std::string padded(const std::string& text, std::size_t width);

/// Words on as many lines of `page_width` as they need, all but the first behind `indent` blanks.
std::string wrapped(const std::string& text, std::size_t indent);

} // namespace benchcard::cards
