#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// Everything that is wrong or doubtful about a recipe that could be understood; in the order of
/// the text. One message a cause: nothing is said that follows from an unknown weight.
grammar::diagnostics check(const recipe::recipe& r);

/// Demand against yield: an assembly that wants more of a component than is made; a component
/// that nobody uses.
void check_demand(const recipe::recipe& r, grammar::diagnostics& to);
/// Amounts as they stand: ranges upside down, two scales of one temperature that disagree.
void check_amounts(const recipe::recipe& r, grammar::diagnostics& to);

} // namespace benchcard::checks
