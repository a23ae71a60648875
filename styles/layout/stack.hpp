#pragma once

#include "styles/layout/bands.hpp"

#include <functional>
#include <vector>

namespace benchcard::layout {

/// The parts of one card, set in bands.
struct parts {
    block head;
    block short_head;          ///< of the pages after the first
    std::vector<block> top;    ///< under the head, in turn
    std::vector<block> bottom; ///< at the foot of the last page
};

/// Where type may stand on a sheet, in points.
struct area {
    double sheet_width = 0, sheet_height = 0;
    double margin = 0;

    double width() const { return sheet_width - 2 * margin; }
    double height() const { return sheet_height - 2 * margin; }
};

/// The foot of page `index` (from 0); `last` tells whether the card ends there.
using foot_maker = std::function<block(std::size_t index, bool last)>;

/// The pages of a card, and how often something that should be whole was broken over two.
struct stack {
    std::vector<page> pages;
    std::size_t broken = 0;
};

/// Stacks the parts up on as few pages as hold them, broken between groups; a group is broken
/// only if no page holds it.
stack stacked(const parts& of, const area& on, const foot_maker& foot);

} // namespace benchcard::layout
