#include "compiler/measures/kitchen.hpp"

namespace benchcard::measures {
namespace {

exact power_of_ten(int exponent) {
    exact power = 1;
    for (int i = 0; i < exponent; ++i) power *= 10;
    return power;
}

/// Whole from ten up, to a tenth below, and below a tenth its first significant figure.
std::string as_measured(const exact& value) {
    if (value >= 10) return in_decimals(value, 0);
    int decimals = 1;
    while (value > 0 && value * power_of_ten(decimals) < 1) ++decimals;
    return in_decimals(value, decimals);
}

/// `small` below `most` of them, then `large`, which is a thousand of them.
shown with_unit(const exact& value, const exact& most, const char* small, const char* large) {
    if (rounded_to(value, 1) >= most) return {in_decimals(value / 1000, 2), large};
    return {as_measured(value), small};
}

bool more_than_a_tenth_off(const exact& figure, const exact& value) {
    return abs(figure - value) * 10 > value;
}

} // namespace

exact whole_part(const exact& value) { return floor(value); }

exact rounded_to(const exact& value, const exact& step) {
    return whole_part(value / step + exact(1, 2)) * step;
}

std::string in_decimals(const exact& value, int decimals) {
    const exact scaled = rounded_to(value * power_of_ten(decimals), 1);
    if (scaled < 0) return "-" + in_decimals(-scaled / power_of_ten(decimals), decimals);
    std::string digits = scaled.str();
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    std::string whole = digits.substr(0, digits.size() - places);
    std::string fraction = digits.substr(digits.size() - places);
    fraction.erase(fraction.find_last_not_of('0') + 1);
    return fraction.empty() ? whole : whole + "." + fraction;
}

std::string with_fraction(const exact& value, int decimals) {
    struct glyph {
        exact fraction;
        const char* text = nullptr;
        exact tolerance = 0;
    };
    // Of a third, that is 0.333 and 0.667 too.
    static const glyph glyphs[] = {{exact(1, 2), "½"},
                                   {exact(1, 3), "⅓", exact(1, 3000)},
                                   {exact(2, 3), "⅔", exact(2, 3000)},
                                   {exact(1, 4), "¼"},
                                   {exact(3, 4), "¾"},
                                   {exact(1, 8), "⅛"},
                                   {exact(3, 8), "⅜"},
                                   {exact(5, 8), "⅝"},
                                   {exact(7, 8), "⅞"}};
    if (value < 0) return "-" + with_fraction(-value, decimals);
    const exact whole = whole_part(value), rest = value - whole;
    for (const glyph& g : glyphs)
        if (rest == g.fraction || (g.tolerance > 0 && abs(rest - g.fraction) <= g.tolerance))
            return (whole == 0 ? "" : in_decimals(whole, 0)) + g.text;
    return in_decimals(value, decimals);
}

shown on_a_scale(const grams& weight) { return with_unit(weight.value, 10000, "g", "kg"); }

exact grams_shown(const exact& grams, const std::optional<exact>& step) {
    constexpr int coarse = 10; // grams, from 10 kg up
    const bool by_step = step && scale_shows(grams, step);
    const exact whole = rounded_to(grams, 1), in_steps = by_step ? rounded_to(grams, *step) : whole;
    if (whole >= 10000 || in_steps >= 10000)
        return rounded_to(grams, step && *step > coarse ? *step : exact(coarse));
    if (by_step) return in_steps;
    if (grams >= 10) return whole;
    exact tenth(1, 10);
    while (grams > 0 && grams < tenth) tenth /= 10;
    return rounded_to(grams, tenth);
}

bool scale_shows(const exact& grams, const std::optional<exact>& step) {
    return !step || abs(rounded_to(grams, *step) - grams) * 100 <= 3 * grams;
}

shown on_a_scale(const grams& weight, const std::optional<exact>& step) {
    if (!step || !scale_shows(weight.value, step)) return on_a_scale(weight);
    const auto figure = grams_shown(weight.value, step);
    return figure < 10000 ? shown{in_decimals(figure, 3), "g"}
                          : shown{in_decimals(figure / 1000, 3), "kg"};
}

exact as_cut(const exact& number) {
    if (number >= 5) return rounded_to(number, number < 20 ? exact(1, 2) : exact(1));
    const auto quarters = rounded_to(number, exact(1, 4)), thirds = rounded_to(number, exact(1, 3));
    const auto nearest = abs(quarters - number) <= abs(thirds - number) ? quarters : thirds;
    return nearest > 0 ? nearest : exact(1, 4);
}

shown in_a_jug(const millilitres& volume) {
    // A US spoon is 1.4 % less than the 5 or 15 ml that a jug or a spoon shows for it.
    const exact whole = rounded_to(volume.value, 1);
    const bool nearly_whole = whole > 0 && abs(volume.value - whole) * 50 <= whole;
    return with_unit(nearly_whole ? whole : volume.value, 1000, "ml", "l");
}

std::string in_ounces(const grams& weight) {
    const exact ounces = weight.value / weight_of(unit::ounce)->value;
    const exact figure = rounded_to(ounces, ounces < 2 ? exact(1, 8) : exact(1, 4));
    if (ounces < exact(1, 8) || more_than_a_tenth_off(figure, ounces)) return "";
    const exact pounds = whole_part(figure / 16);
    const exact rest = figure - pounds * 16;
    if (pounds == 0) return with_fraction(rest) + " oz";
    std::string text = in_decimals(pounds, 0) + " lb";
    if (rest > 0) text += " " + with_fraction(rest) + " oz";
    return text;
}

std::string in_fluid_ounces(const millilitres& volume, system s) {
    const auto ounce = volume_of(unit::fluid_ounce, s);
    if (!ounce) return "";
    const exact ounces = volume.value / ounce->value;
    const exact figure = rounded_to(ounces, exact(1, 4));
    if (ounces < exact(1, 4) || more_than_a_tenth_off(figure, ounces)) return "";
    return with_fraction(figure) + " fl oz";
}

} // namespace benchcard::measures
