#pragma once

#include "compiler/recipe/recipe.hpp"
#include "styles/card.hpp"

namespace benchcard::cards {

/// The tin and how many go on a tray, as a card says it: `Tin **23 cm (9 in) round** · **2 tarts**
/// a tray`. They do not scale; the tin may be another that was ordered for. Empty where neither is
/// stated.
styles::paragraph equipment_of(const recipe::component& c,
                               const std::optional<grammar::tin>& instead = {});

} // namespace benchcard::cards
