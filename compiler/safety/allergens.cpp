#include "compiler/ingredients/names.hpp"
#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

namespace benchcard::safety {

namespace {

struct gathered {
    std::set<std::string> contains, may_contain, check_packet;

    void add(const gathered& other) {
        contains.insert(other.contains.begin(), other.contains.end());
        may_contain.insert(other.may_contain.begin(), other.may_contain.end());
        check_packet.insert(other.check_packet.begin(), other.check_packet.end());
    }
    /// `said` is what the recipe calls it, as it may stand on the packet.
    void add(const ingredients::entry& e, const std::string& said) {
        for (const auto& name : e.contains) contains.insert(listed_name(name));
        for (const auto& name : e.may_contain) may_contain.insert(listed_name(name));
        if (e.check_packet || !e.contents_stated) check_packet.insert(said);
    }
};

/// Those that are in it for certain are not said again as what may be in it.
std::set<std::string> without(std::set<std::string> names, const std::set<std::string>& said) {
    std::erase_if(names, [&](const auto& name) { return said.contains(name); });
    return names;
}

/// What the recipe calls the other thing of `currants or raisins`.
std::string said_of_other(const recipe::line& l, const ingredients::entry& other) {
    auto known = other.also;
    known.push_back(other.name);
    for (std::size_t i = 1; i < l.written->names.size(); ++i) {
        const auto& said = l.written->names[i].text;
        for (const auto& name : known)
            if ((" " + ingredients::compared_name(said))
                    .ends_with(" " + ingredients::compared_name(name)))
                return said;
    }
    return other.name;
}

gathered of_line(const recipe::line& l, const std::vector<gathered>& components) {
    gathered result;
    if (l.component)
        result.add(components[*l.component]);
    else if (l.what)
        result.add(*l.what, l.written->names.front().text);
    else
        result.check_packet.insert(l.name);
    for (const auto* other : l.others) result.add(*other, said_of_other(l, *other));
    return result;
}

std::vector<std::string> listed(const std::set<std::string>& names) {
    return {names.begin(), names.end()};
}

} // namespace

allergens allergens_of(const recipe::line& l) {
    if (l.component) return {};
    const auto g = of_line(l, {});
    return {listed(g.contains), listed(without(g.may_contain, g.contains)), listed(g.check_packet)};
}

std::vector<allergens> allergens_of(const recipe::recipe& r) {
    std::vector<gathered> all;
    std::vector<allergens> result;
    for (const auto& c : r.components) { // each after those it uses
        gathered g;
        for (const auto& l : c.lines) g.add(of_line(l, all));
        result.push_back({listed(g.contains), listed(without(g.may_contain, g.contains)),
                          listed(g.check_packet)});
        all.push_back(std::move(g));
    }
    return result;
}

namespace {

/// Names, and for each the ingredients that bring it: `ground almonds (Sweet pastry)`.
using origins = std::map<std::string, std::string>;

void add_origin(origins& to, const std::vector<std::string>& names, const std::string& from) {
    for (const auto& name : names) {
        auto& list = to[name];
        list += (list.empty() ? "" : ", ") + from;
    }
}

std::string law_of(const std::string& name) {
    const auto* row = allergen_named(name);
    return row ? std::string(row->source) : "no list; the definition of the ingredient";
}

} // namespace

std::string sources_of_allergens(const recipe::recipe& r) {
    origins contains, may_contain, packets;
    for (const auto& c : r.components)
        for (const auto& l : c.lines) {
            const auto of = allergens_of(l);
            const auto from = fmt::format("{} ({})", l.name, c.title);
            add_origin(contains, of.contains, from);
            add_origin(may_contain, of.may_contain, from);
            add_origin(packets, of.check_packet, c.title);
        }
    std::string result;
    for (const auto& [name, from] : contains)
        result += fmt::format("  {}: {}\n    by {}\n", name, from, law_of(name));
    for (const auto& [name, from] : may_contain)
        result += fmt::format("  may contain {}: {}\n    by {}\n", name, from, law_of(name));
    for (const auto& [name, from] : packets)
        result += fmt::format("  check the packet of {} ({})\n", name, from);
    return result.empty() ? "" : "\nAllergens\n" + result;
}

} // namespace benchcard::safety
