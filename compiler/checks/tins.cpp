#include "compiler/checks/balance.hpp"
#include "compiler/checks/method.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/tin_pieces.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace benchcard::checks {

namespace {

using grammar::severity;
using recipe::component;

/// All of this is common practice, and wide: a doubtful tin is no message.
constexpr double deepest = 10;       ///< cm: the deepest cake tin
constexpr double shallowest = 1;     ///< cm: the rim of the flattest sheet
constexpr double ml_a_loaf_gram = 2; ///< a tin named by the loaf's weight holds so much to the brim
constexpr double sheet = 1000;       ///< cm²: on larger ones thin sheets are baked
constexpr double quarter = 0.25;

/// What a tin holds: at the most to the brim, and at the least when it is a quarter full.
struct room {
    double brim = 0, least = 0; ///< ml, which of a batter are grams
    std::string reckoned;       ///< with what
};

double in_cm(const exact& value, grammar::length_unit in) {
    const double cm = in == grammar::length_unit::millimetre ? 0.1
                      : in == grammar::length_unit::inch     ? 2.54
                                                             : 1;
    return approximately(value) * cm;
}

room room_over(double area) {
    return {area * deepest, area < sheet ? area * shallowest * quarter : 0,
            fmt::format("its base is {:.0f} cm²; the deepest tins are 10 cm and the flattest 1 cm "
                        "deep, and a batter weighs about 1 g a ml (common practice)",
                        area)};
}

std::optional<room> room_in(const grammar::tin& t, measures::system system) {
    if (const auto* l = std::get_if<grammar::length>(&t.size)) {
        if (l->sides.empty()) return std::nullopt;
        const bool square = ingredients::has_word(t.shape.text + " " + l->shape, {"square"});
        const double a = in_cm(l->sides.front().high, l->in);
        const double b = in_cm(l->sides.back().high, l->in);
        return room_over(l->sides.size() > 1 || square ? a * b : a * a * std::numbers::pi / 4);
    }
    const auto& m = std::get<grammar::measure>(t.size);
    if (!m.in) return std::nullopt;
    if (const auto weight = measures::weight_of(*m.in)) {
        const double grams = approximately(m.quantity.high * weight->value);
        const double brim = grams * ml_a_loaf_gram;
        return room{brim, brim * quarter,
                    "a tin named by its loaf holds about 2 ml a gram of that to the brim, and a "
                    "batter weighs about 1 g a ml (common practice)"};
    }
    const auto volume = measures::volume_of(*m.in, system);
    if (!volume) return std::nullopt;
    const double brim = approximately(m.quantity.high * volume->value);
    return room{brim, brim * quarter, "a batter weighs about 1 g a ml (common practice)"};
}

grammar::span place_of_tin(const component& c) {
    for (const auto& item : c.written->items)
        if (const auto* s = std::get_if<grammar::setting>(&item.value);
            s && s->name == grammar::key::tin)
            return s->value_where;
    return c.written->where;
}

void check_one(const component& c, measures::system system, grammar::diagnostics& to) {
    if (!c.tin || !c.made.grams || !c.mix || c.mix->used <= 0) return;
    const auto holds = room_in(*c.tin, system);
    if (!holds) return;
    const auto one = c.made.pieces && c.made.each ? c.made.each : std::nullopt;
    const auto say = [&](std::string_view kind, std::string message, std::string help) {
        to.push_back({kind,
                      severity::warning,
                      place_of_tin(c),
                      std::move(message),
                      {{holds->reckoned, {}}},
                      {{std::move(help), {}}}});
    };
    if (one && approximately(one->low) > holds->brim)
        return say("tin-overflows",
                   fmt::format("one {} weighs {}, and this tin holds {:.0f} ml to the brim",
                               c.made.piece, in_grams(one->used), holds->brim),
                   "state the tin that it is baked in, or what one weighs");
    const auto& most = one && recipe::fills_a_tin_alone(c.made.piece) ? *one : *c.made.grams;
    if (approximately(most.high) >= holds->least) return;
    say("tin-not-filled",
        fmt::format("{} {}, and this tin is not a quarter full with less than {:.0f} g",
                    one && recipe::fills_a_tin_alone(c.made.piece)
                        ? fmt::format("one {} weighs", c.made.piece)
                        : fmt::format("all of {} weighs", c.title),
                    in_grams(most.used), holds->least),
        "state the tin that it is baked in, or how many go into one");
}

} // namespace

void check_tins(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto unbalanced = unbalanced_places(to);
    for (const auto& c : r.components)
        if (!is_out_of_balance(c, unbalanced)) check_one(c, r.measures, to);
}

} // namespace benchcard::checks
