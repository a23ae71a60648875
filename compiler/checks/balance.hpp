#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// What the mix gives against what is to be made of it: too little, or more than stays in a bowl.
/// Where one slip of the pen would explain it, the line is shown.
void check_balance(const recipe::recipe& r, grammar::diagnostics& to);

/// Whether a message on the balance of a component is among these.
bool is_out_of_balance(const recipe::component& c, const grammar::diagnostics& messages);

} // namespace benchcard::checks
