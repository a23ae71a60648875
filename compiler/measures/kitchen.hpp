#pragma once

#include "compiler/measures/systems.hpp"

#include <optional>
#include <string>

/// Rounding to what a kitchen can measure: the one place where exact amounts become figures.
namespace benchcard::measures {

/// A figure and its unit, ready to print: {`1.5`, `g`}.
struct shown {
    std::string figure;
    std::string unit;

    bool operator==(const shown&) const = default;
};

/// A weight on a kitchen scale: to the gram from 10 g up, to 0.1 g below that; in kg, to 10 g,
/// from 10 kg up. Never `0`: below 0.1 g it has its first significant figure.
shown on_a_scale(const grams& weight);
/// The same on a scale that shows steps of so many grams, greater than 0: to the step where it can
/// show the weight, in kg to no less than 10 g; else as without a step.
shown on_a_scale(const grams& weight, const std::optional<exact>& step);
/// What a scale shows for a weight, in grams.
exact grams_shown(const exact& grams, const std::optional<exact>& step);
/// Whether the nearest step of a scale is within 3 % of a weight. Without a step it is.
bool scale_shows(const exact& grams, const std::optional<exact>& step);
/// A volume in a measuring jug: to the ml from 10 ml up; below, to the ml where that is within 2 %,
/// else to 0.1 ml or the first significant figure; in l, to 10 ml, from 1 l up.
shown in_a_jug(const millilitres& volume);
/// A weight in ounces, to the eighth below 2 oz and to the quarter above; from a pound up in
/// pounds and ounces: `14 oz`, `1 lb 2½ oz`. Empty below an eighth of an ounce, and where the
/// nearest mark is more than a tenth off: such a scale cannot show it.
std::string in_ounces(const grams& weight);
/// A volume in fluid ounces of a system, to the quarter: `8 fl oz`. Empty below a quarter, where
/// the nearest quarter is more than a tenth off, and where the system has no fluid ounce.
std::string in_fluid_ounces(const millilitres& volume, system s);

/// A volume as a cook would measure it with the cups and spoons of a system: `1 cup + 2 tbsp`.
struct spooned {
    std::string text;         ///< empty where the set cannot measure it
    exact measured_ml = 0;    ///< what those measures hold; 0 where `text` is empty
    exact relative_error = 0; ///< (measured - wanted) / wanted
};
/// At most two terms from the real set of measures (cups with ¼ ⅓ ½ ⅔ ¾; 1 to 3 tbsp, also with a
/// half, and 4 where they are less than ¼ cup; tsp with ¼ ½ ¾, and ⅛): the nearest single term if
/// it is within 1½ %, else the simplest two within 1½ %, else whatever is nearest. A system without
/// a cup goes to 8 tbsp.
/// Empty above 999 cups, above 8 tbsp without a cup, and below 3/32 tsp, where the smallest spoon
/// holds a third too much.
spooned in_cups_and_spoons(const millilitres& volume, system s);

/// A number with a vulgar fraction where it has one a cook would use, otherwise to at most
/// `decimals` places: `1½`, `⅔`, `4`, `1.37`. Halves, quarters and eighths must be exact; a third
/// may be off by a thousandth of itself, so that 0.333 is one.
std::string with_fraction(const exact& value, int decimals = 2);
/// The nearest part to which a cook cuts a thing, an onion or a lemon, up: quarters and thirds
/// below 5, halves below 20, whole ones above; at least a quarter.
exact as_cut(const exact& number);
/// A number in decimals, rounded half up to `decimals` places, without trailing zeros.
std::string in_decimals(const exact& value, int decimals);
/// The value rounded half up to a multiple of `step` (greater than 0).
exact rounded_to(const exact& value, const exact& step);
/// The largest whole number that is not above the value.
exact whole_part(const exact& value);

} // namespace benchcard::measures
