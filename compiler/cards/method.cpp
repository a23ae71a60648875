#include "compiler/cards/method.hpp"

#include "compiler/cards/counted_name.hpp"
#include "compiler/cards/figures.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/duration.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/ranges.hpp"
#include "compiler/measures/temperatures.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

using styles::paragraph;

std::string said_time(const grammar::duration& d) {
    return d.overnight ? "overnight" : measures::shown_duration(d.low_minutes, d.high_minutes);
}

std::string said_heat(const recipe::heat_use& h) {
    using grammar::oven_scale;
    if (!h.is_oven) {
        const auto read = measures::thermometer(h.low, h.high, h.scale);
        return h.scale == oven_scale::fahrenheit
                   ? fmt::format("{} ({})", read.fahrenheit, read.celsius)
                   : fmt::format("{} ({})", read.celsius, read.fahrenheit);
    }
    const auto dial = measures::dial_settings(h.low, h.high, h.scale);
    switch (h.scale) {
    case oven_scale::celsius:
        return dial.celsius;
    case oven_scale::fan_celsius:
        return dial.fan + " fan";
    case oven_scale::fahrenheit:
        return dial.fahrenheit;
    case oven_scale::gas_mark:
        return "gas " + dial.gas;
    }
    return "";
}

std::string said_length(const grammar::length& l) {
    const auto size = measures::shown_length(l.sides, l.in);
    return l.shape.empty() ? size : size + " " + l.shape;
}

class method_writer {
  public:
    enum class amounts { shown, left_out };

    method_writer(const batch::component_batch& c, const batch::batch& b, amounts how)
        : c_(c), b_(b), shown_(c.lines.size()), shares_(c.lines.size()) {
        for (const auto& l : c.lines) lines_.push_back(batch::weigh_line(l));
        // Amounts given `per:` one piece are used so in the steps, whatever the batch.
        const auto& per = c.of->per;
        per_piece_ = per && per->count && c.times != c.each;
        if (per_piece_)
            for (auto& l : lines_) l = part_of(l, c.each / c.times);
        // What goes into one piece is the same in every batch.
        names_only_ = how == amounts::left_out && !per_piece_;
    }

    std::vector<paragraph> run() {
        std::vector<paragraph> result;
        std::string station = c_.of->station;
        for (const auto& s : c_.of->steps) {
            paragraph p;
            if (s.station != station) p.push_back({s.station + ": ", true});
            if (per_piece_ && gives_amounts(s)) p.push_back({said_per(), true});
            station = s.station;
            for (const auto& part : s.parts) add(p, part);
            result.push_back(std::move(p));
        }
        return result;
    }

  private:
    const batch::component_batch& c_;
    const batch::batch& b_;
    std::vector<batch::weigh_line> lines_;
    std::vector<exact> shown_;  ///< of each line, the grams the steps have shown so far
    std::vector<exact> shares_; ///< of each line, the share the steps have used so far
    bool per_piece_ = false, names_only_ = false;

    /// Whether a step says how much of something: only there it matters what that is for.
    bool gives_amounts(const recipe::step& s) const {
        return std::any_of(s.parts.begin(), s.parts.end(), [&](const auto& part) {
            const auto* u = std::get_if<recipe::use>(&part);
            const auto* l = u ? std::get_if<recipe::line_use>(u) : nullptr;
            return (l && l->share && !lines_[l->line].of->some) ||
                   (u && std::holds_alternative<recipe::rest_use>(*u));
        });
    }

    std::string said_per() const {
        const auto& per = *c_.of->per;
        const auto number = recipe::spread_of(*per.count).used;
        const auto piece = per.piece ? per.piece->text : "piece";
        return number == 1
                   ? fmt::format("For each {}: ", piece)
                   : fmt::format("For every {} {}: ", measures::with_fraction(number), piece);
    }

    void add(paragraph& p, const std::variant<std::string, recipe::use>& part) {
        if (const auto* text = std::get_if<std::string>(&part)) {
            p.push_back({*text, false});
            return;
        }
        std::visit([&](const auto& u) { add_use(p, u); }, std::get<recipe::use>(part));
    }

    void add_use(paragraph& p, const recipe::line_use& u) {
        if (!u.share) return p.push_back({u.said, false});
        if (names_only_) return p.push_back({without_amount(u), true});
        const bool had_none = shares_[u.line] == 0;
        const auto amount = said_share(u);
        if (amount.empty())
            p.push_back({u.said, true});
        else if (u.is_rest && !had_none)
            p.push_back({fmt::format("the rest of the {}, {}", u.said, amount), true});
        else
            p.push_back({named(amount, u.said, part_of(lines_[u.line], *u.share)), true});
    }

