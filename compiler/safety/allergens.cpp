#include "compiler/safety/safety.hpp"

#include <algorithm>
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
        contains.insert(e.contains.begin(), e.contains.end());
        may_contain.insert(e.may_contain.begin(), e.may_contain.end());
        if (e.check_packet || !e.contents_stated) check_packet.insert(said);
    }
};

gathered of_line(const recipe::line& l, const std::vector<gathered>& components) {
    gathered result;
    if (l.component) result.add(components[*l.component]);
    else if (l.what) result.add(*l.what, l.written->names.front().text);
    else result.check_packet.insert(l.name);
    for (const auto* other : l.others) result.add(*other, other->name);
    return result;
}

std::vector<std::string> listed(const std::set<std::string>& names) { return {names.begin(), names.end()}; }

} // namespace

std::vector<allergens> allergens_of(const recipe::recipe& r) {
    std::vector<gathered> all;
    std::vector<allergens> result;
    for (const auto& c : r.components) { // each after those it uses
        gathered g;
        for (const auto& l : c.lines) g.add(of_line(l, all));
        result.push_back({listed(g.contains), listed(g.may_contain), listed(g.check_packet)});
        all.push_back(std::move(g));
    }
    return result;
}

} // namespace benchcard::safety
