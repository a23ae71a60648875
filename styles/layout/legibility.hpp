#pragma once

#include "styles/layout/font_metrics.hpp"
#include "styles/style.hpp"

namespace benchcard::layout {

/// How high letters are at least, as the angle they fill in the eye: 20 minutes of arc, the lower
/// end of what ISO 9241-3 prefers (20 to 22; 16 is its minimum).
inline constexpr double least_minutes_of_arc = 20;

/// The height in mm that fills so many minutes of arc at a distance in mm: 2 d tan(a/2).
double height_at(double distance, double minutes);

/// The minutes of arc that a height in mm fills at a distance in mm.
double minutes_at(double distance, double height);

/// How high an `x` of a font stands over the baseline, in parts of the type size; 0 where it has
/// none.
double x_height_of(const face_metrics& face);
/// How high an `x` of a weight stands over the baseline, in parts of the type size.
double x_height(const font_metrics& metrics, weight w);

/// The style with its amounts no smaller than they can be read from the distance that it states,
/// and no type so small that an x is lower than its `x_height`.
styles::style legible(styles::style look, const font_metrics& metrics);

} // namespace benchcard::layout
