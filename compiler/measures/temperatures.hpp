#pragma once

#include "grammar/exact.hpp"
#include "grammar/units.hpp"

#include <string>

namespace benchcard::measures {

using grammar::oven_scale;

struct celsius {
    exact value = 0;
};

/// The exact temperature in degrees Celsius of `degrees` on a scale. Fan degrees are those of a
/// conventional oven 20 °C hotter (common practice). Gas marks between 0 and 10.
celsius exactly(const exact& degrees, oven_scale scale);
/// The exact figure on a scale for a temperature: the inverse of `exactly`.
exact degrees_on(oven_scale scale, celsius temperature);

/// One oven setting as the dials of four ovens show it: `180 °C`, `160 °C`, `350 °F`, `4`.
/// `gas` is empty where no mark comes near (below ¼ or above 10).
struct dial {
    std::string celsius, fan, fahrenheit, gas;

    bool operator==(const dial&) const = default;
};

/// What a cook turns the dials to. The scale the recipe was written in is shown as written;
/// the others from a table of dial settings (180 °C = 350 °F = gas 4 = 160 °C fan), which is
/// rounded for dials and not exact. Takes a range: `180–190 °C`.
dial dial_settings(const exact& low, const exact& high, oven_scale scale);

} // namespace benchcard::measures
