#include "styles/pdf/signs.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace benchcard::pdf {

namespace {

using layout::face_metrics;
using layout::point;

/// What a sign is made of, in thousandths of the type size from the baseline, y upwards.
struct outline {
    std::vector<std::pair<point, point>> strokes = {};
    std::vector<std::vector<point>> filled = {};
    std::vector<std::pair<point, std::string>> figures = {};
    int advance = 0;
};

struct fraction {
    char32_t code;
    const char* over;
    const char* under;
};

constexpr fraction fractions[] = {
    {U'¼', "1", "4"},  {U'½', "1", "2"}, {U'¾', "3", "4"}, {U'⅐', "1", "7"}, {U'⅑', "1", "9"},
    {U'⅒', "1", "10"}, {U'⅓', "1", "3"}, {U'⅔', "2", "3"}, {U'⅕', "1", "5"}, {U'⅖', "2", "5"},
    {U'⅗', "3", "5"},  {U'⅘', "4", "5"}, {U'⅙', "1", "6"}, {U'⅚', "5", "6"}, {U'⅛', "1", "8"},
    {U'⅜', "3", "8"},  {U'⅝', "5", "8"}, {U'⅞', "7", "8"},
};

/// Signs without figures, and blanks. (The widths of blanks: the Unicode Standard, table 6-2; the
/// narrow ones are common practice.)
constexpr std::u32string_view line_signs = U"⁄−☐✓⚠→≤≥≈‐‑\u2002\u2003\u2007\u2009\u200A\u202F";

/// Figures in a fraction are so large, in thousandths, and stand so high.
constexpr int figure_size = 600, figure_rise = 280, figure_height = 430, side = 24, slant = 250;

int width_of(std::string_view figures, const face_metrics& letters) {
    int width = 0;
    for (const char figure : figures)
        if (const auto* g = letters.find(static_cast<unsigned char>(figure)))
            width += g->advance * figure_size / 1000;
    return width;
}

outline outline_of(const fraction& f, const face_metrics& letters) {
    const int over = width_of(f.over, letters), under = width_of(f.under, letters);
    const double middle = side + over + slant / 4.0 + side;
    return {.strokes = {{{middle - slant / 2.0, 0}, {middle + slant / 2.0, 710}}},
            .figures = {{{side, figure_rise}, f.over}, {{middle + slant / 4.0 + side, 0}, f.under}},
            .advance = static_cast<int>(middle + slant / 4.0) + side + under + side};
}

std::optional<outline> outline_of_lines(char32_t code) {
    switch (code) {
    case U'⁄':
        return outline{.strokes = {{{-40, 0}, {207, 710}}}, .advance = 167};
    case U'−':
        return outline{.strokes = {{{40, 250}, {544, 250}}}, .advance = 584};
    case U'‐':
    case U'‑':
        return outline{.strokes = {{{44, 275}, {289, 275}}}, .advance = 333};
    case U'☐':
        return outline{.strokes = {{{70, 0}, {730, 0}},
                                   {{730, 0}, {730, 660}},
                                   {{730, 660}, {70, 660}},
                                   {{70, 660}, {70, 0}}},
                       .advance = 800};
    case U'✓':
        return outline{.strokes = {{{80, 300}, {280, 60}}, {{280, 60}, {680, 680}}},
                       .advance = 760};
    case U'⚠':
        return outline{.strokes = {{{60, 20}, {840, 20}},
                                   {{840, 20}, {450, 690}},
                                   {{450, 690}, {60, 20}},
                                   {{450, 460}, {450, 230}},
                                   {{450, 160}, {450, 90}}},
                       .advance = 900};
    case U'→':
        return outline{.strokes = {{{60, 260}, {700, 260}}},
                       .filled = {{{940, 260}, {640, 400}, {640, 120}}},
                       .advance = 1000};
    case U'≤':
        return outline{
            .strokes = {{{500, 620}, {60, 400}}, {{60, 400}, {500, 180}}, {{60, 60}, {500, 60}}},
            .advance = 560};
    case U'≥':
        return outline{
            .strokes = {{{60, 620}, {500, 400}}, {{500, 400}, {60, 180}}, {{60, 60}, {500, 60}}},
            .advance = 560};
    case U'≈':
        return outline{.strokes = {{{50, 320}, {180, 400}},
                                   {{180, 400}, {380, 320}},
                                   {{380, 320}, {510, 400}},
                                   {{50, 130}, {180, 210}},
                                   {{180, 210}, {380, 130}},
                                   {{380, 130}, {510, 210}}},
                       .advance = 560};
    case U'\u2002':
        return outline{.advance = 500};
    case U'\u2003':
        return outline{.advance = 1000};
    case U'\u2007':
        return outline{.advance = 556}; // as wide as a figure of the base fonts
    case U'\u2009':
    case U'\u202F':
        return outline{.advance = 200};
    case U'\u200A':
        return outline{.advance = 100};
    default:
        return std::nullopt;
    }
}

std::optional<outline> outline_of(char32_t code, const face_metrics& letters) {
    const auto found = std::ranges::find(fractions, code, &fraction::code);
    if (found != std::end(fractions)) return outline_of(*found, letters);
    return outline_of_lines(code);
}

/// The box of a sign's ink, half a bold stroke beyond its points.
layout::glyph measured(char32_t code, const outline& sign) {
    layout::glyph g{.code = code, .advance = sign.advance};
    constexpr int half_stroke = 50;
    double left = sign.advance, right = 0, above = 0, below = 0;
    const auto take = [&](const point& p) {
        left = std::min(left, p.x), right = std::max(right, p.x);
        above = std::max(above, p.y), below = std::max(below, -p.y);
    };
    for (const auto& [from, to] : sign.strokes) take(from), take(to);
    for (const auto& corners : sign.filled) std::ranges::for_each(corners, take);
    if (!sign.figures.empty())
        take({0, figure_rise + figure_height}), take({static_cast<double>(sign.advance), 0});
    if (right <= 0) return g; // a blank
    g.left = static_cast<int>(left) - half_stroke;
    g.right = static_cast<int>(right) + half_stroke;
    g.above = static_cast<int>(above) + half_stroke;
    g.below = static_cast<int>(below) + half_stroke;
    return g;
}

} // namespace

