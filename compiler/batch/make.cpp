#include "compiler/batch/fit.hpp"
#include "compiler/batch/orders_of.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::batch {

namespace {

std::string said_number(const exact& number) { return measures::with_fraction(number); }

refusal cannot_compare(const recipe::component& c, bool is_product, const std::string& wanted) {
    const auto whose = is_product ? std::string("the recipe") : c.title;
    const auto& made = c.made;
    const auto what = made.pieces  ? fmt::format("{} {}", said_number(made.pieces->used),
                                                 ingredients::plural(made.piece))
                      : made.grams ? measures::in_decimals(made.grams->used, 0) + " g"
                                   : "an amount it does not state";
    return {fmt::format("{} makes {}, so it cannot be scaled to {}", whose, what, wanted),
            {"scale it by a factor: --scale 2",
             is_product ? "or say what it makes in the recipe: `makes: 24 buns`"
                        : fmt::format("or say in {} what it makes: `makes: 24 rounds`", c.title)}};
}

/// How many, or how much, of what.
struct goal {
    std::size_t component = 0;
    std::string piece; ///< in the form in which names are compared; empty for any
};

class maker {
  public:
    maker(const recipe::recipe& r, const to_make& make, fit how)
        : r_(r), make_(make), y_(make.wanted), how_(how) {}

    std::variant<answer, refusal> run() const {
        if (!y_.whole && (!y_.count || y_.each))
            return refusal{"say how many: --make '48 tarts'", {}};
        const auto found = goal_of();
        if (const auto* no = std::get_if<refusal>(&found)) return *no;
        const auto& wanted = std::get<goal>(found);
        const auto& c = r_.components[wanted.component];
        const bool is_product = wanted.component + 1 == r_.components.size();
        const auto times = times_of(c, is_product);
        if (const auto* no = std::get_if<refusal>(&times)) return *no;
        const auto& number = std::get<exact>(times);
        if (is_product) return answer{number, {}};
        const auto made = exact_factors_for(r_, 1, how_)[wanted.component];
        return answer{
            number / made,
            {fmt::format("{}: {}, where the recipe takes {}: × {}", c.title, said_made(c, number),
                         said_made(c, made), said_factor(number / made))}};
    }

  private:
    const recipe::recipe& r_;
    const to_make& make_;
    const grammar::yield& y_;
    fit how_;

    std::string piece_text() const { return y_.piece ? y_.piece->text : ""; }
    std::string said_wanted() const {
        if (y_.whole)
            return fmt::format("{} {}", said_number(y_.whole->quantity.low),
                               grammar::short_name(*y_.whole->in));
        return fmt::format("{} {}", said_number(y_.count->low),
                           y_.piece ? y_.piece->text : "pieces");
    }

    static bool fits(const recipe::component& c, const std::string& piece) {
        return c.made.pieces && (piece.empty() || piece == "piece" ||
                                 piece == ingredients::compared_name(c.made.piece));
    }

    std::vector<std::size_t> makers_of(const std::string& piece) const {
        std::vector<std::size_t> result;
        for (std::size_t i = 0; i < r_.components.size(); ++i)
            if (const auto& made = r_.components[i].made;
                made.pieces && piece == ingredients::compared_name(made.piece))
                result.push_back(i);
        return result;
    }

    /// The component whose title these words end in, and what stands before it.
    std::optional<goal> named(const std::string& text) const {
        const auto words = ingredients::compared_words(text);
        std::optional<goal> best;
        std::size_t most = 0;
        for (std::size_t i = 0; i < r_.components.size(); ++i) {
            const auto title = ingredients::compared_words(r_.components[i].title);
            if (title.size() <= most || title.size() > words.size() ||
                !std::equal(title.rbegin(), title.rend(), words.rbegin()))
                continue;
            most = title.size();
            best = goal{i, ""};
            for (std::size_t w = 0; w + title.size() < words.size(); ++w)
                best->piece += (w > 0 ? " " : "") + words[w];
        }
        return best;
    }

    std::variant<goal, refusal> goal_of() const {
        const auto last = r_.components.size() - 1;
        if (!make_.of.empty()) {
            if (const auto found = named(make_.of); found && found->piece.empty()) return *found;
            return no_component(make_.of);
        }
        const auto piece = ingredients::compared_name(piece_text());
        if (y_.whole || fits(r_.product(), piece)) return goal{last, piece};
        const auto makers = makers_of(piece);
        if (makers.size() == 1) return goal{makers.front(), piece};
        if (makers.size() > 1) return several(makers);
        if (const auto found = named(piece_text())) {
            const auto& c = r_.components[found->component];
            if (fits(c, found->piece)) return *found;
            return cannot_compare(c, found->component == last, said_wanted());
        }
        if (!r_.product().made.pieces) return cannot_compare(r_.product(), true, said_wanted());
        return other_pieces();
    }

    refusal no_component(const std::string& name) const {
        std::vector<std::string> titles;
        for (const auto& c : r_.components) titles.push_back(c.title);
        return {fmt::format("the recipe has no component called `{}`; it has {}", name,
                            fmt::join(titles, ", ")),
                {}};
    }

    refusal several(const std::vector<std::size_t>& makers) const {
        refusal result{fmt::format("more than one component makes {}: say which", piece_text()),
                       {}};
        for (const auto i : makers)
            result.helps.push_back(
                fmt::format("--make '{} {}'", said_wanted(), r_.components[i].title));
        return result;
    }

    refusal other_pieces() const {
        const auto number = said_number(y_.count->low);
        const auto& own = r_.product().made.piece;
        refusal result{
            fmt::format("the recipe makes {}, not {}", ingredients::plural(own), piece_text()),
            {fmt::format("--make '{} {}'", number, ingredients::plural(own))}};
        for (std::size_t i = 0; i + 1 < r_.components.size(); ++i)
            if (const auto& c = r_.components[i]; c.made.pieces && c.made.piece != own)
                result.helps.push_back(fmt::format("of {}: --make '{} {}'", c.title, number,
                                                   ingredients::plural(c.made.piece)));
        return result;
    }

    /// How often the written batch of a component makes so many, or so much.
    std::variant<exact, refusal> times_of(const recipe::component& c, bool is_product) const {
        if (!y_.whole) return exact(y_.count->low / c.made.pieces->used);
        const exact number = recipe::spread_of(y_.whole->quantity).used;
        if (const auto unit = measures::weight_of(*y_.whole->in); unit && c.made.grams)
            return exact(number * unit->value / c.made.grams->used);
        if (const auto unit = measures::volume_of(*y_.whole->in, r_.measures); unit && c.made.ml)
            return exact(number * unit->value / *c.made.ml);
        return cannot_compare(c, is_product, said_wanted());
    }
};

} // namespace

std::variant<answer, refusal> answer_to_make(const recipe::recipe& r, const to_make& make,
                                             fit how) {
    return maker(r, make, how).run();
}

} // namespace benchcard::batch
