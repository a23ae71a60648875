#include "compiler/cards/deal.hpp"

#include "compiler/batch/split.hpp"
#include "compiler/cards/allergen_strip.hpp"
#include "compiler/cards/batch_cautions.hpp"
#include "compiler/cards/counted_name.hpp"
#include "compiler/cards/equipment.hpp"
#include "compiler/cards/figures.hpp"
#include "compiler/cards/fingerprint.hpp"
#include "compiler/cards/method.hpp"
#include "compiler/cards/percentages.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

using batch::component_batch;
using styles::card;
using styles::paragraph;

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string result;
    for (const auto& w : words) result += (result.empty() ? "" : std::string(between)) + w;
    return result;
}

std::string said_system(measures::system s) {
    using measures::system;
    switch (s) {
    case system::us:
        return "US cups";
    case system::metric:
        return "metric cups";
    case system::imperial:
        return "imperial cups";
    case system::australian:
        return "Australian cups";
    case system::canadian:
        return "Canadian cups";
    case system::us_label:
        return "240 ml cups";
    case system::uk:
    case system::unstated:
        return "spoons";
    }
    return "";
}

class dealer {
  public:
    explicit dealer(const batch::batch& b)
        : b_(b), r_(*b.of), allergens_(safety::allergens_of(r_)),
          cautions_(safety::cautions_of(r_)) {}

    std::vector<card> run() {
        std::vector<card> cards;
        for (std::size_t i = 0; i < b_.components.size(); ++i) cards.push_back(card_of(i));
        for (std::size_t i = 0; i < cards.size(); ++i) {
            cards[i].number = fmt::format("card {} of {}", i + 1, cards.size());
            cards[i].fingerprint = fingerprint_of(cards[i]);
        }
        return cards;
    }

  private:
    const batch::batch& b_;
    const recipe::recipe& r_;
    std::vector<safety::allergens> allergens_;
    std::vector<std::vector<safety::caution>> cautions_;

    card card_of(std::size_t index) {
        const auto& c = b_.components[index];
        const bool is_product = index + 1 == b_.components.size();
        card result;
        result.title = c.of->title;
        result.recipe = c.of->title == r_.title ? "" : r_.title;
        result.station = c.of->station;
        result.batch = "× " + measures::with_fraction(c.factor);
        result.yield = said_yield(c, is_product);
        result.imperial_heading = "oz";
        result.spoons_heading = said_system(r_.measures);
        for (const auto& l : c.lines) result.weigh_out.push_back(row_of(l, c));
        result.totals = totals_of(c);
        add_percentages(result, c);
        result.method = method_of(c, b_);
        result.oven = oven_of(*c.of);
        result.allergens = allergen_strip(allergens_[index], safety::law_named(r_.labels));
        result.cautions = cautions_of(c, cautions_[index], is_product);
        result.notes = notes_of(*c.of, is_product);
        result.keeping = said_keeping(*c.of);
        result.made_label = "made";
        result.revision = said_revision(*c.of);
        result.footnote = "check every packet for allergens; local rules come first";
        result.language = "en";
        return result;
    }

    /// `· serves 16`, of the whole batch.
    std::string said_serves(bool stands_alone) const {
        if (!r_.serves || !r_.serves->count) return "";
        const auto number = recipe::spread_of(*r_.serves->count).used * b_.factor;
        return fmt::format("{}serves {}", stands_alone ? "" : " · ",
                           measures::in_decimals(measures::whole_part(number), 0));
    }

    std::string said_yield(const component_batch& c, bool is_product) const {
        std::string result;
        const auto& made = c.of->made;
        if (c.pieces) {
            result = said_pieces(*c.pieces, made.piece);
            if (made.each && !c.of->is_assembly)
                result += " of " + said_each(*made.each * c.each) + said_count_range(c);
        } else if (c.of->made.ml) {
            const auto s = measures::in_a_jug({*made.ml * c.factor});
            result = s.figure + " " + s.unit;
        } else if (c.made_grams) {
            result = said_grams(*c.made_grams);
        }
        if (is_product) return result + said_serves(result.empty());
        const auto& product = b_.components.back();
        if (!product.pieces) return result;
        return result + (result.empty() ? "for " : " · for ") +
               said_pieces(*product.pieces, product.of->made.piece);
    }

