#pragma once

#include "compiler/batch/batch.hpp"

#include <string>

namespace benchcard::cards {

/// How an amount of a line is given to a cook: counted, poured by the millilitre, weighed by the
/// gram, or not at all (`some flour`).
enum class given { nothing, counted, poured, weighed };

given how_given(const batch::weigh_line& l);

/// A line's amount in every way a card shows it, rounded to what a kitchen can measure.
struct figures {
    std::string amount;   ///< `400`, `3–4`; empty for nothing
    std::string unit;     ///< `g`, `ml`, `cases`; empty for what is simply counted
    std::string imperial; ///< `14 oz`, `8 fl oz`; empty where a cook would not
    std::string spoons;   ///< `1¾ cups`; empty where a cook would not
    /// `200 g`: what counted things weigh, or how many a weight stands for; or the range that the
    /// way a measure is filled gives, where it is wider than 5 %.
    std::string remark;
    /// `18 g beaten egg`: what is weighed besides the whole ones that `amount` counts.
    std::string rest;
};
figures figures_of(const batch::weigh_line& l, const recipe::recipe& r);

/// How many of a line that is counted are shown: whole eggs, lemons as they are cut.
exact counted_number(const batch::weigh_line& l);

/// What is weighed besides whole ones, `18 g beaten egg`; else empty.
std::string rest_of(const batch::weigh_line& l, const recipe::recipe& r);

/// `180 g`, `4`, `2 cases`, `1 + 18 g beaten egg`: the amount and its unit, for use in a sentence;
/// empty for nothing.
std::string said(const batch::weigh_line& l, const recipe::recipe& r);

/// The same line times a factor greater than 0.
batch::weigh_line part_of(const batch::weigh_line& l, const exact& factor);

/// A number of pieces with their name: `1 case`, `2½ cases`.
std::string said_pieces(const exact& number, const std::string& piece);

/// Grams as a scale shows them: `840 g`.
std::string said_grams(const exact& value);

} // namespace benchcard::cards
