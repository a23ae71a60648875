#pragma once

#include "compiler/measures/systems.hpp"

#include <string>

/// Rounding to what a kitchen can measure: the one place where exact amounts become figures.
namespace benchcard::measures {

/// A figure and its unit, ready to print: {`1.5`, `g`}.
struct shown {
    std::string figure;
    std::string unit;

    bool operator==(const shown&) const = default;
};

/// A weight on a kitchen scale: to the gram from 10 g up, to 0.1 g below that, never `0`;
/// in kg, to 10 g, from 10 kg up.
shown on_a_scale(grams weight);
/// A volume in a measuring jug: to the ml from 10 ml up, to 0.1 ml below; in l, to 10 ml,
/// from 10 l up.
shown in_a_jug(millilitres volume);
/// A weight in ounces to the quarter, from a pound up in pounds and ounces: `14 oz`, `1 lb 2½ oz`.
/// Empty below an eighth of an ounce, which such a scale cannot show.
std::string in_ounces(grams weight);
/// A volume in fluid ounces of a system, to the quarter; empty below a quarter.
std::string in_fluid_ounces(millilitres volume, system s);

/// A volume as a cook would measure it, from the real set of measures of a system (1, ½, ⅓, ¼ cup;
/// 1, ½ tbsp; 1, ½, ¼, ⅛ tsp), in at most two terms, with the smallest error: `1 cup + 2 tbsp`.
struct spooned {
    std::string text;   ///< empty where nothing of the set comes near (below 1/16 tsp)
    exact measured_ml = 0; ///< what those measures hold
    exact relative_error = 0; ///< (measured - wanted) / wanted
};
spooned in_cups_and_spoons(millilitres volume, system s);

/// A number with a vulgar fraction where it has one a cook would use (halves, thirds, quarters,
/// eighths), otherwise to at most `decimals` places: `1½`, `⅔`, `4`, `1.37`.
std::string with_fraction(const exact& value, int decimals = 2);
/// A number in decimals, rounded half up to `decimals` places, without trailing zeros.
std::string in_decimals(const exact& value, int decimals);
/// The value rounded half up to a multiple of `step` (greater than 0).
exact rounded_to(const exact& value, const exact& step);

} // namespace benchcard::measures
