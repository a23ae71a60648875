#include "compiler/batch/whole.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <boost/multiprecision/cpp_int.hpp>
#include <map>

namespace benchcard::batch {

namespace {

using boost::multiprecision::cpp_int;

bool is_whole(const exact& value) { return measures::whole_part(value) == value; }

/// The container that a line counts, in the singular; empty where it counts the thing itself.
std::string container_of(const recipe::line& l, std::initializer_list<std::string_view> words) {
    auto said = ingredients::compared_words(l.description);
    if (!l.what) said = ingredients::compared_words(l.name);
    if (l.written->piece)
        for (auto& w : ingredients::compared_words(l.written->piece->text))
            said.push_back(std::move(w));
    for (auto& word : said)
        if (std::find(words.begin(), words.end(), word) != words.end()) return word;
    return "";
}

std::string opened_container(const recipe::line& l) {
    return container_of(l, {"tin", "can", "jar", "bottle", "carton"});
}

bool is_in_sachets(const recipe::line& l) {
    return !container_of(l, {"sachet", "packet", "envelope", "bag"}).empty();
}

bool is_counted_whole(const weigh_line& l) {
    return l.count && l.low_part == l.high_part && !l.of->component && !l.of->some &&
           parting_of(*l.of) == parting::whole;
}

/// What the orders are said to be whole in: `eggs`, whether whites or yolks.
std::string things_of(const recipe::line& l) {
    if (const auto container = opened_container(l); !container.empty())
        return ingredients::plural(container);
    if (!l.what) return l.name;
    const auto& raw = l.what->raw;
    if (std::find(raw.begin(), raw.end(), "egg") != raw.end()) return "eggs";
    if (ingredients::compared_words(l.what->name).front() == "leaf") return "leaves";
    return ingredients::plural(l.what->name);
}

/// The multiple of `step` at or below a number and the two above it; the first three for less.
std::vector<exact> around(const exact& number, const exact& step) {
    const exact below = std::max(exact(1), measures::whole_part(number / step));
    return {below * step, (below + 1) * step, (below + 2) * step};
}

} // namespace

parting parting_of(const recipe::line& l) {
    if (l.component) return parting::cut;
    if (l.what && l.what->whole) return *l.what->whole ? parting::whole : parting::cut;
    if (!opened_container(l).empty()) return parting::whole;
    return is_in_sachets(l) ? parting::weighed : parting::cut;
}

std::optional<whole_and_rest> whole_and_rest_of(const weigh_line& l) {
    if (!is_counted_whole(l) || is_whole(l.count->used) || !l.grams) return std::nullopt;
    const auto whole = measures::whole_part(l.count->used);
    return whole_and_rest{whole, l.grams->used / l.count->used * (l.count->used - whole)};
}

exact smallest_whole_multiple(const std::vector<exact>& each) {
    // a/b and c/d, in lowest terms, are made whole by lcm(b, d) / gcd(a, c) and by nothing smaller.
    cpp_int above = 0, below = 1;
    for (const auto& value : each) {
        const cpp_int over = numerator(value), under = denominator(value);
        above = gcd(above, over);
        below = lcm(below, under);
    }
    return exact(below) / exact(above);
}

std::vector<whole_orders> whole_orders_of(const batch& b) {
    struct counts {
        std::vector<exact> all;
        bool is_uneven = false;
    };
    std::map<std::string, counts> by_things;
    const auto& pieces = b.components.back().pieces;
    const exact wanted = pieces ? *pieces : b.factor;
    for (const auto& c : b.components)
        for (const auto& l : c.lines) {
            if (!is_counted_whole(l)) continue;
            auto& found = by_things[things_of(*l.of)];
            found.all.push_back(l.count->used / wanted);
            found.is_uneven = found.is_uneven || !is_whole(l.count->used);
        }
    std::vector<whole_orders> result;
    for (auto& [things, found] : by_things) {
        if (!found.is_uneven) continue;
        if (pieces) found.all.push_back(1); // an order is of whole pieces
        const auto step = smallest_whole_multiple(found.all);
        if (step <= (pieces ? 10000 : 100)) result.push_back({things, around(wanted, step)});
    }
    return result;
}

} // namespace benchcard::batch
