#include "compiler/checks/neighbours.hpp"

#include "compiler/checks/balance.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace benchcard::checks {

namespace {

using grammar::severity;
using grammar::unit;
using recipe::component;
using recipe::line;

/// The measure of a line that is one plain amount; nothing for any other.
std::optional<unit> unit_of(const line& l) {
    const auto& terms = l.written->equals.empty() ? l.written->amounts : l.written->equals;
    return terms.size() == 1 ? terms.front().in : std::nullopt;
}

bool is_large_unit(unit u) { return u == unit::kilogram || u == unit::litre; }

unit thousandth_of(unit u) { return u == unit::litre ? unit::millilitre : unit::gram; }

/// What is mixed by the handful at least and never weighed in milligrams (common practice).
bool is_bulk(const line& l) {
    constexpr std::string_view words[] = {"flour", "water",  "milk", "cream",
                                          "sugar", "butter", "egg",  "cheese"};
    if (!l.what) return false;
    const auto name = ingredients::compared_words(l.what->name);
    return !name.empty() &&
           std::find(std::begin(words), std::end(words), name.back()) != std::end(words);
}

class scale_checker {
  public:
    scale_checker(const component& c, grammar::diagnostics& to) : c_(c), to_(to) {}

    void run() {
        std::size_t weighed = 0;
        for (const auto& l : c_.lines)
            if (l.grams && !l.some) mix_ += l.grams->used, ++weighed;
        constexpr std::size_t enough = 3;
        if (weighed < enough) return;
        for (const auto& l : c_.lines) check(l);
    }

  private:
    const component& c_;
    grammar::diagnostics& to_;
    exact mix_ = 0;

    bool all_others_in_small_units(const line& one) const {
        return std::all_of(c_.lines.begin(), c_.lines.end(), [&](const auto& l) {
            const auto in = unit_of(l);
            return &l == &one || l.some || !in || !is_large_unit(*in);
        });
    }

    /// So many times all the others together is no mix but a slip. What is poured may stand alone
    /// with its spices, as in a stock: there the bound is wider (common practice).
    void check(const line& l) {
        const auto in = unit_of(l);
        if (!in || !l.grams || l.some || l.component) return;
        const exact others = mix_ - l.grams->used;
        if (others <= 0) return;
        const exact bound = l.what && l.what->poured ? 1000 : 200;
        if (is_large_unit(*in) && l.grams->used > bound * others && all_others_in_small_units(l))
            say(l, thousandth_of(*in),
                fmt::format("{} times all the others together",
                            measures::in_decimals(l.grams->used / others, 0)));
        if (*in == unit::milligram && is_bulk(l) && others > 100 * l.grams->used)
            say(l, unit::gram,
                fmt::format("the others together weigh {} times as much",
                            measures::in_decimals(others / l.grams->used, 0)));
    }

    void say(const line& l, unit meant, const std::string& against) {
        const auto& terms = l.written->equals.empty() ? l.written->amounts : l.written->equals;
        const auto number = measures::with_fraction(terms.front().quantity.low);
        grammar::diagnostic message{"out-of-scale",
                                    severity::warning,
                                    amount_place(l),
                                    fmt::format("{} {} of {} is far from its neighbours: {}",
                                                number, grammar::short_name(*terms.front().in),
                                                l.name, against),
                                    {},
                                    {}};
        message.notes.push_back(
            {fmt::format("the other lines weigh {}", in_grams(mix_ - l.grams->used)), {}});
        message.helps.push_back(
            {fmt::format("is it {} {}?", number, grammar::short_name(meant)), {}});
        to_.push_back(std::move(message));
    }
};

/// The lines of an ingredient in a recipe that are written in spoons or cups.
struct spooned {
    std::vector<const line*> by_teaspoon, by_cup;
    bool otherwise = false; ///< some are neither
};

/// `1 tsp flour, for dusting` is meant so.
bool has_a_purpose(const line& l) { return ingredients::has_word(l.preparation, {"for"}); }

void check_spoons(const recipe::recipe& r, grammar::diagnostics& to) {
    std::map<const ingredients::entry*, spooned> by_ingredient;
    for (const auto& c : r.components)
        for (const auto& l : c.lines) {
            if (!l.what || l.some) continue;
            auto& s = by_ingredient[l.what];
            const auto in = unit_of(l);
            if (in == unit::teaspoon)
                s.by_teaspoon.push_back(&l);
            else if (in == unit::cup)
                s.by_cup.push_back(&l);
            else
                s.otherwise = true;
        }
    std::vector<std::pair<const line*, const line*>> found; // the teaspoon, the least cup
    for (const auto& [what, s] : by_ingredient) {
        if (s.otherwise || s.by_teaspoon.size() != 1 || s.by_cup.size() < 2) continue;
        const auto& spoon = *s.by_teaspoon.front();
        const auto& least =
            **std::min_element(s.by_cup.begin(), s.by_cup.end(), [](const auto* a, const auto* b) {
                return a->ml && b->ml && a->ml->used < b->ml->used;
            });
        constexpr int far = 20;
        if (!spoon.ml || !least.ml || least.ml->used <= far * spoon.ml->used) continue;
        if (!has_a_purpose(spoon)) found.emplace_back(&spoon, &least);
    }
    for (const auto& [spoon, cup] : found)
        to.push_back(
            {"spoon-among-cups",
             severity::hint,
             amount_place(*spoon),
             fmt::format("{} is measured in cups everywhere else in this recipe", spoon->name),
             {{fmt::format("the least of the others is {} times as much",
                           measures::in_decimals(cup->ml->used / spoon->ml->used, 0)),
               amount_place(*cup)}},
             {{"if it is meant so, say what for: `1 tsp plain flour, for dusting`", {}}}});
}

} // namespace

void check_neighbours(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto unbalanced = unbalanced_places(to);
    for (const auto& c : r.components)
        if (!is_out_of_balance(c, unbalanced)) scale_checker(c, to).run();
    check_spoons(r, to);
}

} // namespace benchcard::checks