    /// `butter`, `half of the butter`, `the rest of the butter`
    static std::string without_amount(const recipe::line_use& u) {
        if (!u.is_part) return u.said;
        if (u.is_rest) return "the rest of the " + u.said;
        if (*u.share == exact(1, 2)) return "half of the " + u.said;
        const exact percent = *u.share * 100;
        const bool is_cut_simply = *u.share * 12 == measures::whole_part(*u.share * 12);
        return fmt::format("{} of the {}",
                           is_cut_simply ? measures::with_fraction(*u.share)
                                         : measures::in_decimals(percent, 0) + " %",
                           u.said);
    }

    /// `butter 180 g`, but `4 eggs` and `1 case Sweet pastry`.
    std::string named(const std::string& amount, const std::string& name,
                      const batch::weigh_line& l) const {
        if (l.of->component && how_given(l) == given::counted && is_named_by_piece(name, l))
            return fmt::format("{} {}", measures::with_fraction(l.count->used),
                               in_number(name, l.count->used > 1));
        if (how_given(l) != given::counted) return fmt::format("{} {}", name, amount);
        const auto rest = rest_of(l, *b_.of);
        if (rest.empty()) return fmt::format("{} {}", amount, counted_name(l, name));
        const auto number = figures_of(l, *b_.of);
        const auto counted =
            number.unit.empty() ? number.amount : number.amount + " " + number.unit;
        return fmt::format("{} {} + {}", counted, counted_name(l, name), rest);
    }

    /// `1 Tartlet case` of `Tartlet cases`, not `1 case Tartlet cases`.
    bool is_named_by_piece(const std::string& name, const batch::weigh_line& l) const {
        const auto& piece = b_.of->components[*l.of->component].made.piece;
        const auto words = ingredients::compared_words(name);
        return !l.of->description.empty() && l.low_part == l.high_part && words.size() > 1 &&
               words.back() == ingredients::compared_name(piece);
    }

    /// The amount of a part. The part that completes a line shows what the rounding of the others
    /// has left, so that the parts add up to the weigh-out.
    std::string said_share(const recipe::line_use& u) {
        const auto& l = lines_[u.line];
        auto& so_far = shown_[u.line];
        shares_[u.line] += *u.share;
        const auto as_shared = said_by_piece(part_of(l, *u.share));
        if (!u.is_part || how_given(l) != given::weighed || l.low_part != l.high_part) {
            so_far += *u.share;
            return as_shared;
        }
        const auto part = shares_[u.line] == 1 ? exact(as_on_a_scale(l.grams->used) - so_far)
                                               : as_on_a_scale(l.grams->used * *u.share);
        if (part <= 0)
            return as_shared; // what is too little for the others' rounding to leave it any
        so_far += part;
        return part < 10000 ? measures::in_decimals(part, 3) + " g"
                            : measures::in_decimals(part / 1000, 3) + " kg";
    }

    /// What is too little for a scale, a piece at a time, is spooned: `½ tsp`, not `1.3 g`.
    std::string said_by_piece(const batch::weigh_line& l) const {
        constexpr int lightest_to_weigh = 5; // grams
        if (per_piece_ && how_given(l) == given::weighed && l.grams->used < lightest_to_weigh) {
            const auto spoons = figures_of(l, *b_.of).spoons;
            if (!spoons.empty() && !spoons.starts_with("about")) return spoons;
        }
        return said(l, *b_.of);
    }

    /// Grams rounded as the scale of the house shows them.
    exact as_on_a_scale(const exact& grams) const {
        return measures::grams_shown(grams, b_.of->scale_step);
    }

    void add_use(paragraph& p, const recipe::rest_use& u) {
        for (std::size_t i = 0; i < u.lines.size(); ++i) {
            if (i > 0) p.push_back({i + 1 == u.lines.size() ? " and " : ", ", false});
            const auto& l = lines_[u.lines[i]];
            const auto amount = names_only_ ? std::string() : said(l, *b_.of);
            const auto name =
                l.of->component ? b_.of->components[*l.of->component].title : l.of->name;
            p.push_back({amount.empty() ? name : named(amount, name, l), true});
        }
    }

