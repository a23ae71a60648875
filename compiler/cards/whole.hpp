#pragma once

#include "compiler/batch/batch.hpp"
#include "styles/card.hpp"

#include <string>
#include <vector>

namespace benchcard::cards {

/// What stands at the end of a whole recipe beside its cards.
struct appendix {
    bool figures = false;              ///< how each amount came about, with its source
    std::vector<std::string> warnings; ///< what the checks say, a sentence each
};

/// A whole recipe as one card: its components are the parts of it, and what holds for all of them
/// stands once.
styles::card whole_recipe(const batch::batch& b, const appendix& with);

} // namespace benchcard::cards
