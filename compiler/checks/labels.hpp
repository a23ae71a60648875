#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// What bears on labels: a list of allergens that does not exist, an allergen or something raw in a
/// definition by a name that is not known, and a `keeps:` beyond the rule for food of its kind.
void check_labels(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& to);

} // namespace benchcard::checks
