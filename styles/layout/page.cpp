#include "styles/layout/page.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <limits>

namespace benchcard::layout {

namespace {

struct mover {
    double dx, dy;

    shape operator()(line l) const {
        l.x1 += dx, l.x2 += dx, l.y1 += dy, l.y2 += dy;
        return l;
    }
    shape operator()(rectangle r) const {
        r.x += dx, r.y += dy;
        return r;
    }
    shape operator()(polygon p) const {
        for (auto& corner : p.points) corner.x += dx, corner.y += dy;
        return p;
    }
};

box widened(box b, double by) { return {b.left - by, b.top - by, b.right + by, b.bottom + by}; }

struct inker {
    box operator()(const line& l) const {
        // A line ends square where it ends: only its sides are half its width away.
        const double half = l.width / 2;
        const double across = l.y1 == l.y2 ? 0 : half, down = l.x1 == l.x2 ? 0 : half;
        return {std::min(l.x1, l.x2) - across, std::min(l.y1, l.y2) - down,
                std::max(l.x1, l.x2) + across, std::max(l.y1, l.y2) + down};
    }
    box operator()(const rectangle& r) const {
        return widened({r.x, r.y, r.x + r.width, r.y + r.height}, r.line_width / 2);
    }
    box operator()(const polygon& p) const {
        if (p.points.empty()) return {};
        box b{p.points[0].x, p.points[0].y, p.points[0].x, p.points[0].y};
        for (const auto& corner : p.points) {
            b.left = std::min(b.left, corner.x), b.right = std::max(b.right, corner.x);
            b.top = std::min(b.top, corner.y), b.bottom = std::max(b.bottom, corner.y);
        }
        return widened(b, p.line_width / 2);
    }
};

} // namespace

shape moved(const shape& s, double dx, double dy) { return std::visit(mover{dx, dy}, s); }

text_run moved(const text_run& run, double dx, double dy) {
    auto there = run;
    there.x += dx, there.y += dy;
    return there;
}

void put(const page& from, double dx, double dy, page& on) {
    for (const auto& s : from.shapes) on.shapes.push_back(moved(s, dx, dy));
    for (const auto& run : from.text) on.text.push_back(moved(run, dx, dy));
}

box ink_of(const shape& s) { return std::visit(inker{}, s); }

box ink_of(const text_run& run, const font_metrics& metrics) {
    static constexpr glyph unknown{.advance = 600, .right = 600, .above = 714};
    constexpr int none = std::numeric_limits<int>::max();
    int at = 0, left = none, right = -none, above = -none, below = -none;
    for_each_character(run.text, [&](char32_t code) {
        const auto* found = metrics.faces[run.face].find(code);
        const auto& g = found ? *found : unknown;
        if (g.right > g.left) {
            left = std::min(left, at + g.left), right = std::max(right, at + g.right);
            above = std::max(above, g.above), below = std::max(below, g.below);
        }
        at += g.advance;
    });
    if (left == none) left = right = above = below = 0;
    const double unit = run.size / 1000;
    return {run.x + left * unit, run.y - above * unit, run.x + right * unit, run.y + below * unit};
}

} // namespace benchcard::layout
