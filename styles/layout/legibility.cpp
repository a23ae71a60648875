#include "styles/layout/legibility.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace benchcard::layout {

namespace {

constexpr double radians_in_minute = std::numbers::pi / (180 * 60);

} // namespace

double height_at(double distance, double minutes) {
    return 2 * distance * std::tan(minutes * radians_in_minute / 2);
}

double minutes_at(double distance, double height) {
    return 2 * std::atan(height / (2 * distance)) / radians_in_minute;
}

double x_height(const font_metrics& metrics, weight w) {
    return metrics.look_up(U'x', w).measures.above / 1000.0;
}

styles::style legible(styles::style look, const font_metrics& metrics) {
    if (!look.distance) return look;
    // Amounts are bold and their units are not: both are read from there.
    const double x = std::min(x_height(metrics, weight::bold), x_height(metrics, weight::regular));
    const double height = height_at(*look.distance, least_minutes_of_arc) * styles::points_per_mm;
    look.amounts.least = std::max(look.amounts.least, height / x);
    look.amounts.most = std::max(look.amounts.most, look.amounts.least);
    return look;
}

} // namespace benchcard::layout
