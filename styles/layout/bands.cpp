#include "styles/layout/bands.hpp"

#include <algorithm>

namespace benchcard::layout {

double group::height() const {
    double sum = pad_above + pad_below;
    for (const auto& b : bands) sum += b.height();
    return sum;
}

double height_of(const std::vector<group>& groups) {
    double sum = 0;
    for (std::size_t i = 0; i < groups.size(); ++i)
        sum += (i > 0 ? groups[i].space_before : 0) + groups[i].height();
    return sum;
}

double height_with_space(const std::vector<block>& blocks) {
    double sum = 0;
    for (const auto& b : blocks)
        if (!b.empty()) sum += b.groups.front().space_before + height_of(b.groups);
    return sum;
}

row_measures measures_for(double size, double leading) {
    // Capitals of Noto Sans stand 0.714 of the size high and its letters hang 0.24 under.
    return {.pitch = size * leading, .above = size * 0.73, .below = size * 0.25};
}

std::vector<band> row_of(std::span<const cell> cells, row_measures measures, purpose wanted) {
    std::size_t count = 0;
    for (const auto& c : cells) count = std::max(count, c.lines.size());
    std::vector<band> bands(count);
    for (std::size_t i = 0; i < count; ++i) {
        auto& b = bands[i];
        b.above = i == 0 ? measures.above : measures.pitch - measures.below;
        b.below = measures.below;
        for (const auto& c : cells) {
            if (i >= c.lines.size()) continue;
            const auto& l = c.lines[i];
            const double shift = c.at == cell::side::left    ? 0
                                 : c.at == cell::side::right ? l.width
                                                             : l.width / 2;
            if (wanted == purpose::printing) b.text.push_back({l, c.x - shift});
            b.above = std::max(b.above, l.above);
            b.below = std::max(b.below, l.below);
        }
    }
    return bands;
}

double height_of(const group& g, std::size_t first, std::size_t last) {
    double sum = g.pad_above;
    for (auto i = first; i < last; ++i) sum += g.bands[i].height();
    return sum + g.pad_below;
}

double draw(const group& g, std::size_t first, std::size_t last, place at, page& on) {
    const double left = at.left, width = at.width;
    double y = at.top + g.pad_above;
    for (auto i = first; i < last; ++i) {
        const auto& b = g.bands[i];
        y += b.above;
        for (const auto& s : b.shapes) on.shapes.push_back(moved(s, left, y));
        for (const auto& placed : b.text) add_runs(placed.line, placed.x + left, y, on.text);
        y += b.below;
    }
    y += g.pad_below;
    if (g.rule_above > 0 && at.with_rule_above) {
        const double top = at.top + g.rule_above / 2;
        on.shapes.push_back(line{left, top, left + width, top, g.rule_above, g.ink});
    }
    if (g.rule_below > 0) {
        const double bottom = y - g.rule_below / 2;
        on.shapes.push_back(line{left, bottom, left + width, bottom, g.rule_below, g.ink});
    }
    if (g.box > 0)
        on.shapes.push_back(rectangle{left + g.box / 2, at.top + g.box / 2, width - g.box,
                                      y - at.top - g.box, g.box});
    for (const auto x : g.dividers) on.shapes.push_back(line{left + x, at.top, left + x, y, 0.5});
    return y;
}

} // namespace benchcard::layout
