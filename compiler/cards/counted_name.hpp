#pragma once

#include "compiler/batch/batch.hpp"

#include <string>

namespace benchcard::cards {

/// A name with the word that is counted in it in the singular or the plural: `medium egg`, `cloves
/// garlic`.
std::string in_number(const std::string& name, bool many);

/// The name of a line that is counted, in the number of the batch: `1 medium egg` where the recipe
/// has `2 medium eggs`; other lines by their names as written.
std::string counted_name(const batch::weigh_line& l);

/// The same by the words a step uses for it: `egg` becomes `eggs` where there are more; words
/// without the thing that is counted give way to the whole name (`garlic`, of `20 cloves garlic`).
std::string counted_name(const batch::weigh_line& l, const std::string& said);

/// Whether part of it is beaten before it is weighed: an egg, its white or its yolk.
bool is_beaten(const recipe::line& l);

/// What part of a counted thing is called: `beaten egg`, `tomatoes` of a tin.
std::string name_of_part(const recipe::line& l);

} // namespace benchcard::cards
