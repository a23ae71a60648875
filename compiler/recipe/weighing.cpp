#include "compiler/recipe/weighing.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::recipe {

namespace {

using grammar::filling;
using grammar::severity;
using ingredients::country;
using ingredients::entry;
using ingredients::figure;

/// Whether every word of `wanted` is among the words of a description.
bool names_state(const std::vector<std::string>& description, const std::string& wanted) {
    if (wanted.empty()) return false;
    for (const auto& word : ingredients::compared_words(wanted))
        if (std::find(description.begin(), description.end(), word) == description.end())
            return false;
    return true;
}

bool fits_country(const figure& f, country wanted) {
    return f.where == country::any || f.where == wanted;
}

/// Countries whose figure may stand in where there is none for this one, best first.
std::vector<country> countries_for(measures::system system) {
    switch (ingredients::country_of(system)) {
    case country::us:
        return {country::us};
    case country::uk:
        return {country::uk};
    case country::any:
        return {country::any, country::uk};
    }
    return {};
}

/// Whether words before an ingredient say that it is counted by the box or by the slice, so that
/// the weight of a whole one is not meant.
bool counts_other_than_wholes(const std::vector<std::string>& description) {
    constexpr std::string_view packed_or_cut[] = {
        "bag",   "bar",    "block", "bottle", "box",    "bunch",   "can",    "carton",
        "case",  "chunk",  "cube",  "ear",    "drop",   "handful", "head",   "jar",
        "pack",  "packet", "piece", "pot",    "punnet", "ring",    "sachet", "segment",
        "slice", "sprig",  "strip", "tin",    "tray",   "tub",     "wedge"};
    return std::any_of(description.begin(), description.end(), [&](const auto& word) {
        return std::find(std::begin(packed_or_cut), std::end(packed_or_cut), word) !=
               std::end(packed_or_cut);
    });
}

/// The figure of a counted piece: by the piece's name (`clove`) or its size (`large`), in the
/// recipe's country before any other.
const figure* figure_of_piece(const entry& what, const std::vector<std::string>& description,
                              measures::system system) {
    const figure* best = nullptr;
    std::size_t best_words = 0;
    for (const auto where : countries_for(system))
        for (const auto& f : what.figures) {
            if (f.volume || f.is_stick || !fits_country(f, where)) continue;
            const bool piece_fits = f.piece.empty() ? !counts_other_than_wholes(description)
                                                    : names_state(description, f.piece);
            const bool state_fits = f.state.empty() || names_state(description, f.state);
            if (!piece_fits || !state_fits) continue;
            const auto words = ingredients::compared_words(f.state).size() +
                               (f.piece.empty() ? 0 : 1) + (f.where != country::any ? 1 : 0);
            if (!best || words > best_words) best = &f, best_words = words;
        }
    return best;
}

grammar::diagnostic error(std::string_view kind, grammar::span where, std::string message) {
    return {kind, severity::error, where, std::move(message), {}, {}};
}

/// A measure whose size depends on whose it is, with what each reading would weigh.
grammar::diagnostic unsettled(const grammar::measure& m, const entry* what,
                              const std::string& description, measures::system system,
                              const std::string& name) {
    const auto unit_name = grammar::short_name(*m.in);
    auto result =
        error("unsettled-measure", m.where,
              system == measures::system::unstated
                  ? fmt::format("whose {} is meant is not said, and they differ", unit_name)
                  : fmt::format("`measures: {}` has no {} of one size", measures::name_of(system),
                                unit_name));
    const auto density = what ? density_of(*what, description) : std::nullopt;
    for (const auto& [reading, held] : measures::readings_of(*m.in)) {
        const auto ml = held.value * spread_of(m.quantity).used;
        auto text = fmt::format("`measures: {}`: {} ml", measures::name_of(reading),
                                measures::in_decimals(ml, 0));
        if (density)
            text += fmt::format(", {} g of {}", measures::in_decimals(ml * density->used, 0), name);
        result.notes.push_back({std::move(text), {}});
    }
    result.helps.push_back(
        {"say whose at the head of the file, or give the weight as well: `1 cup = 125 g`", {}});
    return result;
}

grammar::diagnostic no_volume(const grammar::measure& m, const entry& what,
                              const std::string& name) {
    auto result =
        error("no-volume-figure", m.where,
              fmt::format("what a {} of {} weighs is not known", grammar::short_name(*m.in), name));
    result.helps.push_back({"give its weight", {}});
    result.helps.push_back({fmt::format("or weigh one and define it: `ingredient: {}`, below it "
                                        "`weighs: … g per {}` and `source: weighed here`",
                                        what.name, grammar::short_name(*m.in)),
                            {}});
    return result;
}

/// How far a measure that is not a level one may be off; common practice, from memory.
spread filled_as(filling f) {
    switch (f) {
    case filling::heaped:
        return {exact(5, 4), exact(3, 2), 2};
    case filling::rounded:
        return {exact(9, 8), exact(5, 4), exact(3, 2)};
    case filling::scant:
        return {exact(3, 4), exact(7, 8), 1};
    default:
        return spread::of(1);
    }
}

bool is_way_of_filling(const std::string& state) {
    constexpr std::string_view ways[] = {"sifted",  "unsifted", "spooned",
                                         "scooped", "packed",   "loose"};
    return std::find(std::begin(ways), std::end(ways), state) != std::end(ways);
}

class weigher {
  public:
    weigher(const entry* what, const std::string& description, measures::system system,
            const std::string& name)
        : what_(what), description_(description), words_(ingredients::compared_words(description)),
          system_(system), name_(name) {}

