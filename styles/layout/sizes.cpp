#include "styles/layout/sizes.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

double between(styles::type_range range, double scale) {
    return range.least + scale * (range.most - range.least);
}

} // namespace

sizes sizes_at(const styles::style& look, fitting to) {
    const double scale = to.scale, air = to.air;
    sizes s;
    s.title = between(look.title, scale + 0.4 * to.words * (1 - scale));
    s.amount = between(look.amounts, scale);
    s.unit = std::max(s.amount * 0.72, look.amounts.least);
    s.name = between(look.names, scale);
    s.detail = between(look.text, scale);
    const double most = std::max(s.detail, std::min(look.text.most, s.name));
    s.text = s.detail + to.words * (most - s.detail);
    s.small_print = between(look.small_print, scale);
    s.leading = 1.2 + 0.22 * air;
    s.space = s.text * (0.32 + 0.58 * air);
    return s;
}

} // namespace benchcard::layout
