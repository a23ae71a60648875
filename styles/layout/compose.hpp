#pragma once

#include "styles/layout/bands.hpp"
#include "styles/layout/ready_card.hpp"
#include "styles/layout/sizes.hpp"

#include <deque>
#include <initializer_list>

/// Each part of a card set in bands, at given sizes and a given width of the text area (points).
/// A part that the card does not have is an empty block.
namespace benchcard::layout {

/// What stands in the foot of every page, beside its mark. What would take too much of a page stands
/// alone, once.
enum class in_foot { all, revision, nothing };

/// All that the parts are composed from.
struct composing {
    const ready_card& card;
    const styles::style& look;
    sizes size;
    double width = 0;
    double height = 0; ///< of the text area, for parts that must leave room for others
    styles::colour accent = styles::black;
    std::deque<ready_text>* made = nullptr; ///< texts cut short, kept as long as their lines
    in_foot repeated = in_foot::all;
    purpose wanted = purpose::printing;

    std::vector<band> row_of(std::span<const cell> cells, row_measures measures) const {
        return layout::row_of(cells, measures, wanted);
    }
    std::vector<band> row_of(std::initializer_list<cell> cells, row_measures measures) const {
        return row_of(std::span(cells.begin(), cells.size()), measures);
    }
};

block compose_head(const composing& with);
/// The head of the second and further pages: title and batch, smaller and on two lines at most.
block compose_short_head(const composing& with);

block compose_weigh_out(const composing& with);
/// How many lines the rows of the weigh-out take beyond one each; counted until they are more than
/// `enough`.
std::size_t wrapped_lines(const composing& with, std::size_t enough);
block compose_totals(const composing& with);
block compose_table(const composing& with);
block compose_method(const composing& with);
block compose_oven(const composing& with);
block compose_allergens(const composing& with);
block compose_cautions(const composing& with);
block compose_notes(const composing& with);
block compose_keeping(const composing& with);
block compose_figures(const composing& with);
/// Over a component in a whole recipe: its name, and how much of it is made.
group compose_part_heading(const composing& with);

/// The lowest lines of a page: what is repeated, number and fingerprint.
block compose_foot(const composing& with, const page_mark& mark);
/// As much as may stand in a foot with that mark.
in_foot repeated_with(const composing& with, const page_mark& mark);
/// What is not repeated, as a part of its own.
block compose_long_foot(const composing& with, in_foot repeated);

/// One of the parts between head and foot.
block compose(styles::block which, const composing& with);

} // namespace benchcard::layout
