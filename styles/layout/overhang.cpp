#include "styles/layout/overhang.hpp"

#include <algorithm>

namespace benchcard::layout {

box overhang_of(const std::vector<page>& pages, const styles::style& look,
                const font_metrics& metrics) {
    using styles::edge;
    const auto clear = [&](edge at) {
        const bool has_hole = look.hole && look.hole->at == at;
        const double hole = has_hole ? look.hole->clear : 0;
        const double corners = look.corners > 0 ? styles::clear_at(look, at) : 0;
        return std::max({styles::least_margin, hole, corners}) * styles::points_per_mm;
    };
    const box safe{clear(edge::left), clear(edge::top), clear(edge::right), clear(edge::bottom)};
    box most;
    for (const auto& p : pages)
        for (const auto& run : p.text) {
            const auto ink = ink_of(run, metrics);
            most.left = std::max(most.left, safe.left - ink.left);
            most.top = std::max(most.top, safe.top - ink.top);
            most.right = std::max(most.right, ink.right - (p.width - safe.right));
            most.bottom = std::max(most.bottom, ink.bottom - (p.height - safe.bottom));
        }
    return most;
}

box further_in(const box& inset, const box& over) {
    constexpr double more = 0.5; // points
    const auto moved_in = [](double so_far, double by) {
        return by > 0 ? so_far + by + more : so_far;
    };
    return {moved_in(inset.left, over.left), moved_in(inset.top, over.top),
            moved_in(inset.right, over.right), moved_in(inset.bottom, over.bottom)};
}

} // namespace benchcard::layout
