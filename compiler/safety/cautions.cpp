#include "compiler/ingredients/names.hpp"
#include "compiler/measures/temperatures.hpp"
#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::safety {

namespace {

/// Words in the form in which they are compared.
using words = std::vector<std::string>;

/// Any of some phrases, which are looked for in every recipe.
class phrases {
  public:
    phrases(std::initializer_list<std::string_view> all) {
        for (const auto phrase : all) each_.push_back(ingredients::compared_words(phrase));
    }
    bool are_in(const words& text) const {
        return std::any_of(each_.begin(), each_.end(), [&](const words& phrase) {
            return std::search(text.begin(), text.end(), phrase.begin(), phrase.end()) !=
                   text.end();
        });
    }
    bool are_in(const std::vector<words>& texts) const {
        return std::any_of(texts.begin(), texts.end(),
                           [&](const words& text) { return are_in(text); });
    }

  private:
    std::vector<words> each_;
};

/// What a component's lines are called, and the other things that may stand for them.
std::vector<words> names_in(const recipe::component& c) {
    std::vector<words> result;
    for (const auto& l : c.lines) {
        if (l.component) continue;
        result.push_back(ingredients::compared_words(l.name));
        if (l.what) result.push_back(ingredients::compared_words(l.what->name));
        for (const auto* other : l.others)
            if (other) result.push_back(ingredients::compared_words(other->name));
    }
    return result;
}

bool has_family(const recipe::component& c, std::string_view family) {
    return std::any_of(c.lines.begin(), c.lines.end(),
                       [&](const auto& l) { return l.what && l.what->family == family; });
}

words words_of(const recipe::step& s) {
    std::string result;
    for (const auto& part : s.parts)
        if (const auto* text = std::get_if<std::string>(&part)) result += *text + " ";
    for (auto& c : result)
        if (std::string_view(".,;:!?()").find(c) != std::string_view::npos) c = ' ';
    return ingredients::compared_words(result);
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

struct read_step {
    words said;
    exact heat; ///< of the pan
};

/// A component as it is looked through for what is dangerous, read once.
struct read_component {
    const recipe::component& of;
    std::vector<words> names;
    std::vector<read_step> steps;
};

read_component read(const recipe::component& c) {
    read_component result{c, names_in(c), {}};
    for (const auto& s : c.steps) result.steps.push_back({words_of(s), pan_heat(s)});
    return result;
}

bool is_hot_oil(const read_component& c, const read_step& s) {
    static const phrases fats{"oil", "lard", "dripping", "beef fat", "duck fat", "ghee"};
    static const phrases deep{"deep fry", "deep fryer", "fryer"};
    static const phrases shallow{"fry", "oil", "fat", "lard"};
    return deep.are_in(s.said) || (s.heat >= 150 && shallow.are_in(s.said) && fats.are_in(c.names));
}

/// From 110 °C on sugar is boiled to thread and beyond.
bool is_hot_sugar(const read_component& c, const read_step& s) {
    static const phrases sugars{"sugar", "syrup", "honey", "isomalt"};
    static const phrases caramel{"to a caramel", "caramelise the"};
    const bool is_hot = (s.heat >= 110 && !is_hot_oil(c, s)) || caramel.are_in(s.said);
    return is_hot && (has_family(c.of, "sugars") || sugars.are_in(c.names));
}

void add_handling(const read_component& c, std::vector<caution>& to) {
    static const phrases lye{"lye", "sodium hydroxide", "caustic soda"};
    static const phrases dry_ice{"dry ice", "solid carbon dioxide"};
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
    if (lye.are_in(c.names))
        to.push_back({"Lye burns skin and eyes: goggles and gloves, food grade only, the lye into "
                      "cold water and never water onto lye, no aluminium.",
                      "common practice"});
    if (dry_ice.are_in(c.names))
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

bool is_held_hot(const read_component& c) {
    static const phrases hot{"hot"};
    static const phrases held{"hold hot", "keep hot"};
    const auto is_hot = [&](const auto& k) {
        return hot.are_in(ingredients::compared_words(k.place.text));
    };
    return std::any_of(c.of.keeps.begin(), c.of.keeps.end(), is_hot) ||
           std::any_of(c.steps.begin(), c.steps.end(),
                       [&](const auto& s) { return held.are_in(s.said); });
}

void add_hot_holding(const read_component& c, law whose, std::vector<caution>& to) {
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
    static const phrases honey{"honey"};
    std::vector<bool> result;
    for (const auto& c : r.components)
        result.push_back(honey.are_in(names_in(c)) ||
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
    static const phrases vinegar{"vinegar"};
    if (vinegar.are_in(names_in(c))) return true;
    if (!c.mix) return false;
    exact sugar = 0;
    for (const auto& l : c.lines)
        if (l.grams && l.what && l.what->family == "sugars") sugar += l.grams->used;
    return sugar * 2 >= c.mix->used / c.times;
}

} // namespace

std::vector<bool> needs_the_cold(const recipe::recipe& r) {
    static const phrases chilled{"chilled"};
    const auto animal = perishable(r);
    const auto hazards = hazards_of(r);
    std::vector<bool> result;
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        const auto& c = r.components[i];
        const bool is_chilled = std::any_of(c.keeps.begin(), c.keeps.end(), [](const auto& k) {
            return chilled.are_in(ingredients::compared_words(k.place.text));
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
        const auto looked_through = read(c);
        auto all = cautions_for(hazards[i]);
        add_handling(looked_through, all);
        add_core_heat(hazards[i], whose, all);
        if (cold[i]) add_cooling(c, whose, all);
        add_hot_holding(looked_through, whose, all);
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
