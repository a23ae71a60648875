#include "styles/layout/line_ends.hpp"

#include <linebreak.h>

namespace benchcard::layout {

namespace {

bool is_figure(char32_t c) {
    return (c >= '0' && c <= '9') || (c >= 0xBC && c <= 0xBE) || (c >= 0x2150 && c <= 0x215E);
}

bool is_end_of_word(char32_t c) {
    return c == ',' || c == '.' || c == ';' || c == ':' || c == ')' || c == '!' || c == '?';
}

/// The word that ends before `end`, and the one that begins at `begin`.
std::u32string_view word_before(std::u32string_view text, std::size_t end) {
    auto begin = end;
    while (begin > 0 && text[begin - 1] != ' ') --begin;
    return text.substr(begin, end - begin);
}
std::u32string_view word_from(std::u32string_view text, std::size_t begin) {
    auto end = begin;
    while (end < text.size() && text[end] != ' ') ++end;
    while (end > begin && is_end_of_word(text[end - 1])) --end;
    return text.substr(begin, end - begin);
}

/// Whether the blank at `at` belongs to a measure: `400 g`, `160 °C`, `2 × 400`, `fl oz`.
/// Any short word after a number counts, so that the layout need not know what units there are.
bool inside_measure(std::u32string_view text, std::size_t at) {
    constexpr std::size_t longest_unit = 4;
    const auto before = word_before(text, at);
    const auto after = word_from(text, at + 1);
    if (before.empty() || after.empty()) return false;
    if (before == U"fl" && after == U"oz") return true;
    if (before == U"×" && is_figure(after.front())) return true;
    return is_figure(before.back()) && after.size() <= longest_unit;
}

std::vector<char> unicode_breaks(std::u32string_view text, const std::string& language) {
    static const bool ready = (init_linebreak(), true);
    (void)ready;
    const std::vector<utf32_t> codes(text.begin(), text.end());
    std::vector<char> breaks(text.size(), LINEBREAK_NOBREAK);
    if (!text.empty())
        set_linebreaks_utf32(codes.data(), codes.size(), language.c_str(), breaks.data());
    return breaks;
}

/// Whether the dash at `at` stands in a range of numbers: `35–40`.
bool inside_range(std::u32string_view text, std::size_t at) {
    const bool dash = text[at] == U'–' || text[at] == '-';
    return dash && at > 0 && at + 1 < text.size() && is_figure(text[at - 1]) &&
           is_figure(text[at + 1]);
}

/// Letters and figures, of the classes AL and NU of UAX 14; and those of its class AI, which count
/// as letters unless the language is written with ideographs.
bool is_of_word(char32_t c) {
    const bool ascii = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    return ascii || (c >= 0xC0 && c <= 0xFF) || c == U'·' || is_figure(c);
}

/// Of its class IS.
bool joins(char32_t c) { return c == ',' || c == '.' || c == ':' || c == ';'; }

/// Of its class PO.
bool is_postfix(char32_t c) { return c == U'°' || c == '%'; }

bool may_follow(char32_t c, char32_t last) {
    if (is_of_word(c)) return true;
    if (is_postfix(c)) return last == ' ' || (last >= '0' && last <= '9');
    return last != ' ' && (joins(c) || c == ' ');
}

/// Among such characters a line may end at a blank, and nowhere else. Most texts of a card have no
/// others, and the library takes its time over any.
bool is_plain(std::u32string_view text, std::string_view language) {
    const auto written_in = language.substr(0, 2);
    if (written_in == "zh" || written_in == "ja" || written_in == "ko") return false;
    char32_t last = ' ';
    for (const auto c : text) {
        if (!may_follow(c, last)) return false;
        last = c;
    }
    return true;
}

line_end end_at(std::u32string_view text, std::size_t at) {
    const bool bound = inside_range(text, at) || (text[at] == ' ' && inside_measure(text, at));
    return bound ? line_end::hardly : line_end::yes;
}

} // namespace

bool parts_a_measure(std::u32string_view text, std::size_t at) {
    return text[at] == ' ' && inside_measure(text, at);
}

std::vector<line_end> line_ends(std::u32string_view text, const std::string& language) {
    std::vector<line_end> ends(text.size(), line_end::no);
    if (is_plain(text, language)) {
        for (std::size_t i = 0; i < text.size(); ++i)
            if (text[i] == ' ') ends[i] = end_at(text, i);
        return ends;
    }
    const auto breaks = unicode_breaks(text, language);
    for (std::size_t i = 0; i < text.size(); ++i)
        if (breaks[i] == LINEBREAK_ALLOWBREAK) ends[i] = end_at(text, i);
    return ends;
}

} // namespace benchcard::layout
