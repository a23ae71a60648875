#pragma once

#include "styles/layout/text.hpp"

#include <span>
#include <vector>

/// What a card is stacked up from: bands of one line of type, in groups, in blocks.
namespace benchcard::layout {

/// A line of type and where it begins, in points from the left margin.
struct placed_line {
    type_line line;
    double x = 0;
};

/// One line of type across the card, never split; x from the left margin, y from its baseline.
struct band {
    double above = 0; ///< from its top to the baseline
    double below = 0;
    boost::container::small_vector<placed_line, 3> text = {};
    std::vector<shape> shapes = {};

    double height() const { return above + below; }
};

/// Bands that stay on one page if any page holds them: a step, a row, a boxed caution.
struct group {
    double space_before = 0; ///< left out at the top of a page
    double pad_above = 0, pad_below = 0;
    double rule_above = 0, rule_below = 0; ///< widths of rules over and under it; 0 for none
    double box = 0;                        ///< width of the line round it; 0 for none
    styles::colour ink = styles::black;    ///< of its rules
    std::vector<double> dividers = {};     ///< x of upright rules from top to bottom
    bool keep_with_next = false;
    std::vector<band> bands = {};

    double height() const;
};

/// A part of the card: the weigh-out, the method, the foot.
struct block {
    std::vector<group> groups = {};
    bool whole = false;           ///< kept on one page if any page holds it
    std::size_t heading = 0;      ///< so many groups are repeated where it runs on to another page
    std::vector<group> over = {}; ///< put over what of it stands first in a column

    bool empty() const { return groups.empty(); }
};

/// The height of some groups one under the other, without the space before the first.
double height_of(const std::vector<group>& groups);

/// The height of some blocks one under the other, with the space before each.
double height_with_space(const std::vector<block>& blocks);

/// Lines that share a row with others: their first baselines are one.
struct cell {
    enum class side { left, right, middle };
    type_lines lines;
    double x = 0; ///< the left end, the right end or the middle of the lines
    side at = side::left;
};

/// The measures of the lines in a row: from baseline to baseline, and what the first has over
/// and the last under it at least.
struct row_measures {
    double pitch = 0, above = 0, below = 0;
};

/// The usual measures for type of one size.
row_measures measures_for(double size, double leading);

/// What is composed and stacked is wanted for: to be printed, or only to be counted, and then there
/// is no type in bands and nothing on pages.
enum class purpose { printing, counting };

/// Sets cells side by side, line by line on common baselines.
std::vector<band> row_of(std::span<const cell> cells, row_measures measures, purpose wanted);

/// The height of some bands of a group with what is over and under them.
double height_of(const group& g, std::size_t first, std::size_t last);

/// Where a group is drawn: the card's text area, and a y on the sheet.
struct place {
    double left = 0, top = 0, width = 0;
    bool with_rule_above = true; ///< if the group has one
};

/// Draws some bands of a group with its rules, and gives back the y at its end.
double draw(const group& g, std::size_t first, std::size_t last, place at, page& on);

} // namespace benchcard::layout
