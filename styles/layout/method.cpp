#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

block compose_method(const composing& with) {
    const auto& s = with.size;
    const type_sizes sizes{s.text, s.text};
    double number_width = 0;
    for (const auto& number : with.card.step_numbers)
        number_width = std::max(number_width, natural_width(number, sizes));
    // As wide as a tick box and its gap, so that steps and amounts begin on one upright line.
    const double indent = std::max(number_width + s.text * 0.6, s.amount * 0.74 + s.name * 0.6);
    block made;
    for (std::size_t i = 0; i < with.card.method.size(); ++i) {
        const std::vector<cell> cells{
            {broken(with.card.step_numbers[i], sizes, indent), 0},
            {evenly_broken(with.card.method[i], sizes, with.width - indent), indent}};
        made.groups.push_back({.space_before = s.space * (i == 0 ? 1.3 : 0.9),
                               .bands = with.row_of(cells, measures_for(s.text, s.leading))});
    }
    return made;
}

} // namespace benchcard::layout
