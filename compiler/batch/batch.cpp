#include "compiler/batch/batch.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <fmt/format.h>

namespace benchcard::batch {

namespace {

using recipe::spread;

std::optional<spread> times(const std::optional<spread>& s, const exact& factor) {
    return s ? std::optional(*s * factor) : std::nullopt;
}

std::optional<exact> used(const std::optional<spread>& s, const exact& factor) {
    return s ? std::optional<exact>(s->used * factor) : std::nullopt;
}

std::optional<exact> times(const std::optional<exact>& v, const exact& factor) {
    return v ? std::optional<exact>(*v * factor) : std::nullopt;
}

weigh_line weighed(const recipe::line& l, const exact& factor) {
    weigh_line result{&l, times(l.grams, factor), times(l.ml, factor), times(l.count, factor), 1,
                      1};
    const auto& amounts = l.written->equals.empty() ? l.written->amounts : l.written->equals;
    if (amounts.size() != 1 || l.some) return result;
    const auto s = recipe::spread_of(amounts.front().quantity);
    if (s.used > 0) result.low_part = s.low / s.used, result.high_part = s.high / s.used;
    return result;
}

std::string said_product(const recipe::recipe& r) {
    const auto& made = r.product().made;
    if (made.pieces)
        return fmt::format("{} {}", measures::with_fraction(made.pieces->used),
                           ingredients::plural(made.piece));
    return made.grams ? measures::in_decimals(made.grams->used, 0) + " g"
                      : "an amount it does not state";
}

refusal cannot_compare(const recipe::recipe& r, const std::string& wanted) {
    return {
        fmt::format("the recipe makes {}, so it cannot be scaled to {}", said_product(r), wanted),
        {"scale it by a factor: --scale 2",
         "or say what it makes in the recipe: `makes: 24 buns`"}};
}

} // namespace

namespace {

/// Between a thousandth and ten thousand times: beyond, it is a slip of the hand.
std::variant<exact, refusal> checked(const exact& factor) {
    if (factor >= exact(1, 1000) && factor <= 10000) return factor;
    return refusal{
        fmt::format("that is {} the recipe, which no kitchen makes",
                    factor < 1 ? "less than a thousandth of" : "more than ten thousand times"),
        {}};
}

std::variant<exact, refusal> factor_to_make(const recipe::recipe& r, const to_make& make) {
    const auto& made = r.product().made;
    const auto& y = make.wanted;
    if (y.whole) {
        const auto said = fmt::format("{} {}", measures::with_fraction(y.whole->quantity.low),
                                      grammar::short_name(*y.whole->in));
        if (const auto unit = measures::weight_of(*y.whole->in); unit && made.grams)
            return exact(recipe::spread_of(y.whole->quantity).used * unit->value /
                         made.grams->used);
        if (const auto unit = measures::volume_of(*y.whole->in, r.measures); unit && made.ml)
            return exact(recipe::spread_of(y.whole->quantity).used * unit->value / *made.ml);
        return cannot_compare(r, said);
    }
    if (!y.count || y.each) return refusal{"say how many: --make '48 tarts'", {}};
    const auto number = measures::with_fraction(y.count->low);
    if (!made.pieces)
        return cannot_compare(r, fmt::format("{} {}", number, y.piece ? y.piece->text : "pieces"));
    const auto wanted_piece = y.piece ? ingredients::compared_name(y.piece->text) : "";
    const bool fits = wanted_piece.empty() || wanted_piece == "piece" ||
                      wanted_piece == ingredients::compared_name(made.piece);
    if (!fits)
        return refusal{fmt::format("the recipe makes {}, not {}", ingredients::plural(made.piece),
                                   y.piece->text),
                       {fmt::format("--make '{} {}'", number, ingredients::plural(made.piece))}};
    return exact(y.count->low / made.pieces->used);
}

} // namespace

std::variant<exact, refusal> factor_of(const recipe::recipe& r, const order& wanted) {
    if (const auto* s = std::get_if<scaled>(&wanted)) return checked(s->factor);
    const auto* make = std::get_if<to_make>(&wanted);
    if (!make) return exact(1);
    const auto factor = factor_to_make(r, *make);
    const auto* number = std::get_if<exact>(&factor);
    return number ? checked(*number) : factor;
}

batch scale(const recipe::recipe& r, const exact& factor) {
    batch result{&r, factor, {}};
    const auto demands = recipe::demands_of(r);
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        const auto& c = r.components[i];
        component_batch b;
        b.of = &c;
        b.times = c.times * factor;
        for (const auto& l : c.lines) b.lines.push_back(weighed(l, b.times));
        b.mix = used(c.mix, factor);
        b.ready = used(c.ready, factor);
        b.baked = used(c.baked, factor);
        b.pieces = used(c.made.pieces, factor);
        b.made_grams = used(c.made.grams, factor);
        if (!demands[i].users.empty()) {
            b.left_pieces = times(demands[i].left_pieces, factor);
            b.left_grams = times(demands[i].left_grams, factor);
        }
        result.components.push_back(std::move(b));
    }
    return result;
}

} // namespace benchcard::batch
