#pragma once

#include "styles/layout/page.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <optional>
#include <vector>

/// From the pages of cards to the sheets that are printed.
namespace benchcard::layout {

/// The edge of the sheet over which a printer, or a hand, turns it to its back.
enum class flip { long_edge, short_edge };

/// A sheet and the cards it is cut into, with an even rest at opposite edges.
struct grid {
    styles::paper sheet;
    styles::paper card;
    std::size_t across = 1, down = 1;

    std::size_t places() const { return across * down; }
    bool is_cut() const { return places() > 1 || sheet != card; }
};

/// The grid of a style on a sheet, which is turned where it then holds more cards; nothing where
/// it holds none, or its cards would be too small for a recipe.
std::optional<grid> grid_for(const styles::style& look, const styles::paper& sheet);

/// Whether a sheet's left and right change places when it is turned over, not top and bottom.
bool turns_like_a_leaf(const styles::paper& sheet, flip over);

/// Moves what stands on the backs, every second page, so that the zone that is kept clear for a
/// hole lies behind that of the front.
void settle_backs(std::vector<page>& pages, const styles::style& look, const styles::paper& sheet,
                  flip over);

/// The sheets of some cards, with cutting marks; each page is repeated `copies` times, and no two
/// sheets share the copies of one. With a flip the pages are fronts and backs in turn, and so are
/// the sheets: each back lies behind its front.
std::vector<page> imposed(std::vector<page> pages, const grid& on, std::size_t copies,
                          std::optional<flip> over);

} // namespace benchcard::layout
