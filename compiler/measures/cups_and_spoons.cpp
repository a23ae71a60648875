#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

/// Which cups and spoons a cook would take for a volume: every likely way is listed and weighed
/// up, since the measures of a system need not divide one another (an Australian cup is 12½ tbsp).
namespace benchcard::measures {
namespace {

/// An American cup, spoon or fluid ounce is 1.4 % less than the 240, 15, 5 or 30 ml that recipes
/// round it to: below this, `1 cup` is a better answer than `1 cup + ½ tsp`.
const exact as_good_as_right(3, 200);

/// One measure so many times; `trouble` is how awkward it is to measure out.
struct term {
    unit of = unit::cup;
    exact times = 0;
    exact ml = 0;
    int trouble = 0;
    int eighths = 0; ///< `times`, of a spoon
    double about_ml = approximately(ml);
};

/// One term or two.
struct way {
    const term* first = nullptr;
    const term* second = nullptr;
    exact measured = 0;
    int trouble = 0;
    exact off = 0; ///< in ml, without its sign
};

struct measures_at_hand {
    exact teaspoon, tablespoon;
    std::optional<exact> cup;
    std::vector<term> spoons = {};
};

/// Whole and part cups near a volume: what is nearest alone and what leaves room for a spoon.
std::vector<term> cup_terms(const exact& volume, const exact& cup) {
    struct part {
        exact of_a_cup;
        int trouble = 0;
    };
    const part parts[] = {{0, 0},           {exact(1, 2), 1}, {exact(1, 4), 2},
                          {exact(3, 4), 3}, {exact(1, 3), 2}, {exact(2, 3), 3}};
    std::vector<term> terms;
    const exact whole = whole_part(volume / cup);
    for (const exact& cups : {exact(whole - 1), whole, exact(whole + 1)})
        for (const part& p : parts) {
            const exact times = cups + p.of_a_cup;
            if (times > 0 && times <= 999)
                terms.push_back({unit::cup, times, times * cup, p.trouble});
        }
    return terms;
}

/// Tablespoons, whole and with a half, as far as a cook would count them: to less than ¼ cup.
std::vector<term> tablespoon_terms(const measures_at_hand& set) {
    std::vector<term> terms;
    const int most = set.cup ? 4 : 8;
    for (int halves = 2; halves <= 2 * most; ++halves) {
        const exact times(halves, 2);
        const bool is_fiddly = set.cup && halves == 7;
        if (is_fiddly) continue;
        if (set.cup && times * set.tablespoon * 4 >= *set.cup) break;
        terms.push_back(
            {unit::tablespoon, times, times * set.tablespoon, halves % 2 == 0 ? 1 : 3, halves * 4});
    }
    return terms;
}

/// Teaspoons in steps of a quarter, to less than a tablespoon; and the eighth.
std::vector<term> teaspoon_terms(const measures_at_hand& set) {
    std::vector<term> terms{{unit::teaspoon, exact(1, 8), set.teaspoon / 8, 6, 1}};
    for (int quarters = 1; quarters * set.teaspoon < 4 * set.tablespoon; ++quarters) {
        const exact times(quarters, 4);
        const int trouble = quarters % 4 == 0 ? 2 : quarters % 2 == 0 ? 4 : 5;
        terms.push_back({unit::teaspoon, times, times * set.teaspoon, trouble, quarters * 2});
    }
    return terms;
}

measures_at_hand measures_of(system s) {
    measures_at_hand set{
        volume_of(unit::teaspoon, s)->value, volume_of(unit::tablespoon, s)->value, {}};
    if (const auto cup = volume_of(unit::cup, s)) set.cup = cup->value;
    set.spoons = tablespoon_terms(set);
    for (const term& t : teaspoon_terms(set)) set.spoons.push_back(t);
    return set;
}

/// The same, made once a system and thread.
const measures_at_hand& at_hand(system s) {
    thread_local std::map<system, measures_at_hand> known;
    const auto [found, is_new] = known.try_emplace(s);
    if (is_new) found->second = measures_of(s);
    return found->second;
}

way measured_with(const term& one, const exact& volume) {
    return {&one, nullptr, one.ml, one.trouble, abs(one.ml - volume)};
}

way measured_with(const term& first, const term& second, const exact& volume) {
    const exact measured = first.ml + second.ml;
    return {&first, &second, measured, first.trouble + second.trouble, abs(measured - volume)};
}

bool in_steps_of(int eighths, const term& t) { return t.eighths % eighths == 0; }

/// Whether a cook would measure the two one after the other: the second is a smaller measure, and
/// no finer than the first deserves.
bool go_together(const term& first, const term& second) {
    if (second.of == unit::teaspoon) {
        if (first.of == unit::cup) return in_steps_of(4, second);
        if (first.of == unit::tablespoon) return in_steps_of(8, first) && in_steps_of(2, second);
        return second.eighths == 1 && first.eighths <= 8 && first.eighths > 1;
    }
    return second.of == unit::tablespoon && first.of == unit::cup;
}

bool simpler(const way& a, const way& b) {
    return a.trouble != b.trouble ? a.trouble < b.trouble : a.off < b.off;
}
bool nearer(const way& a, const way& b) {
    if (a.off != b.off) return a.off < b.off;
    const bool a_pair = a.second, b_pair = b.second;
    return a_pair != b_pair ? b_pair : a.trouble < b.trouble;
}

/// The best of those that are off by so much at most, or of all.
template <typename better>
const way* best_of(const std::vector<way>& ways, better is_better,
                   const std::optional<exact>& most_off = {}) {
    const way* best = nullptr;
    for (const way& w : ways)
        if ((!most_off || w.off <= *most_off) && (!best || is_better(w, *best))) best = &w;
    return best;
}

std::string text_of(const way& chosen) {
    std::string text;
    for (const term* t : {chosen.first, chosen.second}) {
        if (!t) continue;
        if (!text.empty()) text += " + ";
        text += with_fraction(t->times) + " " + std::string(grammar::short_name(t->of));
        if (t->of == unit::cup && t->times > 1) text += "s";
    }
    return text;
}

spooned as_text(const way& chosen, const exact& volume) {
    return {text_of(chosen), chosen.measured, (chosen.measured - volume) / volume};
}

/// More than `as_good_as_right` by more than a double is ever off.
constexpr double about_right = 0.02;
constexpr double any_error = std::numeric_limits<double>::infinity();

/// One term, save those that are clearly off by more than a share of the volume.
std::vector<way> singles(const std::vector<term>& terms, const exact& volume, double most_off) {
    const double about = approximately(volume);
    std::vector<way> result;
    for (const term& t : terms)
        if (std::abs(t.about_ml - about) <= most_off * about)
            result.push_back(measured_with(t, volume));
    return result;
}

/// Two terms that go together, with the same left out.
std::vector<way> pairs(const std::vector<term>& terms, const exact& volume, double most_off) {
    const double about = approximately(volume);
    std::vector<way> result;
    for (const term& first : terms) {
        if (first.ml >= volume) continue; // more to it is further off than it is alone
        for (const term& second : terms) {
            const double off = first.about_ml + second.about_ml - about;
            if (std::abs(off) <= most_off * about && go_together(first, second))
                result.push_back(measured_with(first, second, volume));
        }
    }
    return result;
}

bool beyond(const exact& volume, const measures_at_hand& set) {
    const exact most = set.cup ? exact(*set.cup * 999) : exact(set.tablespoon * 8);
    return volume > most * (1 + as_good_as_right) || volume * 32 < set.teaspoon * 3;
}

} // namespace

spooned in_cups_and_spoons(const millilitres& volume, system s) {
    const exact& wanted = volume.value;
    const measures_at_hand& set = at_hand(s);
    if (beyond(wanted, set)) return {};

    std::vector<term> terms = set.cup ? cup_terms(wanted, *set.cup) : std::vector<term>{};
    terms.insert(terms.end(), set.spoons.begin(), set.spoons.end());

    const exact as_right = as_good_as_right * wanted;
    const std::vector<way> right_alone = singles(terms, wanted, about_right);
    if (const way* one = best_of(right_alone, nearer, as_right)) return as_text(*one, wanted);
    const std::vector<way> right = pairs(terms, wanted, about_right);
    if (const way* two = best_of(right, simpler, as_right)) return as_text(*two, wanted);

    const std::vector<way> single = singles(terms, wanted, any_error);
    const std::vector<way> paired = pairs(terms, wanted, any_error);
    const way* one = best_of(single, nearer);
    const way* two = best_of(paired, nearer);
    return as_text(two && nearer(*two, *one) ? *two : *one, wanted);
}

} // namespace benchcard::measures