    /// Of `rounds of 20-22 g`, whose number is worked out: how many of either size.
    std::string said_count_range(const component_batch& c) const {
        const auto& made = c.of->made;
        const bool is_worked_out = c.of->makes && c.of->makes->each && !c.of->makes->count;
        if (!is_worked_out || made.each->low == made.each->high || !c.ready) return "";
        const auto number = [&](const exact& each) {
            return measures::in_decimals(measures::whole_part(*c.ready / each), 0);
        };
        return fmt::format(" ({} of {} to {} of {})", number(made.each->high),
                           said_grams(made.each->high), number(made.each->low),
                           said_grams(made.each->low));
    }

    static std::string said_each(const recipe::spread& each) {
        return each.low == each.high || each.low == each.used ? said_grams(each.used)
                                                              : "about " + said_grams(each.used);
    }

    /// Of a batch that is made in several mixes, what goes into each: `411 g a mix`.
    std::string said_a_mix(const batch::weigh_line& l, const component_batch& c) const {
        const auto split = batch::split_of(c);
        const auto amount = split ? said(part_of(l, 1 / split->mixes), r_) : "";
        return amount.empty() ? "" : amount + " a mix";
    }

    styles::weigh_row row_of(const batch::weigh_line& l, const component_batch& c) const {
        const auto f = figures_of(l, r_);
        styles::weigh_row row;
        row.amount = f.amount;
        row.unit = f.unit;
        row.name = l.of->component ? r_.components[*l.of->component].title : counted_name(l);
        if (!f.rest.empty()) row.name += " + " + f.rest + " (weigh it)";
        row.preparation = l.of->preparation;
        auto remark = f.remark;
        if (const auto part = said_a_mix(l, c); !part.empty())
            remark += (remark.empty() ? "" : "; ") + part;
        if (!remark.empty())
            row.preparation += (row.preparation.empty() ? "(" : " (") + remark + ")";
        if (how_given(l) == given::nothing) row.unit = l.of->some ? "some" : "?";
        row.imperial = f.imperial;
        row.spoons = f.spoons;
        return row;
    }

    /// Baker's percentages of the lines, and of the whole below the mix.
    void add_percentages(card& result, const component_batch& c) const {
        auto found = percentages_of(c, b_);
        if (!found) return;
        result.percent_heading = "% of " + c.of->percent->text;
        for (std::size_t i = 0; i < result.weigh_out.size(); ++i)
            result.weigh_out[i].percent = std::move(found->of_lines[i]);
        if (found->total) result.totals.push_back(std::move(*found->total));
    }

    std::vector<styles::total_row> totals_of(const component_batch& c) const {
        std::vector<styles::total_row> result;
        if (c.mix && (c.lines.size() > 1 || !c.of->losses.empty())) {
            const auto s = measures::on_a_scale({*c.mix});
            result.push_back({s.figure, s.unit, said_mix(c)});
        }
        if (const auto split = batch::split_of(c))
            result.push_back({measures::in_decimals(split->mixes, 0), "mixes",
                              fmt::format("of {}: no more than {} goes in at once",
                                          said_grams(split->each), said_grams(*c.of->at_most))});
        if (c.left_pieces && *c.left_pieces >= 1)
            result.push_back({measures::with_fraction(measures::whole_part(*c.left_pieces)), "",
                              fmt::format("{} over{} after this order{}", piece_left(c),
                                          said_left_weight(c), said_left_keeps(c))});
        else if (!c.left_pieces && c.left_grams && *c.left_grams >= least_left_over(c)) {
            const auto s = shown_left(c);
            result.push_back({s.figure, s.unit, "over after this order" + said_left_keeps(c)});
        }
        return result;
    }

    /// `rounds`, or `round` of a single one.
    static std::string piece_left(const component_batch& c) {
        const bool is_one = measures::whole_part(*c.left_pieces) == 1;
        return is_one ? c.of->made.piece : ingredients::plural(c.of->made.piece);
    }

    /// What those that are over weigh, ` (198 g)`; nothing where that is not known.
    static std::string said_left_weight(const component_batch& c) {
        if (!c.baked || !c.pieces || *c.pieces <= 0) return "";
        const exact each = *c.baked / *c.pieces;
        return " (" + said_grams(each * measures::whole_part(*c.left_pieces)) + ")";
    }

    /// What clings to a spatula is no left-over: under 2 % of what is made, or under 5 g.
    static exact least_left_over(const component_batch& c) {
        return std::max(exact(5), exact(*c.made_grams / 50));
    }

