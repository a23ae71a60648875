#pragma once

#include "compiler/measures/systems.hpp"
#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <optional>
#include <string>

namespace benchcard::commands {

/// What came of converting one amount of an ingredient.
struct conversion {
    /// `281 g (255 g to 319 g by how the cup is filled), 10 oz; source: …`; nothing where it
    /// failed.
    std::optional<std::string> weight;
    std::string why;               ///< how that came about, step by step
    bool is_read = true;           ///< false where the text is no amount of an ingredient
    grammar::diagnostics messages; ///< with their places in the amount
};

/// What a line weighs, whose weight is known: in grams with the range and what makes it one, in
/// ounces and, where it was written by weight, in cups and spoons; and the source of the figure.
std::string said_every_way(const recipe::line& l, measures::system system);

/// Weighs an amount just as a line of a recipe is weighed.
conversion convert_amount(const std::string& amount, measures::system measures);

} // namespace benchcard::commands
