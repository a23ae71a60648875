#include "styles/pdf/base_fonts.hpp"

#include "styles/layout/utf8.hpp"
#include "styles/pdf/haru.hpp"

#include <algorithm>
#include <map>

namespace benchcard::pdf {

namespace {

constexpr const char* encoding = "WinAnsiEncoding";

std::map<char32_t, char> win_ansi_codes() {
    first_error ignored;
    const auto document = new_document(ignored);
    std::map<char32_t, char> codes;
    auto* encoder = document ? HPDF_GetEncoder(document.get(), encoding) : nullptr;
    if (!encoder) return codes;
    for (unsigned byte = 0x20; byte <= 0xFF; ++byte)
        if (const auto code = HPDF_Encoder_GetUnicode(encoder, static_cast<HPDF_UINT16>(byte)))
            codes.emplace(code, static_cast<char>(byte));
    return codes;
}

const std::map<char32_t, char>& all_win_ansi_codes() {
    static const auto codes = win_ansi_codes();
    return codes;
}

bool among(std::u32string_view some, char32_t code) {
    return some.find(code) != std::u32string_view::npos;
}

bool is_accented_capital(char32_t code) {
    return (code >= 0xC0 && code <= 0xDE && code != 0xD7) || among(U"ŠŽŸ", code);
}

/// How far letters of these fonts go over the heights they are drawn to, in thousandths: a round
/// letter, or an accent on a small one. Seen in the free fonts that readers use for them.
constexpr int over_small = 36, over_tall = 62, under_line = 38;

layout::glyph measured(HPDF_Font in, char32_t code) {
    const auto whole = HPDF_Font_GetBBox(in);
    layout::glyph g{.code = code};
    g.advance = HPDF_Font_GetUnicodeWidth(in, static_cast<HPDF_UNICODE>(code));
    if (code == U' ' || code == 0xA0) return g;
    g.right = g.advance;
    g.above = static_cast<int>(HPDF_Font_GetCapHeight(in)) + over_tall;
    if (among(U"acegmnopqrsuvwxyz,.:;_-", code))
        g.above = static_cast<int>(HPDF_Font_GetXHeight(in)) + over_small;
    if (is_accented_capital(code)) g.above = static_cast<int>(whole.top);
    g.below = among(U"gjpqyQ,;()[]{}|@_$/\\¡¢¦§µ¶¸¿çÇþýÿ‚„ƒ†‡", code)
                  ? static_cast<int>(-whole.bottom)
                  : under_line;
    return g;
}

} // namespace

layout::face_metrics measures_of_base(const char* name) {
    layout::face_metrics metrics;
    first_error ignored;
    const auto document = new_document(ignored);
    auto* font = document ? HPDF_GetFont(document.get(), name, encoding) : nullptr;
    if (!font) return metrics;
    for (const auto& [code, byte] : all_win_ansi_codes())
        metrics.glyphs.push_back(measured(font, code));
    return metrics;
}

std::string in_win_ansi(std::string_view text) {
    const auto& codes = all_win_ansi_codes();
    std::string bytes;
    layout::for_each_character(text, [&](char32_t code) {
        if (const auto at = codes.find(code); at != codes.end()) bytes += at->second;
    });
    return bytes;
}

} // namespace benchcard::pdf
