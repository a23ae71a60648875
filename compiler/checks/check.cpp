#include "compiler/checks/balance.hpp"
#include "compiler/checks/checks.hpp"
#include "compiler/checks/graph.hpp"
#include "compiler/checks/method.hpp"
#include "compiler/checks/neighbours.hpp"
#include "compiler/checks/places.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

place_set places_of(const grammar::diagnostics& messages, std::string_view kind = "") {
    std::vector<grammar::span> result;
    for (const auto& m : messages)
        if (kind.empty() || m.kind == kind) result.push_back(m.where);
    return place_set(std::move(result));
}

/// Whether the amounts of each component are known to be wrong: a line of it is not known, the mix
/// does not add up, or one of them is out of all scale.
std::vector<bool> with_wrong_amounts(const recipe::recipe& r, const line_places& lines,
                                     const grammar::diagnostics& messages) {
    std::vector<bool> result;
    const auto unbalanced = unbalanced_places(messages);
    for (const auto& c : r.components)
        result.push_back(c.weight_unread || is_out_of_balance(c, unbalanced));
    for (const auto& m : messages)
        if (m.kind == "out-of-scale")
            if (const auto i = lines.component_at(m.where)) result[*i] = true;
    return result;
}

/// What a scale cannot show is no matter of its own where the amount is wrong altogether.
void add_measurable(const recipe::recipe& r, grammar::diagnostics& to) {
    grammar::diagnostics found;
    check_measurable(r, found);
    const auto said = places_of(to, "out-of-scale");
    for (auto& m : found)
        if (!said.meets(m.where)) to.push_back(std::move(m));
}

/// That a line is out of proportion may be why a mix does not add up: then it is said there.
void explain_balance(const grammar::diagnostic& found, const recipe::component& c,
                     grammar::diagnostics& to) {
    for (auto& m : to) {
        const bool is_why = m.where == c.makes_where &&
                            ((m.kind == "mix-left-over" && found.kind.ends_with("-high")) ||
                             (m.kind == "mix-too-small" && found.kind.ends_with("-low")));
        const bool is_shown = std::any_of(m.notes.begin(), m.notes.end(), [&](const auto& n) {
            return n.where && overlap(*n.where, found.where);
        });
        if (is_why && !is_shown)
            m.notes.push_back(
                {fmt::format("{}; {}", found.message, found.notes.back().text), found.where});
    }
}

/// Where something graver is said of a line or of its component's amounts, that it is out of
/// proportion follows from it.
void add_proportions(const recipe::recipe& r, grammar::diagnostics& to) {
    grammar::diagnostics found;
    check_proportions(r, found);
    const line_places lines(r);
    const auto wrong = with_wrong_amounts(r, lines, to);
    const auto said = places_of(to);
    for (auto& m : found) {
        const auto of = lines.component_at(m.where);
        if (of && wrong[*of])
            explain_balance(m, r.components[*of], to);
        else if (!said.meets(m.where))
            to.push_back(std::move(m));
    }
}

} // namespace

grammar::diagnostics check(const recipe::recipe& r) {
    grammar::diagnostics messages;
    if (!r.has_product) return messages;
    check_balance(r, messages);
    check_demand(r, messages);
    check_pairs(r, messages);
    check_left_over(r, messages);
    check_order(r, messages);
    check_amounts(r, messages);
    check_neighbours(r, messages);
    add_measurable(r, messages);
    check_method(r, messages);
    check_heat(r, messages);
    check_tins(r, messages);
    add_proportions(r, messages);
    return messages;
}

} // namespace benchcard::checks
