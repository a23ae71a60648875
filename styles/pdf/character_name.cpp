#include "styles/pdf/character_name.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <string_view>

namespace benchcard::pdf {

/// UnicodeData.txt of the Unicode Character Database (UAX 44): a line a character, its number and
/// its name first, `00E9;LATIN SMALL LETTER E WITH ACUTE;…`.
std::string_view unicode_data();

namespace {

/// Empty for one that has none of its own: controls, and those that are named by their number.
std::string name_of(char32_t code) {
    const auto text = unicode_data();
    const auto entry = fmt::format("\n{:04X};", static_cast<unsigned>(code));
    const auto found = text.find(entry);
    if (found == std::string_view::npos) return {};
    const auto begin = found + entry.size();
    std::string name(text.substr(begin, text.find(';', begin) - begin));
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
