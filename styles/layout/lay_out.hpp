#pragma once

#include "styles/card.hpp"
#include "styles/layout/page.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <vector>

namespace benchcard::layout {

/// How wide a card is between its margins and beside a hole, in points.
double room_across(const styles::style& look, const styles::paper& sheet);

/// The narrowest room in points in which the amounts of a style stand whole and a name beside them:
/// a tick, 0.66 of the room for figures and unit, and at least a letter of the name.
double least_room(const styles::style& look, const font_metrics& metrics);

/// Sets a card on one page, in type as large as the style allows and the page holds; or, when
/// it does not fit at the smallest, on as few pages as hold it, marked `a`, `b` and so on.
std::vector<page> lay_out(const styles::card& of, const styles::style& look,
                          const styles::paper& sheet, const font_metrics& metrics);

/// The back of a card that has nothing on it: only whose back it is.
page back_of(const styles::card& of, const styles::style& look, const styles::paper& sheet,
             const font_metrics& metrics);

} // namespace benchcard::layout
