#pragma once

#include <string>
#include <string_view>

namespace benchcard::layout {

/// The characters of a text; a byte that is not UTF-8 becomes U+FFFD.
std::u32string characters_of(std::string_view text);

bool is_ascii(std::string_view text);

/// The characters of a text one after the other, without a copy where they are bytes.
template <typename Take> void for_each_character(std::string_view text, const Take& take) {
    if (!is_ascii(text)) {
        for (const auto code : characters_of(text)) take(code);
        return;
    }
    for (const char c : text) take(static_cast<char32_t>(c));
}

/// Adds one character to a text.
void append(std::string& text, char32_t code);

/// The text with letters and accents put together (NFC); as it is where it is not UTF-8.
std::string composed(std::string_view text);

/// Whether a character stands upon the one before it, as an accent does.
bool stands_on_last(char32_t code);

} // namespace benchcard::layout
