#pragma once

#include <cstdint>

namespace benchcard::styles {

/// A colour of ink or paper, each part from 0 to 255, as on a screen (sRGB).
struct colour {
    std::uint8_t red = 0, green = 0, blue = 0;

    bool operator==(const colour&) const = default;
};

inline constexpr colour black{}, white{255, 255, 255};

/// The grey that a printer or a copier without colours makes of it: 30 % of the red, 59 % of the
/// green and 11 % of the blue (ISO 32000-1, 10.3.5).
colour in_grey(colour c);

/// How much two colours differ in brightness, from 1 (not at all) to 21 (black and white): the
/// contrast ratio of WCAG 2.2.
double contrast(colour a, colour b);

/// What every text has at least against its ground: WCAG 2.2, success criterion 1.4.6.
inline constexpr double least_contrast = 7;

/// The contrast of two colours, or of their greys where that is less.
double contrast_in_print(colour a, colour b);

} // namespace benchcard::styles
