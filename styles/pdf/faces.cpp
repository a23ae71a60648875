#include "styles/pdf/faces.hpp"

#include "styles/layout/utf8.hpp"
#include "styles/pdf/base_fonts.hpp"
#include "styles/pdf/codes.hpp"

#include <array>

namespace benchcard::pdf {

namespace {

face_in_use embedded(HPDF_Doc document, const font_program& program,
                     const std::set<char16_t>& characters, std::size_t place) {
    const std::array<char, 7> tag{'C', 'A', 'R', 'D', 'S', static_cast<char>('A' + place % 26), 0};
    character_codes codes(characters);
    auto* font = embed(document, cut_to(program, characters), codes, tag.data());
    return {font,
            [codes = std::move(codes)](std::string_view text) { return codes.encoded(text); }};
}

/// A drawn sign may need any figure of the face beside it, or a blank.
void add_figures(std::set<char16_t>& characters) {
    characters.insert(u' ');
    for (char16_t figure = u'0'; figure <= u'9'; ++figure) characters.insert(figure);
}

} // namespace

characters_used characters_of(const std::vector<layout::page>& pages, const font_set& fonts) {
    characters_used used{std::vector<std::set<char16_t>>(fonts.faces.size()), {}};
    std::vector<std::vector<bool>> seen(fonts.faces.size(), std::vector<bool>(0x10000));
    std::set<char32_t> missing;
    for (const auto& p : pages)
        for (const auto& run : p.text) {
            auto& seen_in_face = seen.at(run.face);
            layout::for_each_character(run.text, [&](char32_t code) {
                if (code <= 0xFFFF && seen_in_face[code]) return;
                if (code <= 0xFFFF && fonts.metrics.faces[run.face].find(code)) {
                    seen_in_face[code] = true;
                    used.by_face[run.face].insert(static_cast<char16_t>(code));
                } else if (missing.insert(code).second) {
                    used.missing.emplace_back(code, run.text);
                }
            });
        }
    for (std::size_t i = 0; i < fonts.faces.size(); ++i)
        if (const auto* drawn = std::get_if<lettering>(&fonts.faces[i]))
            if (!used.by_face[i].empty()) add_figures(used.by_face[drawn->face]);
    return used;
}

bool have_all(const std::vector<layout::page>& pages, const font_set& fonts) {
    bool all = true;
    for (const auto& p : pages)
        for (const auto& run : p.text) {
            const auto& face = fonts.metrics.faces.at(run.face);
            if (face.has_all_ascii() && layout::is_ascii(run.text)) continue;
            layout::for_each_character(
                run.text, [&](char32_t code) { all = all && code <= 0xFFFF && face.find(code); });
        }
    return all;
}

face_in_use put_in(HPDF_Doc document, std::size_t face, const std::set<char16_t>& characters,
                   const font_set& fonts) {
    const auto& source = fonts.faces[face];
    if (const auto* program = std::get_if<font_program>(&source))
        return embedded(document, *program, characters, face);
    if (const auto* base = std::get_if<base_font>(&source))
        return {HPDF_GetFont(document, base->name.c_str(), "WinAnsiEncoding"), in_win_ansi};
    return {};
}

} // namespace benchcard::pdf
