#include "compiler/measures/duration.hpp"

#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/ranges.hpp"

namespace benchcard::measures {
namespace {

const exact minute = 60, hour = 3600, day = 86400; // in seconds

bool whole_in(const exact& unit, const exact& seconds) {
    return rounded_to(seconds, unit) == seconds;
}

std::string counted(const exact& number, const char* unit) {
    return in_decimals(number, 0) + " " + unit;
}

const char* name_of_days(const exact& number) { return number > 1 ? "days" : "day"; }

/// `1 h 20 min`: every unit that is needed, from the largest.
std::string spelled_out(exact seconds) {
    std::string text;
    const auto take = [&](const exact& unit, auto name) {
        const exact number = whole_part(seconds / unit);
        if (number == 0) return;
        if (!text.empty()) text += " ";
        text += counted(number, name(number));
        seconds -= number * unit;
    };
    if (seconds >= 2 * day) take(day, name_of_days);
    take(hour, [](const exact&) { return "h"; });
    take(minute, [](const exact&) { return "min"; });
    take(1, [](const exact&) { return "s"; });
    return text.empty() ? "0 s" : text;
}

std::string in_one_unit(const exact& low, const exact& high, const exact& unit, const char* name) {
    return range_of(in_decimals(low / unit, 0), in_decimals(high / unit, 0),
                    std::string(" ") + name);
}

exact to_the_second(const exact& minutes) {
    const exact seconds = rounded_to(minutes * 60, 1);
    return seconds == 0 && minutes > 0 ? exact(1) : seconds;
}

/// A figure on a ruler: its number, and the text where that is not the number's own.
std::string inches_text(const exact& inches) {
    if (inches < exact(1, 4) && !whole_in(exact(1, 8), inches))
        return in_decimals(inches * 16, 0) + "/16";
    return with_fraction(inches);
}

exact on_an_inch_ruler(const exact& inches) {
    const exact whole = rounded_to(inches, 1);
    if (abs(whole - inches) * 50 <= inches) return whole;
    if (inches < exact(1, 4)) return rounded_to(inches, exact(1, 16));
    return rounded_to(inches, inches < 1 ? exact(1, 8) : exact(1, 4));
}

exact on_a_centimetre_ruler(const exact& millimetres) {
    if (millimetres < exact(254, 10)) return rounded_to(millimetres, 1);
    return rounded_to(millimetres, millimetres < 100 ? 5 : 10);
}

template <typename text_of>
std::string sides_text(const std::vector<grammar::amount>& sides, const std::string& unit,
                       text_of text) {
    std::string all;
    for (const grammar::amount& side : sides) {
        if (!all.empty()) all += " × ";
        all += range_of(text(side.low), text(side.high), "");
    }
    return all + " " + unit;
}

const exact& millimetres_in(grammar::length_unit unit) {
    static const exact sizes[] = {1, 10, exact(254, 10)};
    switch (unit) {
    case grammar::length_unit::millimetre:
        return sizes[0];
    case grammar::length_unit::centimetre:
        return sizes[1];
    case grammar::length_unit::inch:
        return sizes[2];
    }
    return sizes[0];
}

std::string in_inches(const std::vector<grammar::amount>& sides, const exact& millimetres) {
    const exact inch = millimetres_in(grammar::length_unit::inch);
    for (const grammar::amount& side : sides)
        if (side.low * millimetres * 32 < inch) return "";
    return sides_text(sides, "in", [&](const exact& figure) {
        return inches_text(on_an_inch_ruler(figure * millimetres / inch));
    });
}

/// All in mm where all are below an inch, else all in cm.
std::string in_metric(const std::vector<grammar::amount>& sides) {
    const exact inch = millimetres_in(grammar::length_unit::inch);
    bool small = true;
    for (const grammar::amount& side : sides) small = small && side.high < 1;
    return sides_text(sides, small ? "mm" : "cm", [&](const exact& figure) {
        return in_decimals(on_a_centimetre_ruler(figure * inch) / (small ? 1 : 10), 1);
    });
}

} // namespace

std::string shown_duration(const exact& low_minutes, const exact& high_minutes) {
    const exact low = to_the_second(low_minutes), high = to_the_second(high_minutes);
    if (low == high) return spelled_out(low);
    const auto both_whole_in = [&](const exact& unit) {
        return whole_in(unit, low) && whole_in(unit, high);
    };
    if (high >= 2 * day && both_whole_in(day)) return in_one_unit(low, high, day, "days");
    if (both_whole_in(hour)) return in_one_unit(low, high, hour, "h");
    if (high <= 2 * hour && both_whole_in(minute)) return in_one_unit(low, high, minute, "min");
    if (high <= 2 * minute) return in_one_unit(low, high, 1, "s");
    return range_of(spelled_out(low), spelled_out(high), "");
}

std::string shown_length(const std::vector<grammar::amount>& sides, grammar::length_unit in) {
    if (sides.empty()) return "";
    const bool inches = in == grammar::length_unit::inch;
    const std::string written =
        sides_text(sides,
                   inches                                   ? "in"
                   : in == grammar::length_unit::centimetre ? "cm"
                                                            : "mm",
                   [&](const exact& figure) {
                       return inches ? with_fraction(figure) : in_decimals(figure, 2);
                   });
    const std::string other = inches ? in_metric(sides) : in_inches(sides, millimetres_in(in));
    const std::string about = sides.front().about ? "about " : "";
    return about + written + (other.empty() ? "" : " (" + other + ")");
}

} // namespace benchcard::measures
