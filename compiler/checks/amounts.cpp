#include "compiler/checks/checks.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/temperatures.hpp"
#include "grammar/parse.hpp"

#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;

/// The range the right way round in place of what is written, where that is nothing but two
/// numbers that can be written as they are.
std::vector<grammar::edit> turned_round(const grammar::amount& a) {
    const auto low = measures::with_fraction(a.high), high = measures::with_fraction(a.low);
    if (a.about || a.packs || grammar::parse_number(low) != a.high ||
        grammar::parse_number(high) != a.low)
        return {};
    return {{a.where, fmt::format("{}-{}", low, high)}};
}

void check_range(const grammar::amount& a, grammar::diagnostics& to,
                 bool is_place_of_its_own = true) {
    if (a.low <= a.high) return;
    grammar::diagnostic message{"range-upside-down",
                                severity::error,
                                a.where,
                                fmt::format("this range runs downwards, from {} to {}",
                                            measures::with_fraction(a.low),
                                            measures::with_fraction(a.high)),
                                {},
                                {}};
    const bool may_be_mixed = a.high < 1 && a.low == measures::whole_part(a.low); // `1-1/2 cups`
    if (may_be_mixed)
        message.helps.push_back({fmt::format("if it is one number, write it `{}`",
                                             measures::with_fraction(a.low + a.high)),
                                 {}});
    else
        message.helps.push_back(
            {fmt::format("the smaller number first: `{}-{}`", measures::with_fraction(a.high),
                         measures::with_fraction(a.low)),
             is_place_of_its_own ? turned_round(a) : std::vector<grammar::edit>{}});
    to.push_back(std::move(message));
}

/// Of an ingredient: nobody weighs by a range whose ends are this many times apart (common
/// practice). Under a few pieces `1-5` is a choice.
void check_width(const grammar::measure& m, grammar::diagnostics& to) {
    constexpr int far = 4;
    const auto& q = m.quantity;
    if (!m.in || q.low <= 0 || q.high <= q.low * far) return;
    to.push_back(
        {"range-wide",
         severity::hint,
         q.where,
         fmt::format("{} is {} times {}", measures::with_fraction(q.high),
                     measures::in_decimals(q.high / q.low, 0), measures::with_fraction(q.low)),
         {},
         {{"if a digit was lost, put it back; otherwise give one amount, and the rest `to "
           "taste`",
           {}}}});
}

/// `check_range` for a pair of figures that has no place of its own.
void check_pair(const exact& low, const exact& high, grammar::span where,
                grammar::diagnostics& to) {
    grammar::amount a;
    a.where = where, a.low = low, a.high = high;
    check_range(a, to, false);
}

/// Two scales may differ by what dials are rounded by: 10 °C (common practice).
void check_temperature(const grammar::temperature& t, grammar::span where,
                       grammar::diagnostics& to) {
    check_range(t.degrees, to);
    if (!t.equals) return;
    const auto& [other, scale] = *t.equals;
    const auto first = measures::exactly(t.degrees.low, t.scale).value;
    const auto second = measures::exactly(other.low, scale).value;
    const exact apart = first > second ? first - second : second - first;
    if (apart <= 10) return;
    grammar::diagnostic message{"temperatures-disagree",
                                severity::warning,
                                where,
                                fmt::format("{} and {} are not the same heat",
                                            said_degrees(t.degrees, t.scale),
                                            said_degrees(other, scale)),
                                {},
                                {}};
    const auto in_celsius = [&](const grammar::amount& degrees, grammar::oven_scale written,
                                const exact& celsius) {
        if (written == grammar::oven_scale::celsius) return;
        message.notes.push_back({fmt::format("{} is {} °C", said_degrees(degrees, written),
                                             measures::in_decimals(celsius, 0)),
                                 {}});
    };
    in_celsius(t.degrees, t.scale, first);
    in_celsius(other, scale, second);
    to.push_back(std::move(message));
}

void check_bracket(const grammar::bracket& b, grammar::diagnostics& to) {
    if (const auto* t = std::get_if<grammar::temperature>(&b.holds))
        check_temperature(*t, b.where, to);
    if (const auto* p = std::get_if<grammar::piece_measure>(&b.holds))
        check_range(p->of.quantity, to);
    if (const auto* r = std::get_if<grammar::reference>(&b.holds);
        r && r->of && r->of->is == grammar::reference::part::sort::amount)
        check_range(r->of->of.quantity, to);
    if (const auto* d = std::get_if<grammar::duration>(&b.holds);
        d && d->low_minutes > d->high_minutes)
        to.push_back({"range-upside-down",
                      severity::error,
                      b.where,
                      "this range of times runs downwards",
                      {},
                      {{"the shorter time first", {}}}});
    if (const auto* l = std::get_if<grammar::length>(&b.holds))
        for (const auto& side : l->sides) check_range(side, to);
}

void check_yield(const grammar::yield& y, grammar::diagnostics& to) {
    if (y.count) check_range(*y.count, to);
    if (y.each) check_range(y.each->quantity, to);
    if (y.whole) check_range(y.whole->quantity, to);
}

void check_setting(const grammar::setting& s, grammar::diagnostics& to) {
    if (const auto* y = std::get_if<grammar::yield>(&s.value)) check_yield(*y, to);
    if (const auto* m = std::get_if<grammar::measure>(&s.value)) check_range(m->quantity, to);
    if (const auto* losses = std::get_if<std::vector<grammar::loss>>(&s.value))
        for (const auto& l : *losses) check_pair(l.low_percent, l.high_percent, s.value_where, to);
    if (const auto* keepings = std::get_if<std::vector<grammar::keeping>>(&s.value))
        for (const auto& k : *keepings)
            if (k.low_hours > k.high_hours)
                to.push_back({"range-upside-down",
                              severity::error,
                              k.text.where,
                              "this range of times runs downwards",
                              {},
                              {{"the shorter time first", {}}}});
    if (const auto* figures = std::get_if<std::vector<grammar::weight_figure>>(&s.value))
        for (const auto& f : *figures) check_range(f.mass.quantity, to);
}

} // namespace

void check_amounts(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components) {
        for (const auto& l : c.lines) {
            for (const auto& m : l.written->amounts) {
                check_range(m.quantity, to);
                check_width(m, to);
            }
            for (const auto& m : l.written->equals) check_range(m.quantity, to);
        }
        for (const auto& item : c.written->items) {
            if (const auto* s = std::get_if<grammar::setting>(&item.value)) check_setting(*s, to);
            if (const auto* s = std::get_if<grammar::step>(&item.value))
                for (const auto& part : s->parts)
                    if (const auto* b = std::get_if<grammar::bracket>(&part)) check_bracket(*b, to);
        }
    }
    const bool has_head = r.has_product && r.product().written->is != grammar::block::sort::recipe;
    if (has_head && r.makes) check_yield(*r.makes, to);
    if (has_head && r.serves) check_yield(*r.serves, to);
}

} // namespace benchcard::checks
