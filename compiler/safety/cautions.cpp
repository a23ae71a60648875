#include "compiler/ingredients/names.hpp"
#include "compiler/measures/temperatures.hpp"
#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::safety {

namespace {

using ingredients::compared_words;

bool has_phrase(std::string_view name, std::string_view phrase) {
    const auto words = compared_words(name), wanted = compared_words(phrase);
    return std::search(words.begin(), words.end(), wanted.begin(), wanted.end()) != words.end();
}

/// Whether a line, or the other thing that may stand for it, is called so.
bool is_called(const recipe::line& l, std::string_view phrase) {
    if (l.component) return false;
    const auto entry_is = [&](const ingredients::entry* e) {
        return e && has_phrase(e->name, phrase);
    };
    return has_phrase(l.name, phrase) || entry_is(l.what) ||
           std::any_of(l.others.begin(), l.others.end(), entry_is);
}

bool has_line(const recipe::component& c, std::initializer_list<std::string_view> phrases) {
    return std::any_of(c.lines.begin(), c.lines.end(), [&](const auto& l) {
        return std::any_of(phrases.begin(), phrases.end(),
                           [&](const auto phrase) { return is_called(l, phrase); });
    });
}

bool has_family(const recipe::component& c, std::string_view family) {
    return std::any_of(c.lines.begin(), c.lines.end(),
                       [&](const auto& l) { return l.what && l.what->family == family; });
}

std::string words_of(const recipe::step& s) {
    std::string result;
    for (const auto& part : s.parts)
        if (const auto* text = std::get_if<std::string>(&part)) result += *text + " ";
    for (auto& c : result)
        if (std::string_view(".,;:!?()").find(c) != std::string_view::npos) c = ' ';
    return result;
}

/// The hottest that a step has in the pan, and not in an oven, in degrees Celsius; 0 for none.
exact pan_heat(const recipe::step& s) {
    exact hottest = 0;
    for (const auto& part : s.parts) {
        const auto* u = std::get_if<recipe::use>(&part);
        const auto* h = u ? std::get_if<recipe::heat_use>(u) : nullptr;
        if (h && !h->is_oven)
            hottest = std::max(hottest, measures::exactly(h->high, h->scale).value);
    }
    return hottest;
}

bool says(const recipe::step& s, std::initializer_list<std::string_view> phrases) {
    const auto words = words_of(s);
    return std::any_of(phrases.begin(), phrases.end(),
                       [&](const auto phrase) { return has_phrase(words, phrase); });
}

bool is_hot_oil(const recipe::component& c, const recipe::step& s) {
    const bool has_fat = has_line(c, {"oil", "lard", "dripping", "beef fat", "duck fat", "ghee"});
    return says(s, {"deep fry", "deep fryer", "fryer"}) ||
           (has_fat && pan_heat(s) >= 150 && says(s, {"fry", "oil", "fat", "lard"}));
}

/// From 110 °C on sugar is boiled to thread and beyond.
bool is_hot_sugar(const recipe::component& c, const recipe::step& s) {
    if (!has_family(c, "sugars") && !has_line(c, {"sugar", "syrup", "honey", "isomalt"}))
        return false;
    return (pan_heat(s) >= 110 && !is_hot_oil(c, s)) || says(s, {"to a caramel", "caramelise the"});
}

void add_handling(const recipe::component& c, std::vector<caution>& to) {
    const auto any_step = [&](auto is) {
        return std::any_of(c.steps.begin(), c.steps.end(), [&](const auto& s) { return is(c, s); });
    };
    if (any_step(is_hot_sugar))
        to.push_back({"Hot sugar sticks and burns deep: a large pan, dry hands kept away, cold "
                      "water standing by.",
                      "common practice"});
    if (any_step(is_hot_oil))
        to.push_back({"Hot oil: no pan more than half full, nothing wet into it, never left alone. "
                      "If it burns, heat off and lid on; never water.",
                      "common practice"});
    if (has_line(c, {"lye", "sodium hydroxide", "caustic soda"}))
        to.push_back({"Lye burns skin and eyes: goggles and gloves, food grade only, the lye into "
                      "cold water and never water onto lye, no aluminium.",
                      "common practice"});
    if (has_line(c, {"dry ice", "solid carbon dioxide"}))
        to.push_back({"Dry ice burns the skin and takes the air's place: gloves, a window open, "
                      "never in a closed vessel, none of it left in what is served.",
                      "common practice"});
}

/// Core temperatures, where a step cooks what is raw.
void add_core_heat(const std::vector<hazard>& hazards, law whose, std::vector<caution>& to) {
    if (whose == law::eu) return; // the EU and the United Kingdom set none for all meat
    const auto cooked = [&](raw what) {
        return std::any_of(hazards.begin(), hazards.end(),
                           [&](const auto& h) { return h.what == what && h.cooked_here; });
    };
    constexpr auto source = "FDA Food Code, 3-401.11 (edition of 2005)";
    if (cooked(raw::poultry))
        to.push_back({"Poultry to a core of 74 °C (165 °F); measure it.", source});
    if (cooked(raw::meat))
        to.push_back(
            {"Meat to a core of 63 °C (145 °F), minced 68 °C (155 °F); measure it.", source});
    if (cooked(raw::fish)) to.push_back({"Fish to a core of 63 °C (145 °F); measure it.", source});
}

void add_cooling(const recipe::component& c, law whose, std::vector<caution>& to) {
    if (std::none_of(c.steps.begin(), c.steps.end(), cooks)) return;
    if (whose == law::eu)
        to.push_back({"Cool it fast and chill it at 8 °C or below.",
                      "8 °C: food hygiene regulations of the United Kingdom, Schedule 4, as in WSI "
                      "2006/31; fast: common practice"});
    else
        to.push_back({"Cool it to 21 °C (70 °F) within 2 h and to 5 °C (41 °F) within 4 h more; "
                      "chill it at 5 °C or below.",
                      "FDA Food Code, 3-501.14 and 3-501.16"});
}

bool is_held_hot(const recipe::component& c) {
    const auto is_hot = [](const auto& k) { return has_phrase(k.place.text, "hot"); };
    return std::any_of(c.keeps.begin(), c.keeps.end(), is_hot) ||
           std::any_of(c.steps.begin(), c.steps.end(), [](const auto& s) {
               return says(s, {"hold hot", "keep hot"});
           });
}

void add_hot_holding(const recipe::component& c, law whose, std::vector<caution>& to) {
    if (!is_held_hot(c)) return;
    if (whose == law::us)
        to.push_back({"Hold it at 57 °C (135 °F) or above.", "FDA Food Code, 3-501.16"});
    else
        to.push_back({"Hold it at 63 °C (145 °F) or above.",
                      "food hygiene regulations of the United Kingdom, Schedule 4, as in SSI "
                      "2006/3"});
}

/// Components with honey in them, their own or that of what they are made of.
std::vector<bool> with_honey(const recipe::recipe& r) {
    std::vector<bool> result;
    for (const auto& c : r.components)
        result.push_back(has_line(c, {"honey"}) ||
                         std::any_of(c.lines.begin(), c.lines.end(), [&](const auto& l) {
                             return l.component && result[*l.component];
                         }));
    return result;
}

/// Animal food and pulses; butter and chocolate keep by themselves. Milk stands with the liquids.
bool is_perishable(const ingredients::entry& e) {
    if (e.family == "fats" || e.family == "chocolate" || e.family == "sugars") return false;
    const auto is_animal = [](const std::string& name) {
        const auto listed = listed_name(name);
        return listed == "milk" || listed == "egg" || listed == "fish" || listed == "crustaceans" ||
               listed == "molluscs";
    };
    const bool is_raw_food = !e.raw.empty() && e.raw.front() != "flour";
    const bool is_of_animals =
        e.family == "dairy" || e.family == "eggs" || e.family == "liquids" || e.family.empty();
    return is_raw_food || e.family == "meat-and-fish" ||
           (is_of_animals && std::any_of(e.contains.begin(), e.contains.end(), is_animal));
}

/// Followed along the graph.
std::vector<bool> perishable(const recipe::recipe& r) {
    std::vector<bool> result;
    for (const auto& c : r.components)
        result.push_back(std::any_of(c.lines.begin(), c.lines.end(), [&](const auto& l) {
            return l.component ? bool(result[*l.component]) : l.what && is_perishable(*l.what);
        }));
    return result;
}

bool is_preserved(const recipe::component& c) {
    if (has_line(c, {"vinegar"})) return true;
    if (!c.mix) return false;
    exact sugar = 0;
    for (const auto& l : c.lines)
        if (l.grams && l.what && l.what->family == "sugars") sugar += l.grams->used;
    return sugar * 2 >= c.mix->used / c.times;
}

} // namespace

