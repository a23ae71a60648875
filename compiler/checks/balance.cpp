#include "compiler/checks/balance.hpp"

#include "compiler/checks/composition.hpp"
#include "compiler/checks/said.hpp"
#include "compiler/checks/slips.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

using grammar::severity;
using recipe::component;
using recipe::spread;

/// What is made may come out this much heavier than what goes in: figures are rounded when recipes
/// are written (common practice).
const exact may_lack = exact(1, 100);
/// What may stay over of a mix and is no slip: what clings to a bowl (common practice).
const exact may_stay = exact(3, 100);
/// Grams a millilitre: nothing that a kitchen mixes is lighter than a firm foam or heavier than a
/// thick syrup; and without egg, cream or fat to hold air nothing much lighter than water (common
/// practice).
const exact lightest = exact(1, 5), lightest_airless = exact(17, 20), heaviest = exact(3, 2);

/// Whether a mix may hold air.
bool may_be_airy(const component& c) {
    exact airy = 0;
    for (const auto& l : c.lines) {
        if (l.component) return true;
        for (const auto p : {part::egg, part::cream, part::fat, part::gelatine})
            airy += grams_in(l, p);
    }
    return airy * c.times * 20 > c.mix->used;
}

/// What a component says that it makes, in grams.
struct stated {
    spread grams;
    std::optional<spread> pieces, each;
    std::optional<exact> ml;
};

std::optional<spread> grams_of(const grammar::measure& m) {
    const auto unit = m.in ? measures::weight_of(*m.in) : std::nullopt;
    if (!unit) return std::nullopt;
    return recipe::spread_of(m.quantity) * unit->value;
}

std::optional<stated> stated_by(const component& c) {
    const auto& y = *c.makes;
    if (y.whole) {
        if (const auto grams = grams_of(*y.whole)) return stated{*grams, {}, {}, {}};
        if (!c.made.ml) return std::nullopt;
        const exact ml = *c.made.ml;
        const auto least = may_be_airy(c) ? lightest : lightest_airless;
        return stated{{ml * least, ml, ml * heaviest}, {}, {}, ml};
    }
    const auto each = y.each ? grams_of(*y.each) : std::nullopt;
    if (!y.count || !each) return std::nullopt;
    const auto pieces = recipe::spread_of(*y.count);
    return stated{{pieces.low * each->low, pieces.used * each->used, pieces.high * each->high},
                  pieces,
                  each,
                  {}};
}

std::string said_losses(const component& c) {
    std::string result;
    for (const auto& loss : c.losses)
        if (!recipe::is_after_portioning(loss))
            result +=
                fmt::format(", less {} % {}",
                            measures::in_decimals((loss.low_percent + loss.high_percent) / 2, 1),
                            loss.place.text);
    return result;
}

/// `40 rounds of 22 g`, `20 to 24 rounds of 22 g`
std::string said_pieces(const spread& pieces, const spread& each, const component& c) {
    return fmt::format(
        "{}{} of {}", pieces.low == pieces.high ? "" : measures::with_fraction(pieces.low) + " to ",
        in_pieces(pieces.high, c), in_grams(each));
}

class balancer {
  public:
    balancer(const component& c, stated wanted, grammar::diagnostics& to)
        : c_(c), wanted_(std::move(wanted)), to_(to) {}

    void run() {
        const auto& [low, used, high] = *c_.ready;
        const auto& w = wanted_.grams;
        const bool lacks = w.low > used * (1 + may_lack);
        // Certain, and not only as the measures happened to be filled.
        const bool stays = used - w.high > c_.mix->used * may_stay && low > w.high;
        if (lacks) say_lacking();
        if (stays) say_left();
    }

  private:
    const component& c_;
    stated wanted_;
    grammar::diagnostics& to_;

    std::string said_wanted(const exact& grams, std::string_view verb) const {
        if (wanted_.ml)
            return fmt::format("{} ml is to be made", measures::in_decimals(*wanted_.ml, 0));
        if (!wanted_.pieces) return fmt::format("{} is to be made", in_grams(grams));
        return fmt::format("{} {} {}", said_pieces(*wanted_.pieces, *wanted_.each, c_), verb,
                           in_grams(grams));
    }

    grammar::diagnostic message(std::string_view kind, severity level, const std::string& wanted) {
        return {
            kind,
            level,
            c_.makes_where,
            fmt::format("{}, and the mix gives {}", wanted, in_grams(c_.ready->used)),
            {{fmt::format("the ingredients weigh {}{}", in_grams(c_.mix->used), said_losses(c_)),
              {}}},
            {}};
    }

