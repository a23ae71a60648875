#include "compiler/batch/split.hpp"

#include "compiler/measures/kitchen.hpp"

namespace benchcard::batch {

std::optional<split> split_of(const component_batch& c) {
    if (!c.mix || !c.of->at_most || *c.mix <= *c.of->at_most) return std::nullopt;
    const exact fill = *c.mix / *c.of->at_most;
    const auto full = measures::whole_part(fill);
    const exact mixes = full == fill ? full : exact(full + 1);
    return split{mixes, *c.mix / mixes};
}

} // namespace benchcard::batch