    weighing run(const std::vector<grammar::measure>& terms) {
        for (const auto& term : terms) {
            add(term);
            if (result_.problem) break;
        }
        if (unknown_) result_.grams.reset();
        return std::move(result_);
    }

  private:
    const entry* what_;
    const std::string& description_;
    std::vector<std::string> words_;
    measures::system system_;
    const std::string& name_;
    weighing result_;
    bool unknown_ = false;

    static void add_to(std::optional<spread>& total, const spread& more) {
        if (!total) total = spread{};
        *total += more;
    }

    void add(const grammar::measure& m) {
        const auto number = spread_of(m.quantity);
        if (!m.in)
            add_pieces(number);
        else if (*m.in == grammar::unit::stick)
            add_sticks(m, number);
        else if (const auto each = measures::weight_of(*m.in))
            add_weight(number * each->value);
        else
            add_volume(m, number);
    }

    void add_weight(const spread& grams) {
        result_.how = weighed_by::weight;
        add_to(result_.grams, grams);
    }

    void add_pieces(const spread& number) {
        result_.how = weighed_by::piece;
        add_to(result_.count, number);
        result_.figure = what_ ? figure_of_piece(*what_, words_, system_) : nullptr;
        if (!result_.figure) {
            unknown_ = true;
            return;
        }
        const auto& f = *result_.figure;
        add_to(result_.grams,
               times(number, {f.low.value, (f.low.value + f.high.value) / 2, f.high.value}));
    }

    void add_sticks(const grammar::measure& m, const spread& number) {
        const auto is_stick = [](const figure& f) { return f.is_stick; };
        const bool sold_in_sticks =
            what_ && std::any_of(what_->figures.begin(), what_->figures.end(), is_stick);
        if (!sold_in_sticks) {
            result_.problem = error("not-in-sticks", m.where,
                                    fmt::format("a stick is a measure of butter, and {} is not "
                                                "sold in sticks of a known weight",
                                                name_));
            result_.problem->helps.push_back({"give its weight", {}});
            return;
        }
        add_weight(number * measures::weight_of(grammar::unit::stick)->value);
    }

    void add_volume(const grammar::measure& m, const spread& number) {
        const auto held = measures::volume_of(*m.in, system_);
        if (!held) {
            result_.problem = unsettled(m, what_, description_, system_, name_);
            return;
        }
        result_.how = weighed_by::volume;
        const auto [least, most] = measures::vagueness_of(*m.in);
        const auto ml = times(times(number * held->value, {least, 1, most}), filled_as(m.filled));
        add_to(result_.ml, ml);
        if (!what_)
            return; // an unknown ingredient by volume is reported where its name is looked up
        const auto description =
            m.filled == filling::packed ? "packed " + description_ : description_;
        const auto density = density_of(*what_, description);
        if (!density) {
            result_.problem = no_volume(m, *what_, name_);
            return;
        }
        result_.figure = density->figure;
        add_to(result_.grams, times(ml, {density->low, density->used, density->high}));
    }
};

} // namespace

spread times(const spread& a, const spread& b) {
    return {a.low * b.low, a.used * b.used, a.high * b.high};
}

spread spread_of(const grammar::amount& q) {
    const exact packs = q.packs.value_or(exact(1));
    return spread{q.low, (q.low + q.high) / 2, q.high} * packs;
}

std::optional<density> density_of(const entry& what, const std::string& description) {
    const auto words = ingredients::compared_words(description);
    const figure* used = nullptr;
    const figure* plain = nullptr;
    std::size_t used_words = 0;
    for (const auto& f : what.figures) {
        if (!f.volume) continue;
        if (f.state.empty() && !plain) plain = &f;
        const auto count = ingredients::compared_words(f.state).size();
        if (names_state(words, f.state) && count > used_words) used = &f, used_words = count;
    }
    const bool state_said = used != nullptr;
    if (!used) used = plain;
    if (!used) return std::nullopt;
    density result{used, used->density(), used->density(), used->density()};
    for (const auto& f : what.figures) {
        // Where the state is said, only other sources for that state widen the range; where it is
        // not, every way of filling the measure does, but not another cut (whole, ground).
        const bool counts =
            state_said ? f.state == used->state : f.state.empty() || is_way_of_filling(f.state);
        if (!f.volume || !counts) continue;
        result.low = std::min(result.low, exact(f.low.value / f.volume->value));
        result.high = std::max(result.high, exact(f.high.value / f.volume->value));
    }
    return result;
}

weighing weigh(const std::vector<grammar::measure>& terms, const entry* what,
               const std::string& description, measures::system system, const std::string& name) {
    return weigher(what, description, system, name).run(terms);
}

} // namespace benchcard::recipe
