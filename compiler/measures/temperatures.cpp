#include "compiler/measures/temperatures.hpp"

#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/ranges.hpp"

#include <iterator>
#include <optional>

namespace benchcard::measures {
namespace {

const exact fan_difference = 20; // °C

exact to_fahrenheit(const exact& degrees_celsius) { return degrees_celsius * 9 / 5 + 32; }
exact to_celsius(const exact& degrees_fahrenheit) { return (degrees_fahrenheit - 32) * 5 / 9; }

/// The corners of the line from gas marks to °F; the first and the last piece go on beyond.
struct corner {
    exact mark, fahrenheit;
};
const corner corners[] = {{exact(1, 16), 175}, {exact(1, 8), 200}, {exact(1, 4), 225},
                          {exact(1, 2), 250},  {1, 275},           {10, 500}};

exact between(const exact& x, const exact& x1, const exact& x2, const exact& y1, const exact& y2) {
    return y1 + (x - x1) * (y2 - y1) / (x2 - x1);
}

exact gas_to_fahrenheit(const exact& mark) {
    std::size_t i = 1;
    while (i + 1 < std::size(corners) && mark > corners[i].mark) ++i;
    const corner &a = corners[i - 1], &b = corners[i];
    return between(mark, a.mark, b.mark, a.fahrenheit, b.fahrenheit);
}

exact fahrenheit_to_gas(const exact& degrees) {
    std::size_t i = 1;
    while (i + 1 < std::size(corners) && degrees > corners[i].fahrenheit) ++i;
    const corner &a = corners[i - 1], &b = corners[i];
    return between(degrees, a.fahrenheit, b.fahrenheit, a.mark, b.mark);
}

/// A row of the dial table: a mark of a gas oven, its °F, and the °C that charts put beside it.
struct dial_row {
    exact mark;
    int fahrenheit = 0;
    int celsius = 0;         ///< what is printed
    int highest_celsius = 0; ///< the upper figure where charts differ
};
const dial_row dial_rows[] = {
    {exact(1, 4), 225, 110, 110}, {exact(1, 2), 250, 120, 130}, {1, 275, 140, 140},
    {2, 300, 150, 150},           {3, 325, 160, 170},           {4, 350, 180, 180},
    {5, 375, 190, 190},           {6, 400, 200, 200},           {7, 425, 220, 220},
    {8, 450, 230, 230},           {9, 475, 240, 240},           {10, 500, 260, 260},
};
const exact half_a_row(25, 2); // °F
const exact quarter_of_a_row(25, 4);

/// The row a figure stands for as charts print it, or the one its exact temperature is close to.
const dial_row* row_at(const exact& figure, oven_scale scale) {
    const exact degrees = to_fahrenheit(exactly(figure, scale).value);
    if (scale == oven_scale::celsius || scale == oven_scale::fan_celsius) {
        const exact dial_celsius = scale == oven_scale::celsius ? figure : figure + fan_difference;
        for (const dial_row& row : dial_rows)
            if (dial_celsius >= row.celsius && dial_celsius <= row.highest_celsius) return &row;
    }
    for (const dial_row& row : dial_rows)
        if (abs(degrees - row.fahrenheit) <= quarter_of_a_row) return &row;
    return nullptr;
}

/// The nearest mark, the lower of two; nothing beyond the marks an oven has.
std::optional<exact> nearest_mark(const exact& fahrenheit) {
    for (const dial_row& row : dial_rows)
        if (abs(fahrenheit - row.fahrenheit) <= half_a_row) return row.mark;
    return std::nullopt;
}

/// The figures of the dials for one temperature, before they are written out.
struct figures {
    exact celsius, fan, fahrenheit;
    std::optional<exact> gas;
};

exact for_a_dial(const exact& degrees, bool low) { return rounded_to(degrees, low ? 1 : 5); }

figures off_the_table(const exact& figure, oven_scale scale) {
    const exact exact_celsius = exactly(figure, scale).value;
    const bool low = exact_celsius < 100;
    const exact fahrenheit = to_fahrenheit(exact_celsius);
    return {for_a_dial(exact_celsius, low), 0, for_a_dial(fahrenheit, low),
            nearest_mark(fahrenheit)};
}

figures figures_for(const exact& figure, oven_scale scale) {
    figures f = off_the_table(figure, scale);
    if (const dial_row* row = row_at(figure, scale))
        f = {row->celsius, 0, row->fahrenheit, row->mark};
    switch (scale) {
    case oven_scale::celsius:
        f.celsius = figure;
        break;
    case oven_scale::fan_celsius:
        f.celsius = figure + fan_difference;
        break;
    case oven_scale::fahrenheit:
        f.fahrenheit = figure;
        break;
    case oven_scale::gas_mark:
        f.gas = figure;
        break;
    }
    f.fan = f.celsius - fan_difference;
    return f;
}

std::string degrees(const exact& low, const exact& high, const char* unit) {
    return range_of(decimals_with_minus(low), decimals_with_minus(high), unit);
}

exact thermometer_figure(const exact& written, oven_scale from, oven_scale to) {
    return from == to ? written : rounded_to(degrees_on(to, exactly(written, from)), 1);
}

} // namespace

celsius exactly(const exact& figure, oven_scale scale) {
    switch (scale) {
    case oven_scale::celsius:
        return {figure};
    case oven_scale::fan_celsius:
        return {figure + fan_difference};
    case oven_scale::fahrenheit:
        return {to_celsius(figure)};
    case oven_scale::gas_mark:
        return {to_celsius(gas_to_fahrenheit(figure))};
    }
    return {figure};
}

exact degrees_on(oven_scale scale, const celsius& temperature) {
    switch (scale) {
    case oven_scale::celsius:
        return temperature.value;
    case oven_scale::fan_celsius:
        return temperature.value - fan_difference;
    case oven_scale::fahrenheit:
        return to_fahrenheit(temperature.value);
    case oven_scale::gas_mark:
        return fahrenheit_to_gas(to_fahrenheit(temperature.value));
    }
    return temperature.value;
}

dial dial_settings(const exact& low, const exact& high, oven_scale scale) {
    const figures a = figures_for(low, scale), b = figures_for(high, scale);
    dial shown;
    shown.celsius = degrees(a.celsius, b.celsius, " °C");
    if (a.fan >= 30 || scale == oven_scale::fan_celsius) shown.fan = degrees(a.fan, b.fan, " °C");
    shown.fahrenheit = degrees(a.fahrenheit, b.fahrenheit, " °F");
    if (a.gas && b.gas) shown.gas = range_of(with_fraction(*a.gas), with_fraction(*b.gas), "");
    return shown;
}

thermometer_reading thermometer(const exact& low, const exact& high, oven_scale scale) {
    const auto reading = [&](oven_scale to, const char* unit) {
        return degrees(thermometer_figure(low, scale, to), thermometer_figure(high, scale, to),
                       unit);
    };
    return {reading(oven_scale::celsius, " °C"), reading(oven_scale::fahrenheit, " °F")};
}

} // namespace benchcard::measures
