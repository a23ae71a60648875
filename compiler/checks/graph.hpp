#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// Pieces that go by twos, threes or fours into a product and do not come out even: `2 halves` a
/// bun from 55 halves. Only where their number is stated, and where nothing else is left over.
void check_pairs(const recipe::recipe& r, grammar::diagnostics& to);

/// A component made for this recipe alone of which more than two fifths stay over: the amount that
/// uses it may be the slip. Not of what is taken by share (`half Cream`), is made whole, or comes
/// from a file that others use too.
void check_left_over(const recipe::recipe& r, grammar::diagnostics& to);

/// A component that is used above the place where it is made. That is allowed, and reads badly.
void check_order(const recipe::recipe& r, grammar::diagnostics& to);

} // namespace benchcard::checks
