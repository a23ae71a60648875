#include "styles/layout/folio.hpp"

namespace benchcard::layout {

namespace {

/// In points: the figures, and a little over them.
double strip_height(const styles::style& look) { return look.small_print.least * 1.2; }

double width_of(const std::string& digits, const font_metrics& metrics, double size) {
    double result = 0;
    for (const auto c : digits)
        result += metrics.look_up(static_cast<unsigned char>(c), weight::regular).measures.advance;
    return result * size / 1000;
}

} // namespace

styles::paper above_folio(const styles::paper& sheet, const styles::style& look) {
    auto result = sheet;
    result.height -= strip_height(look) / styles::points_per_mm;
    return result;
}

void add_folio(page& to, const std::string& number, const styles::style& look,
               const font_metrics& metrics) {
    to.height += strip_height(look);
    const double size = look.small_print.least;
    const double baseline = to.height - look.margin * styles::points_per_mm;
    text_run run{(to.width - width_of(number, metrics, size)) / 2, baseline, size};
    run.face = metrics.look_up('0', weight::regular).face;
    run.text = number;
    to.text.push_back(std::move(run));
}

} // namespace benchcard::layout
