#pragma once

#include "styles/layout/bands.hpp"

#include <functional>
#include <vector>

namespace benchcard::layout {

/// A part that is made only where it is asked for, which must outlive the stacking.
using part_maker = std::function<const block*()>;

/// The parts of one card, set in bands.
struct parts {
    block head = {};
    part_maker short_head = {};     ///< of the pages after the first
    std::vector<block> top = {};    ///< under the head, in turn
    std::vector<block> bottom = {}; ///< at the foot of the last page
    std::size_t columns = 1;        ///< side by side between head and foot
};

/// Between two columns, in points; an upright rule stands in its middle.
inline constexpr double gutter = 22;
/// Between what stands on a page and its foot, and between its head and columns.
inline constexpr double foot_gap = 6, head_gap = 5;

/// Where type may stand on a sheet, in points.
struct area {
    double sheet_width = 0, sheet_height = 0;
    double left = 0, top = 0, right = 0, bottom = 0; ///< clear at the edges

    double width() const { return sheet_width - left - right; }
    double height() const { return sheet_height - top - bottom; }
    /// The width of one of so many columns.
    double column_width(std::size_t columns) const {
        const auto n = static_cast<double>(columns);
        return (width() - (n - 1) * gutter) / n;
    }
};

/// The foot of page `index` (from 0), which must outlive the stacking; `last` tells whether the
/// card ends there.
using foot_maker = std::function<const block*(std::size_t index, bool last)>;

/// The pages of a card, and how often something that should be whole was broken over two.
struct stack {
    std::vector<page> pages;
    std::size_t broken = 0;
    /// How much of them is filled, in columns: 1.5 is one and half of the next.
    double filled = 0;
};

/// Stacks the parts up on as few pages as hold them, column after column, broken between groups; a
/// group is broken only if no column of a fresh page holds it.
stack stacked(const parts& of, const area& on, const foot_maker& foot, purpose wanted);

} // namespace benchcard::layout