    void say_lacking() {
        const bool may_be_enough = wanted_.grams.low <= c_.ready->high * (1 + may_lack);
        auto m = message("mix-too-small", may_be_enough ? severity::warning : severity::error,
                         said_wanted(wanted_.grams.low, "need"));
        if (may_be_enough)
            m.notes.push_back(
                {fmt::format("it may be enough: as the measures are filled, the mix gives {} to {}",
                             in_grams(c_.ready->low), in_grams(c_.ready->high)),
                 {}});
        add_what_it_makes(m);
        add_slips(m);
        to_.push_back(std::move(m));
    }

    void say_left() {
        auto m =
            message("mix-left-over", severity::warning, said_wanted(wanted_.grams.high, "take"));
        const exact left = c_.ready->used - wanted_.grams.high;
        const exact share = left / c_.mix->used;
        if (!wanted_.ml)
            m.notes.push_back({fmt::format("{} stay over, {} of the mix: more than the 3 % that "
                                           "may stay in a bowl (common practice)",
                                           in_grams(left), in_percent(share)),
                               {}});
        add_what_it_makes(m);
        const bool is_explained = add_oven(m);
        add_slips(m);
        add_heavy_lines(m);
        const exact largest_loss = exact(1, 4);
        if (!wanted_.ml && !is_explained && share <= largest_loss)
            m.helps.push_back({fmt::format("if it is lost on the way, say so: `loss: {}% in the "
                                           "bowl`",
                                           measures::in_decimals(share * 100, 0)),
                               {}});
        to_.push_back(std::move(m));
    }

    /// How many of that size, or how large of that number; how heavy a millilitre would be.
    void add_what_it_makes(grammar::diagnostic& m) const {
        const auto ready = c_.ready->used;
        if (wanted_.ml) {
            m.notes.push_back(
                {fmt::format("that is {} g a ml, and {} (common practice)",
                             measures::in_decimals(ready / *wanted_.ml, 2),
                             may_be_airy(c_) ? "what kitchens mix weighs 0.2 to 1.5 g a ml"
                                             : "what holds no air weighs 0.85 to 1.5 g a ml"),
                 {}});
            return;
        }
        if (!wanted_.pieces) return;
        const auto whole = measures::whole_part(ready / wanted_.each->used);
        const auto each = measures::whole_part(ready / wanted_.pieces->used);
        m.notes.push_back(
            {fmt::format("{} make {} of {}, or {} of {}", in_grams(ready), in_pieces(whole, c_),
                         in_grams(wanted_.each->used),
                         measures::in_decimals(wanted_.pieces->used, 1), in_grams(each)),
             {}});
    }

    /// A piece's weight may have been given as it leaves the oven. Whether that explains it.
    bool add_oven(grammar::diagnostic& m) const {
        exact baked = c_.ready->used;
        for (const auto& l : c_.losses)
            if (recipe::is_after_portioning(l)) baked *= recipe::kept_after(l).used;
        const auto& w = wanted_.grams;
        const bool explains = baked < c_.ready->used && baked >= w.low * (1 - may_stay) &&
                              baked <= w.high * (1 + may_stay);
        if (!explains) return false;
        m.notes.push_back({fmt::format("{} of it leave the oven, and `makes:` is what goes in: "
                                       "pieces as they are portioned",
                                       in_grams(baked)),
                           {}});
        return true;
    }

    void add_slips(grammar::diagnostic& m) const {
        const auto& w = wanted_.grams;
        const balance_wanted wanted{w.low, w.high, w.high * (1 + may_stay)};
        for (const auto& s : closing_slips(amounts_of(c_), c_.ready->used, wanted)) {
            const auto text =
                fmt::format("if {} {}, it would add up: {} {}, and the mix gives {}",
                            s.meant.in ? "this were" : "these were", said(s.meant),
                            in_grams(s.more < 0 ? exact(-s.more) : s.more),
                            s.more < 0 ? "less" : "more", in_grams(c_.ready->used + s.more));
            m.notes.push_back({text, amount_place(c_.lines[s.line])});
        }
        if (!wanted_.ml && !c_.per) add_slip_of_yield(m);
    }

