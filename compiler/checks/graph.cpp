#include "compiler/checks/graph.hpp"

#include "compiler/checks/said.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/demand.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using recipe::component;

/// Of more than this to a product, a few spare ones are made on purpose (common practice).
constexpr int most_in_a_set = 4;

/// How many pieces go into one product of the component that uses them; nothing where they are not
/// counted so.
std::optional<exact> pieces_a_product(const component& by, const exact& used_in_all) {
    if (!by.made.pieces || by.made.pieces->used <= 0) return std::nullopt;
    return exact(used_in_all / by.made.pieces->used);
}

void check_one(const recipe::recipe& r, const component& c, const recipe::demand& d,
               grammar::diagnostics& to) {
    const bool is_stated = c.makes && c.makes->count;
    if (!is_stated || d.users.size() != 1 || !d.pieces || !d.left_pieces) return;
    const auto& by = r.components[d.users.front().component];
    const auto set = pieces_a_product(by, *d.pieces);
    const bool goes_by_sets =
        set && *set == measures::whole_part(*set) && *set >= 2 && *set <= most_in_a_set;
    if (!goes_by_sets || *d.left_pieces <= 0 || *d.left_pieces >= *set) return;
    const auto& line = by.lines[d.users.front().line];
    const auto product = ingredients::plural(by.made.piece);
    grammar::diagnostic message{"odd-piece-left",
                                grammar::severity::hint,
                                c.makes_where,
                                fmt::format("{} stay over, too few for one more {}",
                                            in_pieces(*d.left_pieces, c), by.made.piece),
                                {},
                                {}};
    if (*d.left_pieces == 1)
        message.message =
            fmt::format("one {} stays over, too few for one more {}", c.made.piece, by.made.piece);
    message.notes.push_back(
        {fmt::format("{} {} take {} each: {} of {}", measures::with_fraction(by.made.pieces->used),
                     product, in_pieces(*set, c), measures::with_fraction(*d.pieces),
                     in_pieces(*d.made_pieces, c)),
         line.where});
    message.helps.push_back(
        {fmt::format("make {}, or {}", in_pieces(*d.pieces, c), in_pieces(*d.pieces + *set, c)),
         {}});
    to.push_back(std::move(message));
}

/// What may stay over of a component that is made for this recipe alone (common practice).
const exact may_be_over = exact(2, 5);

/// A component of this very file, of which far more is made than its recipe uses.
void check_left(const recipe::recipe& r, const component& c, const recipe::demand& d,
                grammar::diagnostics& to) {
    const auto own_file = r.product().written->where.file;
    if (d.users.empty() || c.whole_batch || c.written->where.file != own_file) return;
    const auto is_by_share = [&](const auto& u) {
        return r.components[u.component].lines[u.line].share.has_value();
    };
    if (std::any_of(d.users.begin(), d.users.end(), is_by_share)) return; // `half Cream` is meant
    const bool in_pieces = d.left_pieces && d.made_pieces;
    if (!in_pieces && !(d.left_grams && d.made_grams)) return;
    const exact made = in_pieces ? *d.made_pieces : *d.made_grams;
    const exact left = in_pieces ? *d.left_pieces : *d.left_grams;
    if (made <= 0 || left <= made * may_be_over) return;
    const auto said = [&](const exact& amount) {
        return in_pieces ? checks::in_pieces(amount, c) : in_grams(amount);
    };
    const auto& last = d.users.back();
    grammar::diagnostic message{
        "much-left-over",
        grammar::severity::hint,
        amount_place(r.components[last.component].lines[last.line]),
        fmt::format("{} of {} are used, and {} made", said(made - left), c.title, said(made)),
        {},
        {}};
    message.notes.push_back(
        {fmt::format("{} stay over, {} of it", said(left), in_percent(left / made)),
         c.makes ? std::optional(c.makes_where) : std::nullopt});
    for (const auto& u : d.users) add_number_made(r.components[u.component], message);
    message.helps.push_back(
        {fmt::format("if it is meant so, say why: `accept: much-left-over, …` in {}",
                     r.components[last.component].title),
         {}});
    to.push_back(std::move(message));
}

/// A line of one component that uses another which is written below it in the same file.
void say_made_below(const recipe::line& l, const component& used, grammar::diagnostics& to) {
    to.push_back({"used-before-made",
                  grammar::severity::hint,
                  l.where,
                  fmt::format("{} is used here, and it is made further down", used.title),
                  {{"it is made here; the cards come in the order of making all the same",
                    used.written->title.where}},
                  {{"put what is made first above, for those who read from the top", {}}}});
}

} // namespace

void check_pairs(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto demands = recipe::demands_of(r);
    for (std::size_t i = 0; i < demands.size(); ++i) check_one(r, r.components[i], demands[i], to);
}

void check_left_over(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto demands = recipe::demands_of(r);
    for (std::size_t i = 0; i < demands.size(); ++i) check_left(r, r.components[i], demands[i], to);
}

void check_order(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components)
        for (const auto& l : c.lines) {
            if (!l.component || c.is_assembly) continue; // that it stands last is asked elsewhere
            const auto& used = r.components[*l.component];
            const auto there = used.written->title.where;
            if (there.file == l.where.file && there.begin > l.where.begin)
                say_made_below(l, used, to);
        }
}

} // namespace benchcard::checks
