#include "compiler/recipe/demand.hpp"
#include "compiler/checks/checks.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;
using recipe::component;
using recipe::demand;

/// `2 cases each, 2 times: 4 cases`
std::string said_use(const recipe::recipe& r, const demand::user& u, const component& used) {
    const auto& by = r.components[u.component];
    const auto amount = u.pieces  ? in_pieces(*u.pieces, used)
                        : u.grams ? in_grams(*u.grams)
                                  : fmt::format("{} of it", measures::with_fraction(*u.share));
    auto result = fmt::format("{} uses {}", by.title, amount);
    if (by.times != 1 && u.pieces)
        result += fmt::format(" ({} times {})", measures::with_fraction(by.times),
                              in_pieces(*u.pieces / by.times, used));
    else if (by.times != 1 && u.grams)
        result += fmt::format(" ({} times {})", measures::with_fraction(by.times),
                              in_grams(*u.grams / by.times));
    return result;
}

/// How much more may be asked for than is made before it is an error: rounding (common practice).
const exact demand_tolerance = exact(1, 100);

void check_one(const recipe::recipe& r, std::size_t index, const demand& d,
               grammar::diagnostics& to) {
    const auto& c = r.components[index];
    const bool short_of_pieces = d.left_pieces && *d.left_pieces < 0;
    const bool short_of_grams =
        !d.left_pieces && d.left_grams && *d.left_grams < -demand_tolerance * *d.made_grams;
    if (!short_of_pieces && !short_of_grams) return;
    const auto& last = d.users.back();
    const auto& line = r.components[last.component].lines[last.line];
    const auto wanted = short_of_pieces ? in_pieces(*d.pieces, c) : in_grams(*d.grams);
    const auto made = short_of_pieces ? in_pieces(*d.made_pieces, c) : in_grams(*d.made_grams);
    grammar::diagnostic message{"demand-exceeds-yield",
                                severity::error,
                                line.where,
                                fmt::format("{} of {} wanted, and {} made", wanted, c.title,
                                            made + (short_of_pieces && *d.made_pieces == 1 ? " is"
                                                    : short_of_pieces                      ? " are"
                                                                      : " is")),
                                {},
                                {}};
    for (const auto& u : d.users)
        message.notes.push_back({said_use(r, u, c), r.components[u.component].lines[u.line].where});
    if (c.makes)
        message.notes.push_back({fmt::format("{} makes {}", c.title, made), c.makes_where});
    for (const auto& u : d.users) add_number_made(r.components[u.component], message);
    const auto factor = short_of_pieces ? *d.pieces / *d.made_pieces : *d.grams / *d.made_grams;
    message.helps.push_back({fmt::format("make {} times as much {}, or use less",
                                         measures::in_decimals(factor, 2), c.title),
                             {}});
    to.push_back(std::move(message));
}

/// Whether a line that could not be read names a component.
bool may_be_used(const recipe::recipe& r, const component& c) {
    return std::any_of(r.components.begin(), r.components.end(), [&](const auto& by) {
        return std::any_of(by.unread.begin(), by.unread.end(),
                           [&](const auto& line) { return line.find(c.title) != line.npos; });
    });
}

} // namespace

void check_demand(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto demands = recipe::demands_of(r);
    for (std::size_t i = 0; i < demands.size(); ++i) {
        const auto& c = r.components[i];
        if (!demands[i].users.empty())
            check_one(r, i, demands[i], to);
        else if (i + 1 < demands.size() && r.product().is_assembly && !may_be_used(r, c))
            to.push_back({"unused-component",
                          severity::warning,
                          c.written->title.where,
                          fmt::format("no other part uses {}", c.title),
                          {},
                          {{fmt::format("use it in {}, or take it out", r.product().title), {}}}});
    }
}

} // namespace benchcard::checks
