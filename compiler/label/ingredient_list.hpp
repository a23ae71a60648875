#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/safety/safety.hpp"

#include <optional>
#include <string>
#include <vector>

/// The ingredient list of a product as a draft for the person responsible for its label.
namespace benchcard::label {

/// An ingredient of a product, or a component as a compound ingredient with a list of its own.
struct item {
    std::string name;             ///< `dark chocolate`, without what the recipe does to it
    std::optional<exact> used;    ///< grams in the whole product, as used; nothing if not known
    std::optional<exact> left;    ///< the same, of water less what has evaporated
    bool is_some = false;         ///< `some flour, for dusting`: not weighed, and next to nothing
    bool is_water = false;        ///< added water or ice
    bool from_packet = false;     ///< its own list stands on its packet
    bool is_choice = false;       ///< `hazelnuts or almonds`
    safety::allergens allergens;  ///< of an ingredient; a compound's stand with its parts
    std::vector<item> parts;      ///< of a compound ingredient
    std::optional<exact> percent; ///< of the finished product, where the title names it alone
};

/// An ingredient that the title names and that stands in several places: the sum of them.
struct named_total {
    std::string name;
    exact percent = 0; ///< of the finished product
};

struct ingredient_list {
    std::string title;
    std::vector<item> items;       ///< in descending weight as used, those not weighed last
    std::optional<exact> finished; ///< grams of the product less what evaporates
    std::vector<named_total> totals;
    safety::allergens allergens; ///< of the product
};

/// The entries of a label's list, those of its components among them: as many as no label holds.
/// Components that are used in several places are in it as often, and more than this is not listed.
inline constexpr std::size_t most_entries = 2'000;
/// How many there would be; where there are more than the most, one more than that.
std::size_t entries_in(const recipe::recipe& r);

/// Art. 18(1) of Reg. (EU) No 1169/2011 and 21 CFR 101.4(a)(1): descending weight as used. Water
/// that evaporates (`loss:` in an oven, fryer or pot) is deducted from the added water: that of the
/// component first, then that of those it uses, in proportion. Percentages are of the finished
/// product (Annex VIII, 4(a)).
ingredient_list ingredients_of(const batch::batch& b);

/// The added water by the finished product's weight, and whether it is listed: more than 5 %
/// (Annex VII, Part A, 1). Zero where the weight is not known.
exact water_percent(const ingredient_list& list);

/// The list as the EU's form has it: water by what is left of it, none of it at 5 % or less.
std::vector<item> in_eu_order(const ingredient_list& list);

} // namespace benchcard::label
