#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <vector>

namespace benchcard::recipe {

/// The first `wanted` components and all that they use, each after those it uses. Empty where they
/// are made of each other in a circle, which a message names.
std::vector<std::size_t> order_by_use(const std::vector<component>& made, std::size_t wanted,
                                      grammar::diagnostics& to);

} // namespace benchcard::recipe