layout::face_metrics measures_of_signs(const face_metrics& letters) {
    std::vector<char32_t> codes(line_signs.begin(), line_signs.end());
    for (const auto& f : fractions) codes.push_back(f.code);
    std::ranges::sort(codes);
    face_metrics metrics;
    for (const auto code : codes)
        metrics.glyphs.push_back(measured(code, *outline_of(code, letters)));
    return metrics;
}

layout::page drawn_sign(char32_t code, const layout::text_run& run, double x,
                        const lettering& beside, const face_metrics& letters) {
    layout::page out;
    const auto sign = outline_of(code, letters);
    if (!sign) return out;
    const double scale = run.size / 1000;
    const auto at = [&](const point& p) { return point{x + p.x * scale, run.y - p.y * scale}; };
    for (const auto& [from, to] : sign->strokes)
        out.shapes.push_back(layout::line{at(from).x, at(from).y, at(to).x, at(to).y,
                                          beside.stroke * scale, run.ink});
    for (const auto& corners : sign->filled) {
        layout::polygon filled{{}, 0, run.ink};
        for (const auto& p : corners) filled.points.push_back(at(p));
        out.shapes.push_back(std::move(filled));
    }
    for (const auto& [place, figures] : sign->figures)
        out.text.push_back({.x = at(place).x,
                            .y = at(place).y,
                            .size = figure_size * scale,
                            .face = beside.face,
                            .ink = run.ink,
                            .text = figures});
    if (sign->figures.empty()) // readers copy what a drawing stands for only where there is a text
        out.text.push_back({x, run.y, run.size, beside.face, run.ink, " "});
    return out;
}

} // namespace benchcard::pdf
