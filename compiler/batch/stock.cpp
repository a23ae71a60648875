#include "compiler/batch/fit.hpp"
#include "compiler/batch/orders_of.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::batch {

namespace {

using recipe::line;

/// How an amount that is there is compared with what the recipe takes.
enum class by { count, volume, weight };

std::optional<exact> value_of(const line& l, by how) {
    const auto& value = how == by::count ? l.count : how == by::volume ? l.ml : l.grams;
    return value ? std::optional<exact>(value->used) : std::nullopt;
}

/// One ingredient that is there, and where the recipe takes it.
struct store {
    std::string name; ///< as it was given: `butter`
    exact have = 0;
    by how = by::weight;
    struct use {
        std::size_t component;
        exact amount; ///< for the written batch
        const line* of;
    };
    std::vector<use> uses;

    exact needed(const std::vector<exact>& factors) const {
        exact total = 0;
        for (const auto& u : uses) total += u.amount * factors[u.component];
        return total;
    }
    std::string said(const exact& amount) const {
        if (how == by::count) return measures::with_fraction(amount);
        if (how == by::weight) return said_weight(amount);
        const auto s = measures::in_a_jug({amount});
        return s.figure + " " + s.unit;
    }
};

/// Every line of one ingredient.
struct found_lines {
    std::string key; ///< what tells it from others
    std::vector<std::pair<std::size_t, const line*>> lines;
};

std::string key_of(const line& l) {
    return l.what ? l.what->name : ingredients::compared_name(l.name);
}

class finder {
  public:
    explicit finder(const recipe::recipe& r) : r_(r) {}

    std::variant<store, refusal> store_of(const grammar::ingredient_line& given) const {
        const auto& name = given.names.front().text;
        const auto found = lines_of(name);
        if (const auto* no = std::get_if<refusal>(&found)) return *no;
        return compared(given, std::get<found_lines>(found));
    }

  private:
    const recipe::recipe& r_;

    ingredients::lookup looked_up(const std::string& name) const {
        const auto& table = r_.own ? *r_.own : ingredients::built_in_table();
        return table.find(name, ingredients::country_of(r_.measures));
    }

    template <typename Fits> std::vector<found_lines> all_that(Fits fits) const {
        std::vector<found_lines> result;
        for (std::size_t i = 0; i < r_.components.size(); ++i)
            for (const auto& l : r_.components[i].lines) {
                if (l.component || !fits(l)) continue;
                const auto key = key_of(l);
                auto at = std::find_if(result.begin(), result.end(),
                                       [&](const auto& f) { return f.key == key; });
                if (at == result.end()) at = result.insert(result.end(), {key, {}});
                at->lines.push_back({i, &l});
            }
        return result;
    }

    static bool is_named(const line& l, const std::vector<std::string>& wanted) {
        auto words = ingredients::compared_words(l.name);
        if (words.empty() || wanted.empty() || words.back() != wanted.back()) return false;
        return std::all_of(wanted.begin(), wanted.end(), [&](const auto& w) {
            return std::find(words.begin(), words.end(), w) != words.end();
        });
    }

    std::variant<found_lines, refusal> lines_of(const std::string& name) const {
        const auto wanted = ingredients::compared_words(name);
        const auto* what = looked_up(name).match;
        auto found = all_that([&](const line& l) {
            return what && (l.what == what ||
                            std::find(l.others.begin(), l.others.end(), what) != l.others.end());
        });
        if (found.empty()) found = all_that([&](const line& l) { return is_named(l, wanted); });
        if (found.size() == 1) return found.front();
        return found.empty() ? not_used(name) : ambiguous(name, found);
    }

    static refusal ambiguous(const std::string& name, const std::vector<found_lines>& found) {
        std::vector<std::string> names;
        for (const auto& f : found) names.push_back(f.key);
        return {fmt::format("`{}` may mean {} here", name, fmt::join(names, " or ")),
                {fmt::format("say which: --from '400 g {}'", names.front())}};
    }

    refusal not_used(const std::string& name) const {
        const auto wanted = ingredients::compared_name(name);
        std::vector<std::string> names;
        for (const auto& c : r_.components) {
            if (ingredients::compared_name(c.title) == wanted)
                return {
                    fmt::format("{} is made here, and --from takes what it is made of", c.title),
                    {fmt::format("to make so much of it: --make '400 g {}'", c.title)}};
            for (const auto& l : c.lines)
                if (!l.component && !l.some &&
                    std::find(names.begin(), names.end(), key_of(l)) == names.end())
                    names.push_back(key_of(l));
        }
        return {fmt::format("the recipe uses no {}; it uses {}", name, fmt::join(names, ", ")), {}};
    }

    std::variant<store, refusal> compared(const grammar::ingredient_line& given,
                                          const found_lines& found) const {
        const auto& name = given.names.front().text;
        const auto weighed = weigh(given, *found.lines.front().second);
        line there;
        there.grams = weighed.grams, there.ml = weighed.ml, there.count = weighed.count;
        const bool is_counted = !given.amounts.front().in && given.equals.empty();
        const auto first = is_counted ? by::count : by::volume;
        for (const auto how : {first, by::weight, by::count}) {
            if (how == by::count && !is_same_size(given, found)) continue;
            if (auto s = store_by(how, there, found, name)) return *s;
        }
        return cannot_compare(name, found);
    }

