#include "styles/pdf/character_name.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <unicode/uchar.h>

namespace benchcard::pdf {

namespace {

/// Empty for one that has none.
std::string name_of(char32_t code) {
    std::array<char, 128> buffer{}; // the longest name has 88 letters
    auto failed = U_ZERO_ERROR;
    const auto length = u_charName(static_cast<UChar32>(code), U_UNICODE_CHAR_NAME, buffer.data(),
                                   static_cast<std::int32_t>(buffer.size()), &failed);
    if (U_FAILURE(failed) || length <= 0) return {};
    std::string name(buffer.data(), static_cast<std::size_t>(length));
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
