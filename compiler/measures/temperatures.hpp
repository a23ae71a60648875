#pragma once

#include "grammar/exact.hpp"
#include "grammar/units.hpp"

#include <string>

namespace benchcard::measures {

using grammar::oven_scale;

struct celsius {
    exact value = 0;
};

/// The exact temperature in degrees Celsius of a figure on a scale. Fan degrees are those of a
/// conventional oven 20 °C hotter (common practice). Gas marks are read in a straight line between
/// ¼ (225 °F), ½ (250 °F), 1 (275 °F) and 25 °F more a mark (GNU units 2.22, gasmark); the last
/// line goes on above 10, and below ¼ the marks 1/8 (200 °F) and 1/16 (175 °F) are used as there.
celsius exactly(const exact& figure, oven_scale scale);
/// The exact figure on a scale for a temperature: the inverse of `exactly`.
exact degrees_on(oven_scale scale, const celsius& temperature);

/// One oven setting as the dials of four ovens show it: `180 °C`, `160 °C`, `350 °F`, `4`.
/// `gas` is empty where no mark comes near (below ¼ or above 10), `fan` where it would be below
/// 30 °C, which no oven keeps.
struct dial {
    std::string celsius, fan, fahrenheit, gas;

    bool operator==(const dial&) const = default;
};

/// What a cook turns the dials to. The scale the recipe was written in is shown as written; the
/// others from a table of dial settings (180 °C = 350 °F = gas 4 = 160 °C fan), which is rounded
/// for dials and not exact. A setting within a quarter of a row of the table (6¼ °F), or at a
/// figure the table has, is that row; any other is rounded to 5 °C and 5 °F, and to the nearest
/// gas mark. Below 100 °C both are to the degree. Takes a range, `180–190 °C`, shown as one figure
/// where both ends are the same.
/// The °C column is from several UK conversion charts, which differ at ½ (120 to 130 °C) and 3
/// (160 to 170 °C); no standard stands behind it. Fan ovens: 20 °C less (common practice).
dial dial_settings(const exact& low, const exact& high, oven_scale scale);

/// What a thermometer in a syrup or a custard should read: `118 °C` and `244 °F`. The scale it was
/// written in is shown as written, the other to the degree; no dial comes into it.
struct thermometer_reading {
    std::string celsius, fahrenheit;

    bool operator==(const thermometer_reading&) const = default;
};
thermometer_reading thermometer(const exact& low, const exact& high, oven_scale scale);

} // namespace benchcard::measures
