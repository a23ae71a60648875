#include "compiler/ingredients/names.hpp"
#include "compiler/measures/temperatures.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <set>

namespace benchcard::safety {

namespace {

std::set<raw> raw_in(const ingredients::entry& e) {
    std::set<raw> result;
    for (const auto& word : e.raw) {
        if (word == "flour") result.insert(raw::flour);
        if (word == "egg") result.insert(raw::egg);
        if (word == "meat" || word == "poultry") result.insert(raw::meat);
        if (word == "fish" || word == "shellfish") result.insert(raw::fish);
        if (word == "pulses" || word == "beans") result.insert(raw::pulses);
    }
    return result;
}

bool has_cooking_word(const recipe::step& s) {
    constexpr std::string_view words[] = {"boil",  "simmer", "bake", "roast", "fry",
                                          "poach", "steam",  "stew", "scald", "cook"};
    for (const auto& part : s.parts)
        if (const auto* text = std::get_if<std::string>(&part))
            for (const auto& word : ingredients::compared_words(*text))
                for (const auto cooking : words)
                    if (word.starts_with(cooking)) return true;
    return false;
}

} // namespace

bool cooks(const recipe::step& s) {
    bool timed = false, hot = false;
    for (const auto& part : s.parts) {
        const auto* u = std::get_if<recipe::use>(&part);
        if (!u) continue;
        if (const auto* t = std::get_if<recipe::time_use>(u))
            timed = timed || t->time.high_minutes > 0;
        if (const auto* h = std::get_if<recipe::heat_use>(u))
            hot = hot || measures::exactly(h->high, h->scale).value >= 70;
    }
    return timed && (hot || has_cooking_word(s));
}

std::vector<std::vector<hazard>> hazards_of(const recipe::recipe& r) {
    const auto count = r.components.size();
    std::vector<bool> cooking(count);
    for (std::size_t i = 0; i < count; ++i)
        cooking[i] = std::any_of(r.components[i].steps.begin(), r.components[i].steps.end(), cooks);

    // From the product down: a component is cooked later when each one that uses it cooks it, or
    // is itself cooked later.
    std::vector<bool> later(count, true), used(count, false);
    for (auto i = count; i-- > 0;) {
        if (!used[i]) later[i] = false;
        for (const auto& l : r.components[i].lines)
            if (l.component) {
                used[*l.component] = true;
                if (!cooking[i] && !later[i]) later[*l.component] = false;
            }
    }

    std::vector<std::set<raw>> leaves(count); // what goes out of a component still raw
    std::vector<std::vector<hazard>> result(count);
    for (std::size_t i = 0; i < count; ++i) {
        std::set<raw> in;
        for (const auto& l : r.components[i].lines) {
            if (l.component) in.insert(leaves[*l.component].begin(), leaves[*l.component].end());
            if (l.what) in.merge(raw_in(*l.what));
            for (const auto* other : l.others) in.merge(raw_in(*other));
        }
        for (const auto what : in)
            result[i].push_back({what, cooking[i], later[i], !used[i] && i + 1 < count});
        if (!cooking[i]) leaves[i] = in;
    }
    return result;
}

namespace {

/// Sources: CDC and FDA on raw flour and raw egg; UK Food Standards Agency on raw egg for those at
/// risk; and common practice. Local rules come first.
std::string never_cooked(raw what) {
    switch (what) {
    case raw::flour:
        return "Raw flour, and no step cooks it. Flour is not a ready-to-eat food: use flour sold "
               "as heat-treated. Heating it yourself has not been shown to make it safe.";
    case raw::egg:
        return "Raw egg, and no step cooks it: use pasteurised egg for the public and for anyone "
               "at risk (the very young, the old, the pregnant, the unwell). Keep at 5 °C or "
               "below.";
    case raw::meat:
        return "Raw meat, and no step cooks it. Cook it through before anyone eats it, and keep it "
               "apart from ready-to-eat food.";
    case raw::fish:
        return "Raw fish, and no step cooks it. Only fish supplied to be eaten raw may be.";
    case raw::pulses:
        return "Dried pulses, and no step boils them: some are poisonous until they are boiled "
               "hard.";
    }
    return "";
}

/// `Raw flour, egg and meat`
std::string listed(const std::vector<std::string>& names) {
    std::string list = "Raw ";
    for (std::size_t i = 0; i < names.size(); ++i)
        list += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return list;
}

/// What a house file makes for other recipes: whether they cook it is not known here.
std::string for_cooking_only(const std::string& list) {
    return list + ", not cooked here: only for what is cooked later. Do not taste, wash hands and "
                  "bench after.";
}

std::string until_cooked(const std::string& list) {
    return list + " until cooked: do not taste, wash hands and bench after.";
}

std::string name_of(raw what) {
    switch (what) {
    case raw::flour:
        return "flour";
    case raw::egg:
        return "egg";
    case raw::meat:
        return "meat";
    case raw::fish:
        return "fish";
    case raw::pulses:
        return "pulses";
    }
    return "";
}

} // namespace

std::vector<std::string> cautions_for(const std::vector<hazard>& hazards) {
    std::vector<std::string> result;
    std::vector<std::string> raw_for_now, raw_for_others;
    for (const auto& h : hazards) {
        const bool is_cooked = h.cooked_here || h.cooked_later;
        if (is_cooked && h.what == raw::pulses)
            result.push_back("Dried pulses: boil them through, as the packet says; some beans are "
                             "poisonous until they are boiled hard.");
        else if (is_cooked)
            raw_for_now.push_back(name_of(h.what));
        else if (h.for_others)
            raw_for_others.push_back(name_of(h.what));
        else
            result.push_back(never_cooked(h.what));
    }
    if (!raw_for_others.empty()) result.push_back(for_cooking_only(listed(raw_for_others)));
    if (!raw_for_now.empty()) result.push_back(until_cooked(listed(raw_for_now)));
    return result;
}

} // namespace benchcard::safety
