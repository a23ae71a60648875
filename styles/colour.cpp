#include "styles/colour.hpp"

#include <algorithm>
#include <cmath>

namespace benchcard::styles {

namespace {

/// One part of a colour as light, from 0 to 1 (WCAG 2.2, relative luminance).
double light_of(std::uint8_t part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(colour c) {
    return 0.2126 * light_of(c.red) + 0.7152 * light_of(c.green) + 0.0722 * light_of(c.blue);
}

} // namespace

colour in_grey(colour c) {
    const double grey = 0.30 * c.red + 0.59 * c.green + 0.11 * c.blue;
    const auto part = static_cast<std::uint8_t>(std::lround(grey));
    return {part, part, part};
}

double contrast(colour a, colour b) {
    const double one = luminance(a), other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

double contrast_in_print(colour a, colour b) {
    return std::min(contrast(a, b), contrast(in_grey(a), in_grey(b)));
}

} // namespace benchcard::styles