    void add_use(paragraph& p, const recipe::heat_use& u) { p.push_back({said_heat(u), true}); }
    void add_use(paragraph& p, const recipe::time_use& u) {
        p.push_back({said_time(u.time), true});
    }
    void add_use(paragraph& p, const recipe::length_use& u) {
        p.push_back({said_length(u.size), true});
    }

    void add_use(paragraph& p, const recipe::portion_use& u) {
        if (names_only_ && u.total) return p.push_back({"its share", true});
        const auto number = recipe::spread_of(u.of.quantity) * (u.total ? c_.factor : c_.each);
        const auto range = [&](auto show) {
            const auto low = show(number.low), high = show(number.high);
            return low.unit == high.unit
                       ? measures::range_of(low.figure, high.figure, " " + high.unit)
                       : low.figure + " " + low.unit + " – " + high.figure + " " + high.unit;
        };
        if (!u.of.in) return p.push_back({measures::with_fraction(number.used), true});
        if (const auto unit = measures::weight_of(*u.of.in))
            return p.push_back(
                {range([&](const exact& v) { return measures::on_a_scale({v * unit->value}); }),
                 true});
        if (const auto unit = measures::volume_of(*u.of.in, b_.of->measures))
            return p.push_back(
                {range([&](const exact& v) { return measures::in_a_jug({v * unit->value}); }),
                 true});
        p.push_back({fmt::format("{} {}", measures::with_fraction(number.used),
                                 grammar::short_name(*u.of.in)),
                     true});
    }
};

} // namespace

std::vector<paragraph> method_of(const batch::component_batch& c, const batch::batch& b) {
    return method_writer(c, b, method_writer::amounts::shown).run();
}

std::vector<paragraph> method_of_any(const batch::component_batch& c, const batch::batch& b) {
    return method_writer(c, b, method_writer::amounts::left_out).run();
}

namespace {

bool speaks_of_baking(const std::string& text) {
    return ingredients::has_word(text, {"bake", "baking"});
}

/// The oven settings of one step, each with the first time that follows it, and with further
/// ones where the step bakes on: `12 min + 5–6 min`.
std::vector<styles::oven_row> oven_of(const recipe::step& s) {
    std::vector<styles::oven_row> result;
    bool bakes_on = false;
    for (const auto& part : s.parts) {
        if (const auto* text = std::get_if<std::string>(&part)) {
            bakes_on = bakes_on || speaks_of_baking(*text);
            continue;
        }
        const auto& u = std::get<recipe::use>(part);
        if (const auto* h = std::get_if<recipe::heat_use>(&u); h && h->is_oven) {
            const auto d = measures::dial_settings(h->low, h->high, h->scale);
            result.push_back({d.celsius, d.fan, d.fahrenheit, d.gas, ""});
        }
        const auto* t = std::get_if<recipe::time_use>(&u);
        if (!t || result.empty()) continue;
        auto& time = result.back().time;
        if (time.empty())
            time = said_time(t->time);
        else if (bakes_on)
            time += " + " + said_time(t->time);
        bakes_on = false;
    }
    return result;
}

/// The same oven named again, as when it is heated first, is one row: the one with the time.
bool is_named_again(const styles::oven_row& before, const styles::oven_row& row) {
    return before.celsius == row.celsius && (before.time.empty() || row.time.empty());
}

} // namespace

namespace {

/// The time of a step that goes on baking without naming the oven again.
std::string further_time(const recipe::step& s) {
    bool bakes = false;
    std::string time;
    for (const auto& part : s.parts) {
        if (const auto* text = std::get_if<std::string>(&part))
            bakes = bakes || speaks_of_baking(*text);
        const auto* u = std::get_if<recipe::use>(&part);
        const auto* t = u ? std::get_if<recipe::time_use>(u) : nullptr;
        if (t && bakes && time.empty()) time = said_time(t->time);
    }
    return time;
}

} // namespace

std::vector<styles::oven_row> oven_of(const recipe::component& c) {
    std::vector<styles::oven_row> result;
    for (const auto& s : c.steps) {
        auto rows = oven_of(s);
        if (const auto more = further_time(s); rows.empty() && !result.empty() && !more.empty())
            result.back().time += (result.back().time.empty() ? "" : " + ") + more;
        for (auto& row : rows) {
            if (result.empty() || !is_named_again(result.back(), row))
                result.push_back(std::move(row));
            else if (result.back().time.empty())
                result.back().time = row.time;
        }
    }
    return result;
}

} // namespace benchcard::cards
