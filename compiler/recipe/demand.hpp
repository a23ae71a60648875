#pragma once

#include "compiler/recipe/recipe.hpp"

namespace benchcard::recipe {

/// What is asked of one component by all that use it, and what that leaves, for the written batch.
/// In pieces where it is made in pieces and all use it so; in grams where these are known.
struct demand {
    struct user {
        std::size_t component = 0; ///< which one uses it
        std::size_t line = 0;
        std::optional<exact> pieces;
        std::optional<exact> grams;
        std::optional<exact> share; ///< of all there is
    };
    std::vector<user> users;
    std::optional<exact> pieces, grams;           ///< asked for in all
    std::optional<exact> made_pieces, made_grams; ///< there are
    std::optional<exact> left_pieces, left_grams; ///< left over; below 0 where more is asked for
};

/// One for each component, in their order. The product has no users.
std::vector<demand> demands_of(const recipe& r);

} // namespace benchcard::recipe
