#include "compiler/checks/method.hpp"

#include "compiler/checks/step_words.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/temperatures.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;
using grammar::span;
using recipe::component;

/// What a step says of heat and time.
struct step_facts {
    std::optional<span> bakes;     ///< where it says to bake or roast
    std::optional<span> oven_heat; ///< where it sets an oven to 100 °C or more
    bool any_heat = false;         ///< some temperature, in brackets or not
    bool any_time = false;         ///< some time, in brackets or not
    bool says_oven = false;        ///< it speaks of an oven, or of baking in any form
    bool preheats = false;
    bool cooks = false;
    bool cools = false;
};

bool is_number(std::string_view word) {
    return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
        return (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '/';
    });
}

/// `180 C`, `180°C`, `350 degrees`, `gas 4`: a temperature without brackets.
bool speaks_of_heat(const std::vector<step_word>& words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto& w = words[i].text;
        const auto next = i + 1 < words.size() ? std::string_view(words[i + 1].text) : "";
        if (w.find("°") != w.npos || begins_with_one_of(w, {"degree"})) return true;
        if (is_number(w) && is_one_of(next, {"c", "f", "°c", "°f"})) return true;
        if (w == "gas" && is_number(next)) return true;
        if (w.size() > 2 && is_one_of(w.substr(w.size() - 1), {"c", "f"}) &&
            is_number(w.substr(0, w.size() - 1)))
            return true;
    }
    return false;
}

bool speaks_of_time(const std::vector<step_word>& words) {
    return std::any_of(words.begin(), words.end(), [](const auto& w) {
        return begins_with_one_of(w.text, {"minute", "hour", "overnight"}) ||
               is_one_of(w.text, {"min", "mins"});
    });
}

void add_brackets(step_facts& f, const grammar::step& written, const recipe::step& meant) {
    for (const auto& part : written.parts) {
        const auto* b = std::get_if<grammar::bracket>(&part);
        if (!b) continue;
        if (std::holds_alternative<grammar::duration>(b->holds)) f.any_time = true;
        const auto* t = std::get_if<grammar::temperature>(&b->holds);
        if (!t) continue;
        f.any_heat = true;
        // Below that an oven dries, or keeps warm for as long as it takes.
        const bool is_hot = measures::exactly(t->degrees.high, t->scale).value >= 100;
        const bool is_oven = std::any_of(meant.parts.begin(), meant.parts.end(), [](const auto& p) {
            const auto* u = std::get_if<recipe::use>(&p);
            const auto* h = u ? std::get_if<recipe::heat_use>(u) : nullptr;
            return h && h->is_oven;
        });
        if (is_hot && is_oven && !f.oven_heat) f.oven_heat = b->where;
        if (measures::exactly(t->degrees.high, t->scale).value >= 70) f.cooks = true;
    }
}

step_facts facts_of(const grammar::step& written, const recipe::step& meant) {
    step_facts f;
    const auto words = words_of_step(written);
    f.any_heat = speaks_of_heat(words);
    f.any_time = speaks_of_time(words);
    bool as_elsewhere = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto& w = words[i].text;
        if (words[i].begins_clause && is_one_of(w, {"bake", "roast"}) && !f.bakes)
            f.bakes = words[i].where.value_or(written.where);
        f.says_oven = f.says_oven || begins_with_one_of(w, {"oven", "bake", "roast", "baking"});
        f.preheats = f.preheats || begins_with_one_of(w, {"preheat", "heat"});
        f.cooks = f.cooks || begins_with_one_of(w, {"boil", "simmer", "bake", "roast", "poach",
                                                    "scald", "stew", "cook"});
        f.cools = f.cools || begins_with_one_of(w, {"cool", "chill", "refrigerat", "fridge",
                                                    "freez", "ice", "cold"});
        const auto next = i + 1 < words.size() ? std::string_view(words[i + 1].text) : "";
        as_elsewhere =
            as_elsewhere ||
            (w == "as" && is_one_of(next, {"for", "above", "before", "usual", "in", "the"}));
    }
    if (as_elsewhere) f.bakes.reset();
    add_brackets(f, written, meant);
    return f;
}