std::vector<bool> needs_the_cold(const recipe::recipe& r) {
    const auto animal = perishable(r);
    const auto hazards = hazards_of(r);
    std::vector<bool> result;
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        const auto& c = r.components[i];
        const bool is_chilled = std::any_of(c.keeps.begin(), c.keeps.end(), [](const auto& k) {
            return has_phrase(k.place.text, "chilled");
        });
        const bool is_for_cooking =
            std::any_of(hazards[i].begin(), hazards[i].end(), [](const auto& h) {
                return !h.cooked_here && (h.cooked_later || h.for_others);
            });
        result.push_back(is_chilled && animal[i] && !is_for_cooking && !is_preserved(c));
    }
    return result;
}

std::vector<std::vector<caution>> cautions_of(const recipe::recipe& r) {
    const auto whose = law_named(r.labels);
    const auto hazards = hazards_of(r);
    const auto cold = needs_the_cold(r);
    const auto honey = with_honey(r);
    std::vector<std::vector<caution>> result;
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        const auto& c = r.components[i];
        auto all = cautions_for(hazards[i]);
        add_handling(c, all);
        add_core_heat(hazards[i], whose, all);
        if (cold[i]) add_cooling(c, whose, all);
        add_hot_holding(c, whose, all);
        if (honey[i])
            all.push_back({"Honey in it: not for infants under twelve months, cooked or not.",
                           "usual advice of health services on infant botulism"});
        result.push_back(std::move(all));
    }
    return result;
}

std::string sources_of_cautions(const recipe::recipe& r) {
    std::string result;
    const auto all = cautions_of(r);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].empty()) continue;
        result += fmt::format("\n{}: cautions\n", r.components[i].title);
        for (const auto& c : all[i]) result += fmt::format("  {}\n    by {}\n", c.text, c.source);
    }
    return result;
}

} // namespace benchcard::safety
