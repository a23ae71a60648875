#include "compiler/cards/percentages.hpp"

#include "compiler/batch/orders.hpp"
#include "compiler/cards/figures.hpp"
#include "compiler/checks/composition.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

using batch::component_batch;
using batch::weigh_line;
using words = std::vector<std::string>;

/// Grams in a component, or in a part of one.
struct contents {
    exact base = 0, water = 0;
    exact hidden_water = 0; ///< of `water`, what is in milk, eggs and the like

    contents& operator+=(const contents& more) {
        base += more.base, water += more.water, hidden_water += more.hidden_water;
        return *this;
    }
    contents operator*(const exact& factor) const {
        return {base * factor, water * factor, hidden_water * factor};
    }
};

bool counts(const weigh_line& l) { return l.grams && !checks::is_set_aside(*l.of); }

contents of_line(const weigh_line& l, const words& wanted) {
    if (!counts(l)) return {};
    contents result;
    if (batch::is_of_base(*l.of, wanted)) result.base = l.grams->used;
    if (!l.of->grams || l.of->grams->used == 0) return result;
    const exact times = l.grams->used / l.of->grams->used;
    result.water = checks::grams_in(*l.of, checks::part::water) * times;
    if (result.water < l.grams->used) result.hidden_water = result.water;
    return result;
}

bool is_baked(const recipe::component& c) {
    return std::any_of(c.losses.begin(), c.losses.end(), recipe::is_after_portioning);
}

/// What a line brings along of the component that it uses. What stays in the bowl of a preferment
/// was weighed out for the dough too, as an order by flour counts it: it is not taken off.
contents of_component(const weigh_line& l, const component_batch& used, const contents& all) {
    if (!counts(l) || is_baked(*used.of) || !used.ready || *used.ready <= 0) return {};
    return all * (l.grams->used / *used.ready);
}

/// Of each component up to one, in the recipe's order: each after those that it uses.
std::vector<contents> contents_up_to(const component_batch& last, const batch::batch& b,
                                     const words& wanted) {
    std::vector<contents> all;
    for (const auto& c : b.components) {
        contents sum;
        for (const auto& l : c.lines) {
            const auto i = l.of->component;
            sum += i ? of_component(l, b.components[*i], all[*i]) : of_line(l, wanted);
        }
        all.push_back(sum);
        if (&c == &last) break;
    }
    return all;
}

/// Yeast and salt are told apart below 1 %: there two decimals.
std::string said_percent(const exact& percent) {
    return measures::in_decimals(percent, percent < 1 ? 2 : 1) + " %";
}

/// `, 468 g of it in Poolish`.
std::string said_brought(const component_batch& c, const batch::batch& b,
                         const std::vector<contents>& all) {
    std::string result;
    for (const auto& l : c.lines) {
        if (!l.of->component) continue;
        const auto& used = b.components[*l.of->component];
        const auto brought = of_component(l, used, all[*l.of->component]).base;
        if (brought > 0)
            result += fmt::format(", {} of it in {}", said_grams(brought), used.of->title);
    }
    return result;
}

/// What milk and eggs hold of water is known in round figures: there the hydration is, too.
styles::total_row hydration_of(const contents& held) {
    const exact percent = held.water / held.base * 100;
    if (held.hidden_water > 0) return {measures::in_decimals(percent, 0), "%", "hydration, about"};
    return {measures::in_decimals(percent, 1), "%",
            fmt::format("hydration: {} water", said_grams(held.water))};
}

std::optional<exact> total_of(const component_batch& c) {
    exact sum = 0;
    for (const auto& l : c.lines) {
        if (!l.grams && !l.of->some) return std::nullopt;
        if (counts(l)) sum += l.grams->used;
    }
    return sum;
}

} // namespace

std::optional<percentages> percentages_of(const component_batch& c, const batch::batch& b) {
    if (!c.of->percent) return std::nullopt;
    const auto& base = c.of->percent->text;
    const auto wanted = ingredients::compared_words(base);
    const auto all = contents_up_to(c, b, wanted);
    const auto& held = all.back();
    if (held.base == 0) return std::nullopt;
    percentages result;
    for (const auto& l : c.lines)
        result.of_lines.push_back(l.grams ? said_percent(l.grams->used / held.base * 100) : "");
    const auto total = total_of(c);
    if (!total) return result;
    const auto percent = measures::in_decimals(*total / held.base * 100, 1);
    const auto whole =
        fmt::format("of {} {} in all{}", said_grams(held.base), base, said_brought(c, b, all));
    const bool is_of_flour = std::find(wanted.begin(), wanted.end(), "flour") != wanted.end();
    if (is_of_flour && held.water > 0) {
        result.total = hydration_of(held);
        result.total->text += fmt::format("; {} % {}", percent, whole);
    } else {
        result.total = {percent, "%", whole};
    }
    return result;
}

} // namespace benchcard::cards
