#include "styles/layout/compose.hpp"

#include <algorithm>

/// The parts that only a whole recipe has.
namespace benchcard::layout {

group compose_part_heading(const composing& with) {
    const auto& s = with.size;
    const double size = std::max(s.name, s.text) * 1.12;
    group made{.space_before = s.space * 1.6,
               .pad_above = s.space * 0.35 + 1.2,
               .pad_below = s.space * 0.3,
               .rule_above = 1.2,
               .ink = with.accent,
               .keep_with_next = true};
    const auto title = one_size(size), amount = one_size(s.detail);
    const auto measures = measures_for(size, 1.16);
    const double amount_width = natural_width(*with.card.amount, amount);
    const double beside = with.width - amount_width - s.detail * 1.5;
    const bool fits_beside =
        beside > with.width * 0.3 && widest_piece(with.card.title, title) <= beside;
    if (fits_beside) {
        made.bands = with.row_of(
            {{broken(with.card.title, title, beside), 0},
             {broken(*with.card.amount, amount, with.width), with.width, cell::side::right}},
            measures);
        return made;
    }
    auto lines = broken(with.card.title, title, with.width);
    for (const auto& l : broken(*with.card.amount, amount, with.width)) lines.push_back(l);
    made.bands = with.row_of({{lines, 0}}, measures);
    return made;
}

block compose_figures(const composing& with) {
    const auto& s = with.size;
    block made;
    for (const auto& f : with.card.figures) {
        group heading{.space_before = s.space * 1.4,
                      .pad_above = s.space * 0.3 + 0.8,
                      .rule_above = 0.8,
                      .keep_with_next = true};
        heading.bands = with.row_of({{broken(f.title, one_size(s.text), with.width), 0}},
                                    measures_for(s.text, s.leading));
        if (!heading.bands.empty()) made.groups.push_back(std::move(heading));
        for (std::size_t i = 0; i < f.lines.size(); ++i) {
            const auto& l = f.lines[i];
            constexpr std::size_t deepest = 4;
            const double indent = static_cast<double>(std::min(l.depth, deepest)) * s.small_print;
            group g{.space_before = l.depth == 0 ? s.space * 0.5 : 0};
            g.bands = with.row_of(
                {{broken(l.text, one_size(s.small_print), with.width - indent), indent}},
                measures_for(s.small_print, s.leading - 0.04));
            for (std::size_t b = 0; b < g.bands.size(); ++b) // leading between lines of all groups
                g.bands[b].above = std::max(g.bands[b].above,
                                            s.small_print * (s.leading - 0.04) - g.bands[b].below);
            const bool is_explained = i + 1 < f.lines.size() && f.lines[i + 1].depth > l.depth;
            g.keep_with_next = is_explained;
            if (!g.bands.empty()) made.groups.push_back(std::move(g));
        }
    }
    return made;
}

} // namespace benchcard::layout
