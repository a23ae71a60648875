#pragma once

#include "compiler/recipe/recipe.hpp"

namespace benchcard::recipe {

/// What an amount of an ingredient weighs, or why that is not known.
struct weighing {
    weighed_by how = weighed_by::nothing;
    std::optional<spread> grams;
    std::optional<spread> ml;    ///< where it was written as a volume
    std::optional<spread> count; ///< where it was counted
    const ingredients::figure* figure = nullptr;
    std::optional<grammar::diagnostic>
        problem; ///< an error: without it the weight is merely unknown
};

/// The weight of some measures added up (`1 cup + 2 tbsp`) of an ingredient, described by the
/// words before its name. The state among these words, or `packed`, picks the density; a size or
/// a piece picks the weight of a counted one. `what` may be null: then only weights weigh.
/// `name` is the ingredient's, for messages.
weighing weigh(const std::vector<grammar::measure>& terms, const ingredients::entry* what,
               const std::string& description, measures::system system, const std::string& name);

/// Low by low, used by used and high by high.
spread times(const spread& a, const spread& b);

/// A number of an amount, packs multiplied out; the middle of a range is what is used.
spread spread_of(const grammar::amount& quantity);

/// The grams a millilitre of an ingredient that these words before its name ask for, and the range
/// that filling the measure in other ways gives; nothing where no figure is known.
struct density {
    const ingredients::figure* figure = nullptr;
    exact low = 0, used = 0, high = 0;
};
std::optional<density> density_of(const ingredients::entry& what, const std::string& description);

} // namespace benchcard::recipe
