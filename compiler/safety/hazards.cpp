#include "compiler/ingredients/names.hpp"
#include "compiler/measures/temperatures.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <optional>
#include <set>

namespace benchcard::safety {

namespace {

constexpr raw all_raw[] = {raw::flour, raw::egg,    raw::meat,  raw::poultry,
                           raw::fish,  raw::pulses, raw::beans, raw::sprouts};

/// In the order of `raw`.
constexpr std::string_view raw_names[] = {"flour", "egg",    "meat",  "poultry",
                                          "fish",  "pulses", "beans", "sprouts"};

std::optional<raw> raw_named(std::string_view said) {
    const auto word = ingredients::compared_name(said);
    if (word == "shellfish") return raw::fish;
    for (const auto what : all_raw)
        if (word == ingredients::compared_name(raw_names[static_cast<std::size_t>(what)]))
            return what;
    return std::nullopt;
}

std::set<raw> raw_in(const ingredients::entry& e) {
    std::set<raw> result;
    for (const auto& said : e.raw)
        if (const auto what = raw_named(said)) result.insert(*what);
    return result;
}

/// A verb or its noun; not `boiling water`, nor the `baked` sponge that is spread with cream.
bool has_word(const recipe::step& s, std::initializer_list<std::string_view> wanted) {
    for (const auto& part : s.parts)
        if (const auto* text = std::get_if<std::string>(&part))
            if (ingredients::has_word(*text, wanted)) return true;
    return false;
}

bool is_timed(const recipe::step& s) {
    return std::any_of(s.parts.begin(), s.parts.end(), [](const auto& part) {
        const auto* u = std::get_if<recipe::use>(&part);
        const auto* t = u ? std::get_if<recipe::time_use>(u) : nullptr;
        return t && t->time.high_minutes > 0;
    });
}

/// Whether a step gives so many degrees Celsius or more, in an oven or in the food itself.
bool is_heated(const recipe::step& s, int celsius, bool in_an_oven_too) {
    return std::any_of(s.parts.begin(), s.parts.end(), [&](const auto& part) {
        const auto* u = std::get_if<recipe::use>(&part);
        const auto* h = u ? std::get_if<recipe::heat_use>(u) : nullptr;
        return h && (in_an_oven_too || !h->is_oven) &&
               measures::exactly(h->high, h->scale).value >= celsius;
    });
}

bool makes_harmless(const recipe::step& s, raw what) {
    return what == raw::beans ? boils(s) : cooks(s);
}

bool puts_in(const recipe::step& s, std::size_t line) {
    return std::any_of(s.parts.begin(), s.parts.end(), [&](const auto& part) {
        const auto* u = std::get_if<recipe::use>(&part);
        if (!u) return false;
        if (const auto* rest = std::get_if<recipe::rest_use>(u))
            return std::find(rest->lines.begin(), rest->lines.end(), line) != rest->lines.end();
        const auto* named = std::get_if<recipe::line_use>(u);
        return named && named->line == line && named->share.has_value();
    });
}

/// Whether a step cooks a line: that in which the last of it goes in, or a later one. What no step
/// names may go in with the first.
bool is_cooked(const recipe::component& c, std::size_t line, raw what) {
    std::size_t first = 0;
    for (std::size_t s = 0; s < c.steps.size(); ++s)
        if (puts_in(c.steps[s], line)) first = s;
    return std::any_of(c.steps.begin() + static_cast<std::ptrdiff_t>(first), c.steps.end(),
                       [&](const auto& s) { return makes_harmless(s, what); });
}

/// What is raw in a line as it comes into a component.
std::set<raw> raw_in(const recipe::line& l, const std::vector<std::set<raw>>& leaves) {
    std::set<raw> result;
    if (l.component) result = leaves[*l.component];
    if (l.what) result.merge(raw_in(*l.what));
    for (const auto* other : l.others) result.merge(raw_in(*other));
    return result;
}

/// For each component what raw things are cooked by every component that uses it, or by all that
/// use those; none where no component uses it.
std::vector<std::set<raw>> cooked_later_in(const recipe::recipe& r) {
    const auto count = r.components.size();
    std::vector<std::set<raw>> later(count, {std::begin(all_raw), std::end(all_raw)});
    std::vector<bool> used(count, false);
    for (auto i = count; i-- > 0;) { // from the product down
        if (!used[i]) later[i].clear();
        const auto& c = r.components[i];
        for (std::size_t l = 0; l < c.lines.size(); ++l) {
            if (!c.lines[l].component) continue;
            const auto part = *c.lines[l].component;
            used[part] = true;
            for (const auto what : all_raw)
                if (!later[i].contains(what) && !is_cooked(c, l, what)) later[part].erase(what);
        }
    }
    return later;
}

std::vector<bool> used_in(const recipe::recipe& r) {
    std::vector<bool> used(r.components.size(), false);
    for (const auto& c : r.components)
        for (const auto& l : c.lines)
            if (l.component) used[*l.component] = true;
    return used;
}

} // namespace

std::vector<std::string> raw_words() { return {std::begin(raw_names), std::end(raw_names)}; }

bool is_raw_word(std::string_view said) { return raw_named(said).has_value(); }

bool cooks(const recipe::step& s) {
    return is_timed(s) && (is_heated(s, 70, true) ||
                           has_word(s, {"boil", "simmer", "bake", "roast", "fry", "poach", "steam",
                                        "stew", "scald", "cook", "grill", "braise", "saute"}));
}

bool boils(const recipe::step& s) {
    return is_timed(s) && (is_heated(s, 98, false) || has_word(s, {"boil"}));
}

std::vector<std::vector<hazard>> hazards_of(const recipe::recipe& r) {
    const auto count = r.components.size();
    const auto later = cooked_later_in(r);
    const auto used = used_in(r);
    std::vector<std::set<raw>> leaves(count); // what goes out of a component still raw
    std::vector<std::vector<hazard>> result(count);
    for (std::size_t i = 0; i < count; ++i) {
        const auto& c = r.components[i];
        std::set<raw> in;
        for (std::size_t l = 0; l < c.lines.size(); ++l)
            for (const auto what : raw_in(c.lines[l], leaves)) {
                in.insert(what);
                if (!is_cooked(c, l, what)) leaves[i].insert(what);
            }
        for (const auto what : in)
            result[i].push_back({what, !leaves[i].contains(what), later[i].contains(what),
                                 !used[i] && i + 1 < count});
    }
    return result;
}

namespace {

constexpr auto on_flour = "CDC and FDA on raw flour; Purdue University (2021) on heating it";
constexpr auto on_egg = "FDA on raw egg, and UK Food Standards Agency on those at risk; 5 °C: FDA "
                        "Food Code, 3-501.16";
constexpr auto on_meat = "FDA Food Code, 3-401.11; apart: common practice";
constexpr auto on_fish = "FDA Food Code, 3-401.11; supplied for it: common practice";
constexpr auto on_beans = "FDA, Bad Bug Book, on phytohaemagglutinin (kidney bean lectin)";
constexpr auto on_sprouts = "FDA Food Code, 1-201.10 (raw seed sprouts)";
constexpr auto in_practice = "common practice";

/// Local rules come first.
caution never_cooked(raw what) {
    switch (what) {
    case raw::flour:
        return {"Raw flour, and no step cooks it. Flour is not a ready-to-eat food: use flour sold "
                "as heat-treated. Heating it yourself has not been shown to make it safe.",
                on_flour};
    case raw::egg:
        return {"Raw egg, and no step cooks it: use pasteurised egg for the public and for anyone "
                "at risk (the very young, the old, the pregnant, the unwell). Keep at 5 °C or "
                "below.",
                on_egg};
    case raw::meat:
        return {"Raw meat, and no step cooks it. Cook it through before anyone eats it, and keep "
                "it apart from ready-to-eat food.",
                on_meat};
    case raw::poultry:
        return {"Raw poultry, and no step cooks it. Cook it through before anyone eats it, and "
                "keep it apart from ready-to-eat food. Do not wash it.",
                on_meat};
    case raw::fish:
        return {"Raw fish, and no step cooks it. Only fish supplied to be eaten raw may be.",
                on_fish};
    case raw::pulses:
        return {"Dried pulses, and no step boils them: some are poisonous until they are boiled "
                "hard.",
                on_beans};
    case raw::beans:
        return {"Dried beans, and no step boils them: kidney beans and their kin are poisonous "
                "until they are boiled hard. A slow cooker or a low oven does not do it.",
                on_beans};
    case raw::sprouts:
        return {"Raw sprouts, and no step cooks them: cook them through unless they are sold as "
                "ready to eat, and keep them from anyone at risk.",
                on_sprouts};
    }
    return {};
}

/// `Raw flour, egg and meat`
std::string listed(const std::vector<std::string>& names) {
    std::string list = "Raw ";
    for (std::size_t i = 0; i < names.size(); ++i)
        list += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return list;
}

/// What a house file makes for other recipes: whether they cook it is not known here.
caution for_cooking_only(const std::string& list) {
    return {list + ", not cooked here: only for what is cooked later. Do not taste, wash hands "
                   "and bench after.",
            in_practice};
}

caution until_cooked(const std::string& list) {
    return {list + " until cooked: do not taste, wash hands and bench after.", in_practice};
}

/// Of the pulses, which are cooked as a matter of course, but not always hard enough.
caution boil_through(raw what) {
    if (what == raw::beans)
        return {"Dried beans: soak them for 5 h or more, pour that water off, and boil them hard "
                "in fresh water, 30 min for kidney beans, before anything slower.",
                on_beans};
    return {"Dried pulses: boil them through, as the packet says; some beans are poisonous until "
            "they are boiled hard.",
            on_beans};
}

std::string name_of(raw what) { return std::string(raw_names[static_cast<std::size_t>(what)]); }

} // namespace

std::vector<caution> cautions_for(const std::vector<hazard>& hazards) {
    std::vector<caution> result;
    std::vector<std::string> raw_for_now, raw_for_others;
    for (const auto& h : hazards) {
        const bool is_cooked = h.cooked_here || h.cooked_later;
        if (is_cooked && (h.what == raw::pulses || h.what == raw::beans))
            result.push_back(boil_through(h.what));
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
