#include "compiler/cards/why.hpp"

#include "compiler/batch/whole.hpp"
#include "compiler/cards/figures.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace benchcard::cards {

namespace {

using batch::weigh_line;

/// A number for a pocket calculator: whole where it ends within nine decimals, else to six and
/// marked as cut.
std::string in_full(const exact& value) {
    const auto text = measures::in_decimals(value, 9);
    if (value == 0 || grammar::parse_number(text) == std::optional(value)) return text;
    return measures::in_decimals(value, 6) + "…";
}

std::string said_whose(measures::system s) {
    return s == measures::system::unstated ? "spoons of 5 and 15 ml"
                                           : fmt::format("measures: {}", measures::name_of(s));
}

std::string said_figure(const ingredients::figure& f) {
    const auto per = f.volume          ? fmt::format("per {} ml", in_full(f.volume->value))
                     : f.piece.empty() ? "each"
                                       : "per " + f.piece;
    auto result = fmt::format("{} g {}", in_full((f.low.value + f.high.value) / 2), per);
    if (!f.state.empty()) result += ", " + f.state;
    return result;
}

class explainer {
  public:
    explicit explainer(const batch::batch& b) : b_(b) {}

    std::vector<styles::figures> run() {
        begin(
            fmt::format("{}: everything × {} ({})", b_.of->title, in_full(b_.factor), "the batch"));
        for (const auto& text : b_.reckoning) add(1, text);
        for (const auto& c : b_.components) explain(c);
        if (worst_ > 0) begin("The largest rounding here is " + said_worst() + ".");
        return std::move(told_);
    }

    std::vector<styles::figure_line> run(const weigh_line& l, const batch::component_batch& c) {
        begin("");
        explain(l, c);
        return std::move(told_.front().lines);
    }

  private:
    const batch::batch& b_;
    std::vector<styles::figures> told_;
    exact worst_ = 0;
    std::string worst_at_;

    std::string said_worst() const {
        return measures::in_decimals(worst_ * 100, 2) + " % (" + worst_at_ + ")";
    }

    void begin(std::string title) { told_.push_back({std::move(title), {}}); }
    /// A line under the title, which is of depth 0.
    void add(std::size_t depth, std::string line) {
        told_.back().lines.push_back({depth - 1, std::move(line)});
    }

    void explain(const batch::component_batch& c) {
        begin(c.of->title);
        const auto before = std::exchange(worst_, 0);
        const auto before_at = worst_at_;
        for (const auto& l : c.lines) explain(l, c);
        explain_total(c);
        if (worst_ > 0) add(1, "the largest rounding on this card is " + said_worst());
        if (worst_ < before) worst_ = before, worst_at_ = before_at;
    }

    void explain(const weigh_line& l, const batch::component_batch& c) {
        const auto& written = *l.of->written;
        if (l.of->some) return add(1, fmt::format("some {}: not weighed", l.of->name));
        add(1, fmt::format("{}: {}", l.of->name, said(l, *b_.of)));
        if (l.of->component)
            explain_component_use(l);
        else if (!written.equals.empty())
            explain_terms(written.equals, l, "stated");
        else
            explain_terms(written.amounts, l, "");
        explain_range(l);
        explain_batch(l, c);
        explain_rounding(l);
    }

    void explain_terms(const std::vector<grammar::measure>& terms, const weigh_line& l,
                       std::string_view remark) {
        for (const auto& m : terms) {
            const auto times = recipe::spread_of(m.quantity).used;
            const auto note = remark.empty() ? "" : fmt::format(" ({})", remark);
            if (!m.in)
                explain_pieces(times, l);
            else if (const auto each = measures::weight_of(*m.in)) {
                if (each->value == 1)
                    add(2, fmt::format("{} g{}", in_full(times), note));
                else
                    add(2, fmt::format("{} {} × {} g = {} g{}", in_full(times),
                                       grammar::short_name(*m.in), in_full(each->value),
                                       in_full(times * each->value), note));
            } else
                explain_volume(m, times, l);
        }
        if (terms.size() > 1 && l.of->grams)
            add(2, fmt::format("together {} g", in_full(l.of->grams->used)));
    }

