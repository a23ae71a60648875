#include "compiler/checks/balance.hpp"
#include "compiler/checks/checks.hpp"
#include "compiler/checks/graph.hpp"
#include "compiler/checks/method.hpp"
#include "compiler/checks/neighbours.hpp"

#include <algorithm>

namespace benchcard::checks {

namespace {

bool overlap(grammar::span a, grammar::span b) {
    return a.file == b.file && a.begin < b.end && b.begin < a.end;
}

/// Whether a component's amounts are known to be wrong: a line of it is not known, the mix does not
/// add up, or one of them is out of all scale.
bool has_wrong_amounts(const recipe::component& c, const grammar::diagnostics& messages) {
    return c.weight_unread || is_out_of_balance(c, messages) ||
           std::any_of(messages.begin(), messages.end(), [&](const auto& m) {
               return m.kind == "out-of-scale" &&
                      std::any_of(c.lines.begin(), c.lines.end(),
                                  [&](const auto& l) { return overlap(l.where, m.where); });
           });
}

/// What a scale cannot show is no matter of its own where the amount is wrong altogether.
void add_measurable(const recipe::recipe& r, grammar::diagnostics& to) {
    grammar::diagnostics found;
    check_measurable(r, found);
    const auto before = to;
    for (auto& m : found) {
        const bool is_said = std::any_of(before.begin(), before.end(), [&](const auto& o) {
            return o.kind == "out-of-scale" && overlap(o.where, m.where);
        });
        if (!is_said) to.push_back(std::move(m));
    }
}

/// Where something graver is said of a line or of its component's amounts, that it is out of
/// proportion follows from it.
void add_proportions(const recipe::recipe& r, grammar::diagnostics& to) {
    grammar::diagnostics found;
    check_proportions(r, found);
    const auto before = to;
    for (auto& m : found) {
        const bool is_said = std::any_of(before.begin(), before.end(),
                                         [&](const auto& o) { return overlap(o.where, m.where); });
        const bool follows =
            std::any_of(r.components.begin(), r.components.end(), [&](const auto& c) {
                return std::any_of(c.lines.begin(), c.lines.end(),
                                   [&](const auto& l) { return overlap(l.where, m.where); }) &&
                       has_wrong_amounts(c, before);
            });
        if (!is_said && !follows) to.push_back(std::move(m));
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
    check_amounts(r, messages);
    check_neighbours(r, messages);
    add_measurable(r, messages);
    check_method(r, messages);
    check_tins(r, messages);
    add_proportions(r, messages);
    return messages;
}

} // namespace benchcard::checks
