#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/scope.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::recipe {

spread kept_after(const grammar::loss& l) {
    const auto kept = [](const exact& percent) { return exact(1 - percent / 100); };
    return {kept(l.high_percent), kept((l.low_percent + l.high_percent) / 2), kept(l.low_percent)};
}

bool is_after_portioning(const grammar::loss& l) {
    constexpr std::string_view words[] = {"oven",    "bake",    "baking",   "frying",
                                          "fryer",   "cooling", "tin",      "roasting",
                                          "griddle", "grill",   "hotplate", "steamer"};
    for (const auto& said : ingredients::compared_words(l.place.text))
        if (std::find(std::begin(words), std::end(words), said) != std::end(words)) return true;
    return false;
}

namespace {

/// `rounds` is the piece `round`; of several words the last is the piece: `large buns`.
std::string one_piece(const std::string& written) {
    const auto space = written.rfind(' ');
    const auto first = space == written.npos ? 0 : space + 1;
    return written.substr(0, first) + ingredients::singular(written.substr(first));
}

class yield_worker {
  public:
    yield_worker(recipe& r, grammar::diagnostics& to) : recipe_(r), to_(to) {}

    void run() {
        for (auto& c : recipe_.components) {
            for (auto& l : c.lines)
                if (l.component) weigh_component_line(l);
            add_up(c);
            make(c);
        }
    }

  private:
    recipe& recipe_;
    grammar::diagnostics& to_;

    void weigh_component_line(line& l) {
        // What is baked before it is used weighs what is left of it.
        const auto& used = recipe_.components[*l.component];
        if (l.share) {
            if (used.baked) l.grams = *used.baked * *l.share;
            return;
        }
        if (l.grams || l.some) return;
        if (l.ml) {
            if (used.made.ml && used.baked)
                l.grams = *used.baked * exact(l.ml->used / *used.made.ml);
            return;
        }
        if (!l.count) return;
        if (!piece_fits(l, used)) return;
        if (!used.made.each || !used.made.grams || !used.baked) return;
        l.grams =
            times(*l.count, *used.made.each) * exact(used.baked->used / used.made.grams->used);
    }

    bool piece_fits(line& l, const component& used) {
        const auto wanted = ingredients::compared_name(l.description);
        const bool is_in_pieces = !used.made.piece.empty();
        if (wanted.empty() && !is_in_pieces) return true; // `1 Custard` is the whole of it
        const auto piece = ingredients::compared_name(used.made.piece);
        if (is_in_pieces && (wanted.empty() || wanted == piece)) return true;
        if (used.weight_unread && !used.makes) { // what it makes may stand in an unread line
            l.count.reset();
            return false;
        }
        auto message =
            error_at("unknown-piece", l.written->names.front().where,
                     is_in_pieces ? fmt::format("{} makes {}, not {}", used.title,
                                                ingredients::plural(used.made.piece),
                                                ingredients::plural(l.description))
                                  : fmt::format("{} does not say that it makes {}", used.title,
                                                ingredients::plural(l.description)));
        if (used.makes)
            message.notes.push_back({"this is what it makes", used.makes_where});
        else
            message.helps.push_back({fmt::format("say how many in {}: `makes: 40 {}`", used.title,
                                                 ingredients::plural(l.description)),
                                     {}});
        to_.push_back(std::move(message));
        l.count.reset();
        return false;
    }

    void add_up(component& c) {
        spread total;
        for (const auto& l : c.lines) {
            if (l.some) continue;
            if (!l.grams) return; // one unknown weight, and the whole is not known
            total += *l.grams;
        }
        if (c.lines.empty() || c.weight_unread) return;
        c.mix = total * c.times;
        c.ready = c.mix;
        for (const auto& loss : c.losses)
            if (!is_after_portioning(loss)) c.ready = times(*c.ready, kept_after(loss));
    }

    void make(component& c) {
        if (c.makes)
            make_as_stated(c, *c.makes);
        else
            c.made.grams = c.ready;
        c.baked = c.made.grams;
        if (c.baked)
            for (const auto& loss : c.losses)
                if (is_after_portioning(loss)) c.baked = times(*c.baked, kept_after(loss));
    }

    void make_as_stated(component& c, const grammar::yield& y) {
        if (y.whole) return make_whole(c, *y.whole);
        c.made.piece = y.piece ? one_piece(y.piece->text) : "piece";
        if (y.each) c.made.each = weight_of_piece(*y.each);
        if (y.count) c.made.pieces = spread_of(*y.count);
        if (c.made.pieces && c.made.each) {
            settle_ranges(c);
            c.made.grams = times(*c.made.pieces, *c.made.each);
        } else if (c.made.pieces && c.ready) {
            c.made.grams = c.ready;
            c.made.each =
                spread{c.ready->low / c.made.pieces->high, c.ready->used / c.made.pieces->used,
                       c.ready->high / c.made.pieces->low};
        } else if (c.made.each && c.ready) {
            count_pieces(c);
        }
    }

    std::optional<spread> weight_of_piece(const grammar::measure& m) {
        const auto unit = measures::weight_of(*m.in);
        if (unit) return spread_of(m.quantity) * unit->value;
        to_.push_back(error_at("piece-not-by-weight", m.where,
                               "what a piece weighs is given in g, kg, oz or lb"));
        return std::nullopt;
    }

    /// Of `40 rounds of 20-22 g` the middle is reckoned with, or less where the mix gives less:
    /// smaller pieces first, then fewer of them.
    static void settle_ranges(component& c) {
        if (!c.ready) return;
        auto& pieces = *c.made.pieces;
        auto& each = *c.made.each;
        const exact gives = c.ready->used;
        if (pieces.used * each.used > gives)
            each.used = std::max(each.low, exact(gives / pieces.used));
        if (pieces.used * each.used > gives)
            pieces.used = std::max(pieces.low, exact(measures::whole_part(gives / each.used)));
    }

    /// As many whole pieces as the mix gives.
    void count_pieces(component& c) {
        const auto whole = [](const exact& v) { return measures::whole_part(v); };
        c.made.pieces = spread{whole(c.ready->low / c.made.each->high),
                               whole(c.ready->used / c.made.each->used),
                               whole(c.ready->high / c.made.each->low)};
        c.made.grams = *c.made.each * c.made.pieces->used;
        if (c.made.pieces->used < 1) c.made.pieces.reset(), c.made.grams.reset();
    }

    void make_whole(component& c, const grammar::measure& whole) {
        if (const auto unit = measures::weight_of(*whole.in)) {
            c.made.grams = spread_of(whole.quantity) * unit->value;
            return;
        }
        c.made.grams = c.ready;
        if (const auto unit = measures::volume_of(*whole.in, recipe_.measures))
            c.made.ml = spread_of(whole.quantity).used * unit->value;
        else
            to_.push_back(error_at(
                "unsettled-measure", whole.where,
                fmt::format("whose {} is meant is not said", grammar::short_name(*whole.in))));
    }
};

} // namespace

void work_out_yields(recipe& r, grammar::diagnostics& to) { yield_worker(r, to).run(); }

} // namespace benchcard::recipe