    void explain_pieces(const exact& times, const weigh_line& l) {
        if (!l.of->figure) return add(2, "what one weighs is not known");
        const auto& f = *l.of->figure;
        const exact each = (f.low.value + f.high.value) / 2;
        add(2,
            fmt::format("{} × {} g = {} g", in_full(times), in_full(each), in_full(times * each)));
        add(3, fmt::format("{}; {}", said_figure(f), f.source));
    }

    void explain_volume(const grammar::measure& m, const exact& times, const weigh_line& l) {
        const auto held = measures::volume_of(*m.in, l.of->measures);
        if (!held) return;
        const exact filled = times > 0 && l.of->ml && l.of->written->amounts.size() == 1
                                 ? exact(l.of->ml->used / (times * held->value))
                                 : exact(1);
        const exact ml = times * held->value * filled;
        const auto heap =
            filled == 1 ? "" : fmt::format(" × {} (as filled, common practice)", in_full(filled));
        add(2,
            fmt::format("{} {} × {} ml{} = {} ml ({})", in_full(times), grammar::short_name(*m.in),
                        in_full(held->value), heap, in_full(ml), said_whose(l.of->measures)));
        if (!l.of->figure) return;
        const auto& f = *l.of->figure;
        add(2, fmt::format("{} ml × {} g ÷ {} ml = {} g", in_full(ml),
                           in_full((f.low.value + f.high.value) / 2), in_full(f.volume->value),
                           in_full(ml * f.density())));
        add(3, fmt::format("{}; {}", said_figure(f), f.source));
    }

    void explain_component_use(const weigh_line& l) {
        const auto& used = b_.of->components[*l.of->component];
        if (l.of->share && used.baked)
            add(2, fmt::format("{} of {} g", in_full(*l.of->share), in_full(used.baked->used)));
        else if (l.of->count && used.made.each && l.of->grams)
            add(2, fmt::format(
                       "{} of {} g{} = {} g", said_pieces(l.of->count->used, used.made.piece),
                       in_full(used.made.each->used),
                       used.baked && used.made.grams && used.baked->used != used.made.grams->used
                           ? fmt::format(" × {} (what baking leaves)",
                                         in_full(used.baked->used / used.made.grams->used))
                           : "",
                       in_full(l.of->grams->used)));
        else if (l.of->grams)
            add(2, fmt::format("{} g", in_full(l.of->grams->used)));
    }

    void explain_range(const weigh_line& l) {
        if (l.of->how != recipe::weighed_by::volume || !l.of->grams ||
            !l.of->written->equals.empty())
            return;
        const auto& g = *l.of->grams;
        if (g.low != g.high)
            add(2, fmt::format("as the measure is filled: {} to {} g", in_full(g.low),
                               in_full(g.high)));
    }

    void explain_batch(const weigh_line& l, const batch::component_batch& c) {
        if (c.times == 1 || !l.grams) return;
        const auto per = c.of->times == 1 ? ""
                                          : fmt::format(", {} times the written amounts in a batch",
                                                        in_full(c.of->times));
        add(2, fmt::format("× {} (batch{}) = {} g", in_full(c.times), per, in_full(l.grams->used)));
    }

    void explain_rounding(const weigh_line& l) {
        const auto how = how_given(l);
        if (how == given::counted) return explain_count(l);
        if (how != given::weighed && how != given::poured) return;
        const exact& value = how == given::weighed ? l.grams->used : l.ml->used;
        const auto s = how == given::weighed ? measures::on_a_scale({value}, b_.of->scale_step)
                                             : measures::in_a_jug({value});
        const auto figures = figures_of(l, *b_.of);
        auto line = fmt::format("{} {} shown as {} {}", in_full(value),
                                how == given::weighed ? "g" : "ml", s.figure, s.unit);
        if (!figures.imperial.empty()) line += ", " + figures.imperial;
        if (!figures.spoons.empty()) line += ", " + figures.spoons;
        add(2, line);
        note_rounding(value, s, l.of->name);
    }

