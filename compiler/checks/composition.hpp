#pragma once

#include "compiler/recipe/recipe.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace benchcard::checks {

/// What proportions are reckoned of.
enum class part {
    flour, ///< of grain and pulse, starch too
    dry,   ///< flour, and what does its work in a cake: ground nuts, cocoa, oats, coconut
    water, ///< of liquids, whatever they are: milk, egg, butter, juice
    moist, ///< water that stays in its food: in fruit, vegetables, cheese, meat
    fat,   ///< butter, lard and oil as weighed, water and all
    sugar,
    salt,
    brine,   ///< foods that bring salt along: cheese, ham, olives, soy sauce
    yeast,   ///< as fresh yeast: active dry counts 2.5 times, instant 3 times (common practice)
    starter, ///< sourdough
    powder,  ///< baking powder
    soda,    ///< bicarbonate of soda
    gelatine,
    agar,
    egg,   ///< whole, white or yolk; dried egg four times (common practice)
    white, ///< egg white by itself
    dairy, ///< milk and cream, of plants too
    cream,
    chocolate,
    fruit,
    spice,
    sour, ///< vinegar, mustard and soy sauce: what is salted on purpose
    count,
};

/// How much of each part an ingredient holds, in percent of its weight.
using shares = std::array<int, static_cast<std::size_t>(part::count)>;

/// The shares of a built-in ingredient, by its entry and its family; nothing of one's own. Rounded
/// figures (common practice): the bounds that use them leave room for ten times their error.
shares shares_of(const ingredients::entry& what);

/// How much of each part is in a mix, in grams of the written amounts.
struct makeup {
    std::array<exact, static_cast<std::size_t>(part::count)> grams{};
    std::array<bool, static_cast<std::size_t>(part::count)> unsure{}; ///< some of unknown weight
    std::array<bool, static_cast<std::size_t>(part::count)> loose{};  ///< `some salt`, `1 pinch`
    exact total = 0;
    bool is_whole = true; ///< whether the weight of every line is known
    exact unknown = 0;    ///< grams of things that are not in the built-in table

    const exact& of(part p) const { return grams[static_cast<std::size_t>(p)]; }
    bool is_sure(part p) const { return !unsure[static_cast<std::size_t>(p)]; }
    bool is_loose(part p) const { return loose[static_cast<std::size_t>(p)]; }
};

/// One for each component, in their order: its own lines, and what the unbaked components it uses
/// bring along.
std::vector<makeup> makeups_of(const recipe::recipe& r);

/// Whether a line says that it does not go into the mix: `for the bench`, `to sprinkle on top`.
bool is_set_aside(const recipe::line& l);

/// Grams of a part in one line; 0 where the line is another component, set aside, or of
/// unknown weight.
exact grams_in(const recipe::line& l, part p);

} // namespace benchcard::checks
