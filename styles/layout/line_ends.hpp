#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::layout {

/// Where a line may end after a character.
enum class line_end : std::uint8_t {
    no,
    hardly, ///< between a number and its unit: only when nothing else fits
    yes,
};

/// Whether the character at `at` is a blank between a number and its unit, where no line ends.
bool parts_a_measure(std::u32string_view text, std::size_t at);

/// Where lines may end after each character of a text whose blanks are single, and none at its
/// ends: by the rules of Unicode (UAX 14) in a language, save between a number and its unit.
std::vector<line_end> line_ends(std::u32string_view text, const std::string& language);

} // namespace benchcard::layout