    /// Part of an egg is weighed, part of a lemon is cut.
    void explain_count(const weigh_line& l) {
        const auto& wanted = l.count->used;
        const auto shown = counted_number(l);
        if (shown == wanted || l.low_part != l.high_part) return;
        if (const auto parts = batch::whole_and_rest_of(l))
            return add(2, fmt::format("{} = {} and {} of one: {} g shown as {}", in_full(wanted),
                                      in_full(parts->whole), in_full(wanted - parts->whole),
                                      in_full(parts->rest_grams), rest_of(l, *b_.of)));
        add(2, fmt::format("{} shown as {}", in_full(wanted), measures::with_fraction(shown)));
        note_error(abs(shown - wanted) / wanted, l.of->name);
    }

    void note_error(const exact& off, const std::string& name) {
        if (off > worst_) worst_ = off, worst_at_ = name;
    }

    void note_rounding(const exact& value, const measures::shown& s, const std::string& name) {
        const exact unit = s.unit == "kg" || s.unit == "l" ? 1000 : 1;
        const auto figure = grammar::parse_number(s.figure);
        if (!figure) return;
        note_error(abs(*figure * unit - value) / value, name);
    }

    void explain_total(const batch::component_batch& c) {
        if (!c.mix) return add(1, "what it weighs in all is not known, since a line above is not");
        std::string sum;
        for (const auto& l : c.lines)
            if (l.grams)
                sum += (sum.empty() ? "" : " + ") + measures::in_decimals(l.grams->used, 2);
        add(1, fmt::format("in all {} = {} g", sum, in_full(*c.mix)));
        exact left = *c.mix;
        for (const auto& loss : c.of->losses) {
            if (recipe::is_after_portioning(loss)) continue;
            const auto kept = recipe::kept_after(loss).used;
            add(1, fmt::format("less {} % {}: × {} = {} g", in_full((1 - kept) * 100),
                               loss.place.text, in_full(kept), in_full(left * kept)));
            left *= kept;
        }
        if (c.pieces && c.of->made.each) {
            const auto& each = c.of->made.each->used;
            add(1, fmt::format("{} × {} g = {} g", said_pieces(*c.pieces, c.of->made.piece),
                               in_full(each), in_full(*c.pieces * each)));
        }
        if (c.left_pieces)
            add(1, fmt::format("used {}, left {}",
                               said_pieces(*c.pieces - *c.left_pieces, c.of->made.piece),
                               in_full(*c.left_pieces)));
        else if (c.left_grams)
            add(1, fmt::format("left over {} g", in_full(*c.left_grams)));
        explain_baked(c);
    }

    void explain_baked(const batch::component_batch& c) {
        if (!c.made_grams || !c.baked || *c.made_grams == *c.baked) return;
        exact left = *c.made_grams;
        for (const auto& loss : c.of->losses) {
            if (!recipe::is_after_portioning(loss)) continue;
            const auto kept = recipe::kept_after(loss).used;
            add(1,
                fmt::format("less {} % {}: {} g × {} = {} g", in_full((1 - kept) * 100),
                            loss.place.text, in_full(left), in_full(kept), in_full(left * kept)));
            left *= kept;
        }
    }
};

std::string as_text(const std::vector<styles::figure_line>& lines) {
    std::string result;
    for (const auto& l : lines) result += std::string(2 * (l.depth + 1), ' ') + l.text + "\n";
    return result;
}

} // namespace

std::vector<styles::figures> explained(const batch::batch& b) { return explainer(b).run(); }

std::string why(const batch::batch& b) {
    std::string result;
    for (const auto& part : explained(b))
        result += (result.empty() ? "" : "\n") + part.title + "\n" + as_text(part.lines);
    return result;
}

std::string why_of(const weigh_line& l, const batch::component_batch& c, const batch::batch& b) {
    return as_text(explainer(b).run(l, c));
}

} // namespace benchcard::cards
