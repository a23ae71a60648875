#include "compiler/checks/said.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

namespace benchcard::checks {

std::string in_grams(const exact& value) {
    return measures::in_decimals(value, value < 10 ? 1 : 0) + " g";
}

std::string in_grams(const recipe::spread& value) {
    if (value.low == value.high) return in_grams(value.used);
    return measures::in_decimals(value.low, value.low < 10 ? 1 : 0) + " to " + in_grams(value.high);
}

std::string in_percent(const exact& share) {
    return measures::in_decimals(share * 100, share < exact(1, 10) ? 1 : 0) + " %";
}

std::string in_pieces(const exact& number, const recipe::component& c) {
    const auto word = number == 1 ? c.made.piece : ingredients::plural(c.made.piece);
    return measures::with_fraction(number) + " " + word;
}

void add_number_made(const recipe::component& by, grammar::diagnostic& to) {
    if (!by.per || !by.makes || !by.makes->count || !by.made.pieces) return;
    to.notes.push_back(
        {by.title + " is for " + in_pieces(by.made.pieces->used, by), by.makes_where});
}

grammar::span amount_place(const recipe::line& l) {
    const auto& w = *l.written;
    const auto& last = w.equals.empty() ? w.amounts.back() : w.equals.back();
    return {w.where.file, w.amounts.front().where.begin, last.where.end};
}

std::string said_degrees(const grammar::amount& degrees, grammar::oven_scale scale) {
    using grammar::oven_scale;
    const auto number = measures::with_fraction(degrees.low);
    switch (scale) {
    case oven_scale::celsius:
        return number + " °C";
    case oven_scale::fan_celsius:
        return number + " °C fan";
    case oven_scale::fahrenheit:
        return number + " °F";
    case oven_scale::gas_mark:
        return "gas " + number;
    }
    return number;
}

} // namespace benchcard::checks
