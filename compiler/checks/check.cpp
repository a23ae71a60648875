#include "compiler/checks/balance.hpp"
#include "compiler/checks/checks.hpp"
#include "compiler/checks/graph.hpp"
#include "compiler/checks/method.hpp"
#include "compiler/checks/neighbours.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

bool overlap(grammar::span a, grammar::span b) {
    return a.file == b.file && a.begin < b.end && b.begin < a.end;
}

bool has_line_at(const recipe::component& c, grammar::span where) {
    return std::any_of(c.lines.begin(), c.lines.end(),
                       [&](const auto& l) { return overlap(l.where, where); });
}

/// Whether a component's amounts are known to be wrong: a line of it is not known, the mix does not
/// add up, or one of them is out of all scale.
bool has_wrong_amounts(const recipe::component& c, const grammar::diagnostics& messages) {
    return c.weight_unread || is_out_of_balance(c, messages) ||
           std::any_of(messages.begin(), messages.end(), [&](const auto& m) {
               return m.kind == "out-of-scale" && has_line_at(c, m.where);
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
        if (is_why && !is_shown && has_line_at(c, found.where))
            m.notes.push_back(
                {fmt::format("{}; {}", found.message, found.notes.back().text), found.where});
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
        const auto of = std::find_if(r.components.begin(), r.components.end(), [&](const auto& c) {
            return has_line_at(c, m.where) && has_wrong_amounts(c, before);
        });
        if (of != r.components.end())
            explain_balance(m, *of, to);
        else if (!is_said)
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
