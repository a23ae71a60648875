#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// What a method leaves out: an oven's heat without a time, a bake without its heat, and how what
/// was heated and keeps chilled is cooled.
void check_method(const recipe::recipe& r, grammar::diagnostics& to);

/// A heat that no oven has, that burns oil or sugar, or that does not bake, fry, boil or raise
/// anything: degrees of the other scale, most often.
void check_heat(const recipe::recipe& r, grammar::diagnostics& to);

/// A tin that what goes into it cannot fill to a quarter, or that it would flow over.
void check_tins(const recipe::recipe& r, grammar::diagnostics& to);

} // namespace benchcard::checks
