#pragma once

#include <string_view>

namespace benchcard::grammar {

/// The measures a recipe can name. What each holds is not known here: that depends on whose
/// cups and spoons they are (compiler/measures).
enum class unit {
    milligram,
    gram,
    kilogram,
    ounce,
    pound,
    millilitre,
    centilitre,
    decilitre,
    litre,
    drop,
    dash,
    pinch,
    teaspoon,
    dessertspoon,
    tablespoon,
    fluid_ounce,
    gill,
    cup,
    pint,
    quart,
    gallon,
    stick,
};

inline constexpr unit all_units[] = {
    unit::milligram,   unit::gram,       unit::kilogram,  unit::ounce,        unit::pound,
    unit::millilitre,  unit::centilitre, unit::decilitre, unit::litre,        unit::drop,
    unit::dash,        unit::pinch,      unit::teaspoon,  unit::dessertspoon, unit::tablespoon,
    unit::fluid_ounce, unit::gill,       unit::cup,       unit::pint,         unit::quart,
    unit::gallon,      unit::stick,
};

/// The short form printed on cards and in messages: `g`, `tsp`, `fl oz`, `cup`.
std::string_view short_name(unit u);

enum class oven_scale { celsius, fan_celsius, fahrenheit, gas_mark };

enum class length_unit { millimetre, centimetre, inch };

} // namespace benchcard::grammar
