#include "compiler/checks/method.hpp"

#include "compiler/checks/proportions.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/checks/step_words.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/temperatures.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using recipe::component;

/// A temperature that one verb asks for, in °C; all common practice, with room to spare.
struct heat_bound {
    std::initializer_list<std::string_view> beginnings; ///< of words in the step
    bool in_oven;
    int low, high;
    std::string_view does; ///< what is done at it
    std::string_view practice;
};
const heat_bound bounds[] = {
    {{"fry", "fries", "fried", "deep-fr"},
     false,
     110,
     230,
     "frying",
     ": 150 °C to 190 °C; oil smokes above 230 °C"},
    {{"caramel"}, false, 100, 215, "caramel", ": 150 °C to 185 °C"},
    {{"boil", "simmer", "syrup"},
     false,
     70,
     215,
     "boiling",
     ": 100 °C, and sugar syrups to 180 °C"},
    {{"prov", "rise", "rising", "ferment", "bulk"}, false, 1, 60, "rising", ": 4 °C to 40 °C"},
    {{"chill", "fridge", "refrigerat"}, false, -2, 80, "chilling", ": 1 °C to 8 °C"},
};

/// What ovens of kitchens reach, and those of stone (common practice).
constexpr int oven_most = 300;
constexpr std::string_view stone_baked =
    "pizza|naan|pita|flatbread|tandoor|calzone|manakish|lavash";
constexpr int stone_most = 500;
/// Below this nothing bakes in an hour: it dries (common practice).
constexpr int oven_least = 120;
constexpr int an_hour = 60; // minutes

struct heat_found {
    exact celsius_low, celsius_high;
    const grammar::amount* written;
    grammar::span where;
    bool in_oven;
    bool is_plain; ///< one scale, which may have been mistaken
    grammar::oven_scale scale;

    std::string said() const { return said_degrees(*written, scale); } ///< `180 °C`
};

class heat_checker {
  public:
    heat_checker(const component& c, const grammar::step& written, const recipe::step& meant,
                 grammar::diagnostics& to)
        : c_(c), written_(written), meant_(meant), to_(to), words_(words_of_step(written)) {}

    void run() {
        for (const auto& h : heats()) h.in_oven ? check_oven(h) : check_pan(h);
    }

  private:
    const component& c_;
    const grammar::step& written_;
    const recipe::step& meant_;
    grammar::diagnostics& to_;
    std::vector<step_word> words_;

    /// The heats of the step, as they are written and as they are meant, which stand in one order.
    std::vector<heat_found> heats() const {
        std::vector<bool> in_oven;
        for (const auto& p : meant_.parts)
            if (const auto* u = std::get_if<recipe::use>(&p))
                if (const auto* h = std::get_if<recipe::heat_use>(u)) in_oven.push_back(h->is_oven);
        std::vector<heat_found> result;
        for (const auto& part : written_.parts) {
            const auto* b = std::get_if<grammar::bracket>(&part);
            const auto* t = b ? std::get_if<grammar::temperature>(&b->holds) : nullptr;
            if (!t || result.size() == in_oven.size()) continue;
            result.push_back({measures::exactly(t->degrees.low, t->scale).value,
                              measures::exactly(t->degrees.high, t->scale).value, &t->degrees,
                              b->where, in_oven[result.size()], !t->equals, t->scale});
        }
        return result;
    }

    bool says(std::initializer_list<std::string_view> beginnings) const {
        return std::any_of(words_.begin(), words_.end(),
                           [&](const auto& w) { return begins_with_one_of(w.text, beginnings); });
    }

    /// The longest time of the step, in minutes; nothing where it gives none.
    std::optional<exact> minutes() const {
        std::optional<exact> result;
        for (const auto& p : meant_.parts)
            if (const auto* u = std::get_if<recipe::use>(&p))
                if (const auto* t = std::get_if<recipe::time_use>(u)) {
                    if (t->time.overnight) return exact(12 * an_hour);
                    result = std::max(result.value_or(0), t->time.high_minutes);
                }
        return result;
    }

    bool is_stone_baked() const {
        return says({"stone", "steel", "pizza", "tandoor"}) || says_one_of(c_.title, stone_baked);
    }

    void check_oven(const heat_found& h) {
        const int most = is_stone_baked() ? stone_most : oven_most;
        if (h.celsius_high > most)
            say("heat-high", h, "an oven", fmt::format(": kitchen ovens reach {} °C", most));
        const bool may_dry = says({"dry", "dried", "dehydrat", "warm", "meringue", "slow", "prov",
                                   "rise", "keep", "crisp", "confit"}) ||
                             says_one_of(c_.title, "meringue|pavlova|vacherin|dacquoise|crisps");
        const auto time = minutes();
        const bool is_baked = says({"bake", "roast"});
        if (is_baked && !may_dry && h.celsius_high < oven_least && time && *time < an_hour)
            say("heat-low", h, "baking",
                fmt::format(": what bakes in less than an hour takes {} °C and more", oven_least));
    }

    void check_pan(const heat_found& h) {
        for (const auto& b : bounds) {
            if (!says(b.beginnings)) continue;
            if (h.celsius_high > b.high)
                say("heat-high", h, b.does, b.practice);
            else if (h.celsius_low < b.low && is_the_only_heat())
                say("heat-low", h, b.does, b.practice);
            return;
        }
        constexpr int sugar_burns = 230;
        if (h.celsius_high > sugar_burns)
            say("heat-high", h, "a pan", ": oil smokes above 230 °C, and sugar burns before that");
    }

    /// `boil to [118 C], cool to [40 C]`: a step of several heats has several verbs.
    bool is_the_only_heat() const { return heats().size() == 1 && !says({"cool", "until cold"}); }

    void say(std::string_view kind, const heat_found& h, std::string_view what,
             std::string_view practice) {
        using grammar::oven_scale;
        const bool is_high = kind == "heat-high";
        auto message = proportion(
            kind, h.where,
            fmt::format("{} is {} for {}", h.said(), is_high ? "very hot" : "not hot enough", what),
            std::string(practice));
        if (h.scale != oven_scale::celsius)
            message.notes.push_back(
                {fmt::format("{} is {} °C", h.said(),
                             measures::in_decimals(is_high ? h.celsius_high : h.celsius_low, 0)),
                 {}});
        const auto meant = is_high ? oven_scale::fahrenheit : oven_scale::celsius;
        const auto mistaken = is_high ? oven_scale::celsius : oven_scale::fahrenheit;
        if (h.is_plain && h.scale == mistaken)
            message.helps.push_back(
                {fmt::format("is it `[{} {}]`?", measures::with_fraction(h.written->low),
                             meant == oven_scale::celsius ? "C" : "F"),
                 {}});
        to_.push_back(std::move(message));
    }
};

} // namespace

void check_heat(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components) {
        std::size_t step = 0;
        for (const auto& item : c.written->items)
            if (const auto* s = std::get_if<grammar::step>(&item.value); s && step < c.steps.size())
                heat_checker(c, *s, c.steps[step++], to).run();
    }
}

} // namespace benchcard::checks
