#pragma once

#include "compiler/safety/allergen_lists.hpp"
#include "compiler/safety/safety.hpp"
#include "styles/card.hpp"

namespace benchcard::cards {

/// The strip of a card: what a component contains, what it may, and whose packets must be read.
/// Which law asks for an allergen is said only where the two differ. What is not known is named,
/// and nothing is ever said to be absent.
styles::paragraph allergen_strip(const safety::allergens& a, safety::law whose);

} // namespace benchcard::cards
