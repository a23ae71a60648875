#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// Amounts that are far from those around them: kilograms among grams, milligrams of flour, a
/// teaspoon of what is measured in cups everywhere else.
void check_neighbours(const recipe::recipe& r, grammar::diagnostics& to);

/// Amounts that no spoon or scale shows: 0.1 tbsp, 11 pinches, 0.3 g of salt.
void check_measurable(const recipe::recipe& r, grammar::diagnostics& to);

} // namespace benchcard::checks
