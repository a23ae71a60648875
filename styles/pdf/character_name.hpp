#pragma once

#include <string>

namespace benchcard::pdf {

/// A character as a person looks it up: itself, its name in Unicode in small letters, and its
/// number: `🍰 (shortcake, U+1F370)`. One without a name has its number alone.
std::string named_character(char32_t code);

} // namespace benchcard::pdf
