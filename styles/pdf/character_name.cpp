#include "styles/pdf/character_name.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <fmt/format.h>
#include <memory>
#include <string_view>

namespace benchcard::pdf {

/// UnicodeData.txt of the Unicode Character Database (UAX 44): a line a character, its number and
/// its name first, `00E9;LATIN SMALL LETTER E WITH ACUTE;…`.
std::string_view unicode_data();

namespace {

/// The character that a line is of.
char32_t code_of(std::string_view line) {
    std::uint32_t code = 0;
    std::from_chars(std::to_address(line.begin()), std::to_address(line.end()), code, 16);
    return code;
}

/// The line of a character, in a text whose lines stand in the order of theirs; empty where it has
/// none. It is looked for by halving the text: there are thirty thousand lines.
std::string_view line_of(char32_t code, std::string_view text) {
    while (!text.empty()) {
        const auto begin = text.rfind('\n', text.size() / 2) + 1; // 0 where there is none
        const auto end = std::min(text.find('\n', begin), text.size());
        const auto line = text.substr(begin, end - begin);
        const auto found = code_of(line);
        if (found == code) return line;
        text = code < found ? text.substr(0, begin) : text.substr(std::min(end + 1, text.size()));
    }
    return {};
}

/// Empty for one that has none of its own: controls, and those that are named by their number.
std::string name_of(char32_t code) {
    const auto line = line_of(code, unicode_data());
    const auto begin = line.find(';') + 1; // 0 where there is none
    std::string name(line.substr(begin, line.find(';', begin) - begin));
    if (name.starts_with('<')) return {};
    std::ranges::transform(name, name.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return name;
}

} // namespace

std::string named_character(char32_t code) {
    std::string seen;
    layout::append(seen, code);
    const auto name = name_of(code);
    return fmt::format("{} ({}U+{:04X})", seen, name.empty() ? "" : name + ", ",
                       static_cast<unsigned>(code));
}

} // namespace benchcard::pdf
