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

double x_height_of(const face_metrics& face) {
    const auto* x = face.find(U'x');
    return x ? x->above / 1000.0 : 0;
}

double x_height(const font_metrics& metrics, weight w) {
    return metrics.look_up(U'x', w).measures.above / 1000.0;
}

namespace {

void raise(styles::type_range& range, double least) {
    range.least = std::max(range.least, least);
    range.most = std::max(range.most, range.least);
}

} // namespace

styles::style legible(styles::style look, const font_metrics& metrics) {
    // Amounts are bold and their units are not: both are read from there.
    const double x = std::min(x_height(metrics, weight::bold), x_height(metrics, weight::regular));
    const auto size_for = [&](double height) { return height * styles::points_per_mm / x; };
    if (look.distance)
        raise(look.amounts, size_for(height_at(*look.distance, least_minutes_of_arc)));
    if (look.x_height > 0)
        for (auto* range : {&look.title, &look.amounts, &look.names, &look.text, &look.small_print})
            raise(*range, size_for(look.x_height));
    return look;
}

} // namespace benchcard::layout