std::vector<step_facts> facts_of_all(const component& c) {
    std::vector<step_facts> result;
    for (const auto& item : c.written->items)
        if (const auto* s = std::get_if<grammar::step>(&item.value);
            s && result.size() < c.steps.size())
            result.push_back(facts_of(*s, c.steps[result.size()]));
    return result;
}

class method_checker {
  public:
    method_checker(const component& c, grammar::diagnostics& to)
        : c_(c), to_(to), facts_(facts_of_all(c)) {}

    void run() {
        // What is missing may stand in a line that could not be read.
        if (facts_.empty() || !c_.unread.empty()) return;
        check_time();
        check_heat();
        check_cooling();
    }

  private:
    const component& c_;
    grammar::diagnostics& to_;
    std::vector<step_facts> facts_;

    template <typename Is> bool any_from(std::size_t first, Is is) const {
        return std::any_of(facts_.begin() + static_cast<std::ptrdiff_t>(first), facts_.end(), is);
    }

    void check_time() {
        for (std::size_t i = 0; i < facts_.size(); ++i) {
            const auto& f = facts_[i];
            if (!f.oven_heat || (!f.says_oven && !f.preheats)) continue;
            if (any_from(i, [](const auto& s) { return s.any_time; })) continue;
            const bool is_set_for_others =
                f.preheats && !f.bakes &&
                !any_from(i + 1, [](const auto& s) { return s.says_oven; });
            if (is_set_for_others) continue;
            to_.push_back(
                {"oven-without-time",
                 severity::warning,
                 *f.oven_heat,
                 "the oven has its heat, and neither this step nor one after it says for "
                 "how long",
                 {},
                 {{"give the time, as in `[35-40 min]`, beside the sign that it is done", {}}}});
            return;
        }
    }

    void check_heat() {
        const auto gives_heat = [](const auto& s) { return s.any_heat; };
        if (any_from(0, gives_heat)) return;
        for (const auto& f : facts_)
            if (f.bakes)
                return say_no_heat(*f.bakes, "this is baked, and no step here says how hot");
        for (const auto& loss : c_.losses)
            for (const auto& word : ingredients::compared_words(loss.place.text))
                if (word == "oven")
                    return say_no_heat(loss.place.where,
                                       "something is lost in the oven, and no step here says how "
                                       "hot that is");
    }

    void say_no_heat(span where, std::string message) {
        to_.push_back({"bake-without-heat",
                       severity::warning,
                       where,
                       std::move(message),
                       {},
                       {{"give the heat, as in `[180 C]`, `[160 C fan]` or `[gas 4]`", {}}}});
    }

    /// Of what holds egg, meat or fish: for syrups and jams it is a matter of course.
    void check_cooling() {
        const auto raw = [](const recipe::line& l) {
            return l.what && std::any_of(l.what->raw.begin(), l.what->raw.end(), [](const auto& w) {
                       return w == "egg" || w == "meat" || w == "poultry" || w == "fish" ||
                              w == "shellfish";
                   });
        };
        if (std::none_of(c_.lines.begin(), c_.lines.end(), raw)) return;
        const auto is_cold = [](const grammar::keeping& k) {
            return in_small_letters(k.text.text).find("chill") != std::string::npos;
        };
        const auto cold = std::find_if(c_.keeps.begin(), c_.keeps.end(), is_cold);
        if (cold == c_.keeps.end()) return;
        std::optional<std::size_t> last_cooked;
        for (std::size_t i = 0; i < facts_.size(); ++i)
            if (facts_[i].cooks) last_cooked = i;
        if (!last_cooked || any_from(*last_cooked, [](const auto& s) { return s.cools; })) return;
        to_.push_back(
            {"cooling-not-said",
             severity::hint,
             cold->text.where,
             fmt::format("{} is heated and keeps chilled, and no step says how it is cooled",
                         c_.title),
             {},
             {{"say how, and for how long: `- Spread in a shallow tray and chill for [2 h].`",
               {}}}});
    }
};

} // namespace

void check_method(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components) method_checker(c, to).run();
}

} // namespace benchcard::checks