    /// What is over, in the measure in which it was made: stock by the litre, cream by the gram.
    measures::shown shown_left(const component_batch& c) const {
        if (!c.of->made.ml || !c.baked) return measures::on_a_scale({*c.left_grams});
        return measures::in_a_jug({*c.of->made.ml * c.factor * *c.left_grams / *c.baked});
    }

    static std::string said_left_keeps(const component_batch& c) {
        std::vector<std::string> all;
        for (const auto& k : c.of->keeps) all.push_back(k.text.text);
        return all.empty() ? "" : ", keeps " + joined(all, ", ");
    }

    std::string said_mix(const component_batch& c) const {
        std::string result = c.of->is_assembly ? "assembled" : "mix";
        if (*c.ready != *c.mix) result += fmt::format(" ({} to use)", said_grams(*c.ready));
        if (c.pieces && c.of->made.each) {
            result += ": " + said_pieces(*c.pieces, c.of->made.piece) + " of " +
                      said_each(*c.of->made.each * c.each);
            const auto over = *c.ready - *c.made_grams;
            // What is put together weighs what it weighs: nothing is over.
            if (!c.of->is_assembly && over >= 1 && c.of->makes && c.of->makes->each)
                result += fmt::format(", {} over", said_grams(over));
        } else if (const auto over = over_whole(c)) {
            result += fmt::format(": {}, {} over", said_grams(*c.made_grams), said_grams(*over));
        }
        if (c.baked && c.made_grams && *c.baked != *c.made_grams)
            result += fmt::format(", {} baked", said_grams(*c.baked));
        return result;
    }

    /// What a mix gives above the weight that is to be made, where it is more than clings to a
    /// bowl.
    static std::optional<exact> over_whole(const component_batch& c) {
        if (!c.of->makes || !c.of->makes->whole || !c.made_grams || !c.ready) return std::nullopt;
        const exact over = *c.ready - *c.made_grams;
        return over >= least_left_over(c) ? std::optional(over) : std::nullopt;
    }

    /// What the head of the recipe says is said on the card of the product.
    static std::vector<std::string> with_the_recipes(std::vector<std::string> texts,
                                                     const std::vector<std::string>& of_recipe,
                                                     bool is_product) {
        if (is_product)
            for (const auto& text : of_recipe)
                if (std::find(texts.begin(), texts.end(), text) == texts.end())
                    texts.push_back(text);
        return texts;
    }

    std::vector<paragraph> cautions_of(const component_batch& c,
                                       const std::vector<safety::caution>& usual,
                                       bool is_product) const {
        std::vector<paragraph> result;
        for (const auto& text : with_the_recipes(c.of->cautions, r_.cautions, is_product))
            result.push_back({{text, false}});
        for (const auto& u : usual) result.push_back({{u.text, false}});
        for (const auto& text : batch_cautions(c, b_)) result.push_back({{text, false}});
        return result;
    }

    std::vector<paragraph> notes_of(const recipe::component& c, bool is_product) const {
        std::vector<paragraph> result;
        if (auto equipment = equipment_of(c, b_.tin); !equipment.empty())
            result.push_back(std::move(equipment));
        for (const auto& text : with_the_recipes(c.notes, r_.notes, is_product))
            result.push_back({{text, false}});
        return result;
    }

    static paragraph said_keeping(const recipe::component& c) {
        paragraph p;
        for (const auto& k : c.keeps) {
            p.push_back({p.empty() ? "Keeps " : ", ", false});
            const auto& text = k.text.text;
            const bool timed = k.high_hours > 0;
            const auto time = timed ? text.substr(0, text.size() - k.place.text.size()) : "";
            if (timed) p.push_back({time.substr(0, time.find_last_not_of(' ') + 1), true});
            p.push_back({timed && !k.place.text.empty() ? " " + k.place.text
                         : timed                        ? ""
                                                        : text,
                         false});
        }
        return p;
    }

    /// The version of the file that the component stands in, which may be another's, and how many
    /// messages its `accept:` lines have taken away.
    static std::string said_revision(const recipe::component& c) {
        std::vector<std::string> parts;
        if (!c.revision.empty()) parts.push_back("rev " + c.revision);
        if (!c.date.empty()) parts.push_back(c.date);
        if (const auto accepted = c.accepts.size(); accepted > 0)
            parts.push_back(fmt::format("{} check{} accepted", accepted, accepted == 1 ? "" : "s"));
        return joined(parts, " · ");
    }
};

} // namespace

std::vector<card> deal(const batch::batch& b) { return dealer(b).run(); }

} // namespace benchcard::cards
