#include "compiler/checks/neighbours.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::unit;
using recipe::line;

/// Spoons, cups and pieces are halved and thirded and halved again, no finer (common practice).
bool is_of_a_measure(const exact& number) {
    constexpr int parts[] = {1, 2, 3, 4, 6, 8};
    return std::any_of(std::begin(parts), std::end(parts), [&](int n) {
        return exact(number * n) == measures::whole_part(number * n);
    });
}

/// How many of a small measure nobody counts: there is a larger one (common practice).
int too_many(unit in) {
    if (in == unit::pinch || in == unit::dash) return 6;
    if (in == unit::teaspoon) return 10;
    return in == unit::tablespoon ? 20 : 1000;
}

bool is_filled(unit in) {
    return in == unit::teaspoon || in == unit::tablespoon || in == unit::dessertspoon ||
           in == unit::cup || in == unit::pinch || in == unit::dash;
}

/// What is strong enough, or works in such small amounts, that a fine scale is brought out for it.
bool is_weighed_finely(const line& l) {
    constexpr std::string_view names[] = {"saffron",
                                          "active dry yeast",
                                          "instant yeast",
                                          "fresh yeast",
                                          "xanthan gum",
                                          "guar gum",
                                          "carrageenan",
                                          "agar powder",
                                          "citric acid",
                                          "ascorbic acid",
                                          "lecithin",
                                          "pectin",
                                          "diastatic malt powder",
                                          "calcium propionate",
                                          "sunflower lecithin",
                                          "food colouring"};
    return !l.what ||
           std::find(std::begin(names), std::end(names), l.what->name) != std::end(names);
}

/// The least that is weighed of an ingredient, and why.
struct least_weight {
    exact grams;
    std::string reason;
};
least_weight least_weighed(const line& l, const std::optional<exact>& scale_step) {
    if (scale_step)
        return {*scale_step, fmt::format("the scale here shows steps of {} (`scale-step:`)",
                                         in_grams(*scale_step))};
    const bool is_spice = l.what && l.what->family == "spices";
    return {is_spice ? exact(1, 2) : exact(1),
            "common practice: scales that show whole grams, and half a gram of a spice"};
}

class measure_checker {
  public:
    measure_checker(const std::optional<exact>& scale_step, grammar::diagnostics& to)
        : scale_step_(scale_step), to_(to) {}

    void check(const line& l) {
        if (l.some) return;
        const auto& w = *l.written;
        const auto& terms = w.equals.empty() ? w.amounts : w.equals;
        for (const auto& m : terms) {
            const auto& q = m.quantity;
            if (q.is != grammar::amount::sort::number || q.about) continue;
            if (check_number(l, m)) return;
        }
        const auto least = least_weighed(l, scale_step_);
        const bool is_light = terms.size() == 1 && terms.front().in &&
                              measures::weight_of(*terms.front().in) && l.grams &&
                              l.grams->used < least.grams;
        if (is_light && !l.component && !is_weighed_finely(l))
            say(l,
                fmt::format("{} of {} is less than a kitchen scale shows", in_grams(l.grams->used),
                            l.name),
                least.reason, "give it in spoons or pinches, or to the gram");
    }

  private:
    const std::optional<exact>& scale_step_;
    grammar::diagnostics& to_;

    bool check_number(const line& l, const grammar::measure& m) {
        const auto& q = m.quantity;
        const bool is_counted = !m.in && l.count;
        if (!is_counted && !(m.in && is_filled(*m.in))) return false;
        const auto name = m.in ? std::string(grammar::short_name(*m.in)) : l.name;
        if (!is_of_a_measure(q.low) || !is_of_a_measure(q.high)) {
            const auto& odd = is_of_a_measure(q.low) ? q.high : q.low;
            say(l, fmt::format("{} {} cannot be measured", measures::with_fraction(odd, 3), name),
                "common practice: halves, thirds, quarters, sixths and eighths",
                "give one of these, or the weight");
            return true;
        }
        if (!m.in || q.high < too_many(*m.in)) return false;
        const bool is_word = *m.in == unit::pinch || *m.in == unit::dash || *m.in == unit::cup;
        const auto names = is_word ? ingredients::plural(name) : name;
        say(l,
            fmt::format("{} {} are more than is counted", measures::with_fraction(q.high), names),
            fmt::format("common practice: fewer than {} {}", too_many(*m.in), names),
            "give it in a larger measure, or as a weight");
        return true;
    }

    void say(const line& l, std::string seen, std::string practice, std::string help) {
        to_.push_back({"not-measurable",
                       grammar::severity::hint,
                       amount_place(l),
                       std::move(seen),
                       {{std::move(practice), {}}},
                       {{std::move(help), {}}}});
    }
};

} // namespace

void check_measurable(const recipe::recipe& r, grammar::diagnostics& to) {
    measure_checker checker(r.scale_step, to);
    for (const auto& c : r.components)
        for (const auto& l : c.lines) checker.check(l);
}

} // namespace benchcard::checks
