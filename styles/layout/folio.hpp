#pragma once

#include "styles/layout/page.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <string>

/// The page number of a book, under what stands on a sheet.
namespace benchcard::layout {

/// The sheet without the strip at its foot that the number takes.
styles::paper above_folio(const styles::paper& sheet, const styles::style& look);

/// Gives a page that was laid out above the folio its strip, with the number in the middle of it.
void add_folio(page& to, const std::string& number, const styles::style& look,
               const font_metrics& metrics);

} // namespace benchcard::layout
