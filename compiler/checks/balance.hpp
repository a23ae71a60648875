#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <cstdint>
#include <set>
#include <utility>

namespace benchcard::checks {

/// What the mix gives against what is to be made of it: too little, or more than stays in a bowl.
/// Where one slip of the pen would explain it, the line is shown.
void check_balance(const recipe::recipe& r, grammar::diagnostics& to);

/// Where components say what they make whose balance is among these messages.
using yield_places = std::set<std::pair<std::uint32_t, std::uint32_t>>; ///< file and begin
yield_places unbalanced_places(const grammar::diagnostics& messages);
/// Whether a component is one of them.
bool is_out_of_balance(const recipe::component& c, const yield_places& places);

} // namespace benchcard::checks
