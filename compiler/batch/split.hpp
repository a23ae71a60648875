#pragma once

#include "compiler/batch/batch.hpp"

#include <optional>

namespace benchcard::batch {

/// A batch that is made in several equal mixes.
struct split {
    exact mixes = 1; ///< at least 2
    exact each = 0;  ///< grams; together exactly the whole mix
};

/// As few equal mixes as hold no more than `at-most:` each; nothing where one does, where no limit
/// is set and where the weight of the mix is not known.
std::optional<split> split_of(const component_batch& c);

} // namespace benchcard::batch
