#pragma once

#include "styles/card.hpp"
#include "styles/layout/page.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <vector>

namespace benchcard::layout {

/// Sets a card on one page, in type as large as the style allows and the page holds; or, when
/// it does not fit at the smallest, on as few pages as hold it, marked `a`, `b` and so on.
std::vector<page> lay_out(const styles::card& card, const styles::style& look,
                          const styles::paper& sheet, const font_metrics& metrics);

/// The back of a card that has nothing on it: only whose back it is.
page back_of(const styles::card& card, const styles::style& look, const styles::paper& sheet,
             const font_metrics& metrics);

} // namespace benchcard::layout