    /// A slip that gave too much stands in a line that weighs at least what is too much.
    void add_heavy_lines(grammar::diagnostic& m) const {
        const exact left = c_.ready->used - wanted_.grams.high * (1 + may_stay);
        const exact kept = c_.ready->used / c_.mix->used * c_.times;
        std::vector<grammar::span> heavy;
        for (const auto& l : c_.lines)
            if (l.grams && !l.some && l.grams->used * kept >= left)
                heavy.push_back(amount_place(l));
        constexpr std::size_t few = 2;
        const auto is_said = [&](grammar::span place) {
            return std::any_of(m.notes.begin(), m.notes.end(),
                               [&](const auto& n) { return n.where == place; });
        };
        if (heavy.size() > few || c_.lines.size() <= few) return;
        if (std::any_of(heavy.begin(), heavy.end(), is_said)) return;
        for (const auto place : heavy)
            m.notes.push_back({fmt::format("this weighs as much as is too much, and {} other line "
                                           "does",
                                           heavy.size() == 1 ? "no" : "only one"),
                               place});
    }

    /// `if this were 80 rounds of 22 g, …`: what is made may be the figure that is wrong.
    void add_slip_of_yield(grammar::diagnostic& m) const {
        const auto say = [&](const std::string& meant, const exact& grams) {
            m.notes.push_back({fmt::format("if this were {}, it would add up: {} to be made", meant,
                                           in_grams(grams)),
                               {}});
        };
        const auto& y = *c_.makes;
        if (y.whole) {
            if (const auto s = yield_meant({y.whole->quantity.low, y.whole->in}))
                say(said(s->meant), s->grams);
            return;
        }
        if (const auto s = yield_meant({y.count->low, {}}))
            say(said_pieces(spread::of(s->meant.number), *wanted_.each, c_), s->grams);
        else if (const auto one = yield_meant({y.each->quantity.low, y.each->in}))
            say(fmt::format("{} of {}", in_pieces(wanted_.pieces->used, c_), said(one->meant)),
                one->grams);
    }

    struct meant_yield {
        amount_written meant;
        exact grams;
        exact off;
    };

    /// The nearest common slip, or doubling, in a figure of the yield that would close the balance.
    std::optional<meant_yield> yield_meant(const amount_written& written) const {
        std::optional<meant_yield> best;
        if (wanted_.grams.low != wanted_.grams.high) return best;
        const exact ready = c_.ready->used;
        for (const auto& s : slips_in(written)) {
            const bool is_likely = s.is <= likelihood::common ||
                                   s.meant.number == written.number * 2 ||
                                   s.meant.number * 2 == written.number;
            if (!is_likely || (!written.in && s.meant.number < 1)) continue;
            exact factor = s.meant.number / written.number;
            if (written.in)
                factor *= measures::weight_of(*s.meant.in)->value /
                          measures::weight_of(*written.in)->value;
            const exact grams = wanted_.grams.used * factor;
            const exact off = grams > ready ? exact(grams - ready) : exact(ready - grams);
            const bool fits = grams <= ready * (1 + may_lack) && ready <= grams * (1 + may_stay);
            if (fits && (!best || off < best->off)) best = meant_yield{s.meant, grams, off};
        }
        return best;
    }
};

/// `makes: loaves of 800 g` of a mix of 500 g.
void say_not_one(const component& c, grammar::diagnostics& to) {
    to.push_back({"mix-too-small",
                  severity::error,
                  c.makes_where,
                  fmt::format("one {} of {} is more than the whole mix, {}", c.made.piece,
                              in_grams(c.made.each->used), in_grams(c.ready->used)),
                  {},
                  {}});
}

} // namespace

void check_balance(const recipe::recipe& r, grammar::diagnostics& to) {
    for (const auto& c : r.components) {
        if (!c.makes || !c.mix || !c.ready) continue;
        const bool counts_itself = c.makes->each && !c.makes->count;
        if (counts_itself && c.made.each && !c.made.pieces) say_not_one(c, to);
        if (auto wanted = stated_by(c)) balancer(c, std::move(*wanted), to).run();
    }
}

yield_places unbalanced_places(const grammar::diagnostics& messages) {
    yield_places result;
    for (const auto& m : messages)
        if (m.kind == "mix-too-small" || m.kind == "mix-left-over")
            result.emplace(m.where.file, m.where.begin);
    return result;
}

bool is_out_of_balance(const component& c, const yield_places& places) {
    return places.contains({c.makes_where.file, c.makes_where.begin});
}

} // namespace benchcard::checks
