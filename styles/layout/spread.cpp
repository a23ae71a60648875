#include "styles/layout/spread.hpp"

namespace benchcard::layout {

namespace {

/// Parts that fit into an area, or nothing where they take a second page.
std::optional<page> one_page(const parts& of, const area& on, purpose wanted,
                             const block& foot = {}) {
    if (on.height() <= 0) return std::nullopt;
    auto made = stacked(
        of, on, [&](std::size_t, bool) { return &foot; }, wanted);
    if (made.pages.size() > 1 || made.broken > 0) return std::nullopt;
    return std::move(made.pages.front());
}

} // namespace

half right_half(const area& on, double left_width) {
    return {left_width + gutter, on.width() - left_width - gutter};
}

std::optional<page> spread(const spread_parts& of, const area& on, const block& foot,
                           purpose wanted) {
    auto middle = on;
    const double foot_height = height_of(foot.groups);
    middle.top += height_of(of.head.groups) + head_gap;
    middle.bottom += height_with_space(of.bottom) + foot_height + (foot_height > 0 ? foot_gap : 0);
    auto left = middle, right = middle;
    left.right = on.sheet_width - on.left - of.left_width;
    right.left = on.left + right_half(on, of.left_width).x;

    // In the order in which they are read, so that they are copied so.
    const auto weighed = one_page({.top = of.left}, left, wanted);
    const auto done = weighed ? one_page({.top = of.right}, right, wanted) : std::nullopt;
    if (!done) return std::nullopt;
    auto made = one_page({.head = of.head}, on, wanted);
    const auto lower = one_page({.bottom = of.bottom}, on, wanted, foot);
    if (!made || !lower) return std::nullopt;
    put(*weighed, 0, 0, *made);
    put(*done, 0, 0, *made);
    put(*lower, 0, 0, *made);
    const double x = right.left - gutter / 2;
    made->shapes.push_back(line{x, middle.top + 2, x, middle.sheet_height - middle.bottom, 0.4});
    return made;
}

} // namespace benchcard::layout