    recipe::weighing weigh(const grammar::ingredient_line& given, const line& l) const {
        const auto& terms = given.equals.empty() ? given.amounts : given.equals;
        auto description = looked_up(given.names.front().text).description;
        if (description.empty() || !l.what) description = l.description;
        auto result = recipe::weigh(terms, l.what, description, r_.measures, l.name);
        if (!given.amounts.front().in && given.amounts.size() == 1 && !result.count)
            result.count = recipe::spread_of(given.amounts.front().quantity);
        return result;
    }

    /// Eggs of a size that is not said are those of the recipe.
    bool is_same_size(const grammar::ingredient_line& given, const found_lines& found) const {
        const auto size = looked_up(given.names.front().text).description;
        return std::all_of(found.lines.begin(), found.lines.end(), [&](const auto& at) {
            return size.empty() || ingredients::compared_name(size) ==
                                       ingredients::compared_name(at.second->description);
        });
    }

    std::optional<store> store_by(by how, const line& there, const found_lines& found,
                                  const std::string& name) const {
        const auto have = value_of(there, how);
        if (!have) return std::nullopt;
        store result{name, *have, how, {}};
        for (const auto& [component, l] : found.lines) {
            if (l->some) continue;
            const auto amount = value_of(*l, how);
            if (!amount) return std::nullopt;
            result.uses.push_back({component, *amount * r_.components[component].times, l});
        }
        return result.uses.empty() ? std::nullopt : std::optional(std::move(result));
    }

    static refusal cannot_compare(const std::string& name, const found_lines& found) {
        const bool has_amount = std::any_of(found.lines.begin(), found.lines.end(),
                                            [](const auto& at) { return !at.second->some; });
        if (!has_amount)
            return {fmt::format("the recipe uses some {}, and not so much of it", name), {}};
        return {fmt::format("how much {} that is cannot be compared with the recipe's", name),
                {fmt::format("give it in the recipe's measure, or by weight: --from '400 g {}'",
                             name)}};
    }
};

class chooser {
  public:
    chooser(const recipe::recipe& r, const std::vector<store>& stores, fit how)
        : r_(r), stores_(stores), how_(how) {}

    std::variant<answer, refusal> run() const {
        const auto once = exact_factors_for(r_, 1, how_);
        const store* scarcest = nullptr;
        exact most = 0;
        for (const auto& s : stores_) {
            const exact takes = s.needed(once);
            if (takes == 0) return refusal{fmt::format("this order takes no {}", s.name), {}};
            if (const exact allows = s.have / takes; !scarcest || allows < most)
                most = allows, scarcest = &s;
        }
        const auto factor = largest(most);
        if (factor == 0) return too_little(*scarcest, once);
        return answer{factor, reckoning(factor, *short_of(factor, scarcest))};
    }

  private:
    const recipe::recipe& r_;
    const std::vector<store>& stores_;
    fit how_;

    bool is_enough(const exact& factor) const {
        const auto factors = factors_for(r_, factor, how_);
        return std::all_of(stores_.begin(), stores_.end(),
                           [&](const auto& s) { return s.needed(factors) <= s.have; });
    }

    /// One piece of the product; or else a thousandth of it, where a component is made whole.
    exact step() const {
        const auto& pieces = r_.product().made.pieces;
        return pieces ? exact(1 / pieces->used) : exact(1, 1000);
    }

    /// Whole pieces; of what is not made in pieces, to the last gram.
    exact largest(const exact& most) const {
        if (!r_.product().made.pieces && is_enough(most)) return most;
        exact enough = 0, too_many = measures::whole_part(most / step()) + 1;
        while (too_many - enough > 1) {
            const exact middle = measures::whole_part((enough + too_many) / 2);
            (is_enough(middle * step()) ? enough : too_many) = middle;
        }
        return enough * step();
    }

    /// What would not do for one step more: with components made whole it may be another.
    const store* short_of(const exact& factor, const store* otherwise) const {
        if (!r_.product().made.pieces) return otherwise;
        const auto factors = factors_for(r_, factor + step(), how_);
        if (otherwise->needed(factors) > otherwise->have) return otherwise;
        for (const auto& s : stores_)
            if (s.needed(factors) > s.have) return &s;
        return otherwise;
    }

    refusal too_little(const store& s, const std::vector<exact>&) const {
        const auto takes = s.needed(factors_for(r_, step(), how_));
        return {fmt::format("{} {} is not enough: {} takes {}", s.said(s.have), s.name,
                            said_made(r_.product(), step()), s.said(takes)),
                {}};
    }

    std::vector<std::string> reckoning(const exact& factor, const store& scarcest) const {
        std::vector<std::string> result = {
            fmt::format("{}, limited by the {}", said_made(r_.product(), factor), scarcest.name)};
        const auto factors = factors_for(r_, factor, how_);
        for (const auto& s : stores_) {
            const auto needed = s.needed(factors);
            result.push_back(fmt::format(
                "{}: {} there, {} needed{}", s.name, s.said(s.have), s.said(needed),
                needed < s.have ? fmt::format(", {} left", s.said(s.have - needed)) : ""));
        }
        return result;
    }
};

} // namespace

std::variant<answer, refusal> answer_from_stock(const recipe::recipe& r, const from_stock& stock,
                                                fit how) {
    std::vector<store> stores;
    for (const auto& given : stock.have) {
        auto s = finder(r).store_of(given);
        if (const auto* no = std::get_if<refusal>(&s)) return *no;
        auto& one = std::get<store>(s);
        for (const auto& other : stores)
            if (other.uses.front().of == one.uses.front().of)
                return refusal{
                    fmt::format("{} and {} are the same here: give it once", other.name, one.name),
                    {}};
        stores.push_back(std::move(one));
    }
    return chooser(r, stores, how).run();
}

} // namespace benchcard::batch
