#include "compiler/checks/checks.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/temperatures.hpp"

#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;

void check_range(const grammar::amount& a, grammar::diagnostics& to) {
    if (a.low <= a.high) return;
    to.push_back({"range-upside-down", severity::error, a.where,
                  fmt::format("this range runs downwards, from {} to {}", measures::with_fraction(a.low), measures::with_fraction(a.high)), {},
                  {{fmt::format("the smaller number first: {}–{}", measures::with_fraction(a.high), measures::with_fraction(a.low)), {}}}});
}

std::string said(const grammar::amount& degrees, grammar::oven_scale scale) {
    using grammar::oven_scale;
    const auto number = measures::with_fraction(degrees.low);
    switch (scale) {
    case oven_scale::celsius: return number + " °C";
    case oven_scale::fan_celsius: return number + " °C fan";
    case oven_scale::fahrenheit: return number + " °F";
    case oven_scale::gas_mark: return "gas " + number;
    }
    return number;
}

/// Two scales may differ by what dials are rounded by: 10 °C (common practice).
void check_temperature(const grammar::temperature& t, grammar::span where, grammar::diagnostics& to) {
    check_range(t.degrees, to);
    if (!t.equals) return;
    const auto& [other, scale] = *t.equals;
    const auto first = measures::exactly(t.degrees.low, t.scale).value;
    const auto second = measures::exactly(other.low, scale).value;
    const exact apart = first > second ? first - second : second - first;
    if (apart <= 10) return;
    grammar::diagnostic message{"temperatures-disagree", severity::warning, where,
                                fmt::format("{} and {} are not the same heat", said(t.degrees, t.scale), said(other, scale)), {}, {}};
    message.notes.push_back({fmt::format("{} is {} °C", said(t.degrees, t.scale), measures::in_decimals(first, 0)), {}});
    message.notes.push_back({fmt::format("{} is {} °C", said(other, scale), measures::in_decimals(second, 0)), {}});
    to.push_back(std::move(message));
}

void check_bracket(const grammar::bracket& b, grammar::diagnostics& to) {
    if (const auto* t = std::get_if<grammar::temperature>(&b.holds)) check_temperature(*t, b.where, to);
    if (const auto* p = std::get_if<grammar::piece_measure>(&b.holds)) check_range(p->of.quantity, to);
    if (const auto* d = std::get_if<grammar::duration>(&b.holds); d && d->low_minutes > d->high_minutes)
        to.push_back({"range-upside-down", severity::error, b.where, "this range of times runs downwards", {}, {}});
}

} // namespace

void check_amounts(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components) {
        for (const auto& l : c.lines) {
            for (const auto& m : l.written->amounts) check_range(m.quantity, to);
            for (const auto& m : l.written->equals) check_range(m.quantity, to);
        }
        if (c.makes && c.makes->count) check_range(*c.makes->count, to);
        if (c.makes && c.makes->each) check_range(c.makes->each->quantity, to);
        for (const auto& item : c.written->items)
            if (const auto* s = std::get_if<grammar::step>(&item.value))
                for (const auto& part : s->parts)
                    if (const auto* b = std::get_if<grammar::bracket>(&part)) check_bracket(*b, to);
    }
}

} // namespace benchcard::checks
