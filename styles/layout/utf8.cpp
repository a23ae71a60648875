#include "styles/layout/utf8.hpp"

#include "grammar/unicode_map.hpp"

#include <algorithm>
#include <utf8proc.h>

namespace benchcard::layout {

namespace {

const utf8proc_uint8_t* bytes_of(std::string_view text) {
    return reinterpret_cast<const utf8proc_uint8_t*>(text.data());
}

/// Whether all characters are before U+0300, where those that stand upon others begin: no two of
/// them go together (NFC_Quick_Check in the Unicode Character Database).
bool is_composed(std::string_view text) {
    constexpr unsigned char first_of_marks = 0xCC; // the first byte of U+0300 in UTF-8
    return std::all_of(text.begin(), text.end(),
                       [](unsigned char c) { return c < first_of_marks; });
}

} // namespace

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x80; });
}

std::u32string characters_of(std::string_view text) {
    if (is_ascii(text)) return {text.begin(), text.end()};
    std::u32string out;
    out.reserve(text.size());
    while (!text.empty()) {
        utf8proc_int32_t code = 0;
        const auto length =
            utf8proc_iterate(bytes_of(text), static_cast<utf8proc_ssize_t>(text.size()), &code);
        out += length > 0 ? static_cast<char32_t>(code) : U'\uFFFD';
        text.remove_prefix(length > 0 ? static_cast<std::size_t>(length) : 1);
    }
    return out;
}

void append(std::string& text, char32_t code) {
    if (code < 0x80) {
        text += static_cast<char>(code);
        return;
    }
    utf8proc_uint8_t buffer[4];
    const auto length = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code), buffer);
    text.append(reinterpret_cast<const char*>(buffer), static_cast<std::size_t>(length));
}

std::string composed(std::string_view text) {
    if (is_composed(text)) return std::string(text);
    return grammar::unicode_mapped(text, UTF8PROC_STABLE | UTF8PROC_COMPOSE);
}

bool stands_on_last(char32_t code) {
    constexpr char32_t first_mark = 0x300; // combining grave accent
    if (code < first_mark) return false;
    const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(code));
    return category == UTF8PROC_CATEGORY_MN || category == UTF8PROC_CATEGORY_ME;
}

} // namespace benchcard::layout
