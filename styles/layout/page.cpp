#include "styles/layout/page.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>

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
    int at = 0;
    box ink{0, 0, 0, 0};
    bool first = true;
    for_each_character(run.text, [&](char32_t code) {
        const auto* g = metrics.faces[run.face].find(code);
        const glyph measures = g ? *g : glyph{.advance = 600, .right = 600, .above = 714};
        if (measures.right > measures.left) {
            const box b{double(at + measures.left), double(-measures.above),
                        double(at + measures.right), double(measures.below)};
            ink = first ? b
                        : box{std::min(ink.left, b.left), std::min(ink.top, b.top),
                              std::max(ink.right, b.right), std::max(ink.bottom, b.bottom)};
            first = false;
        }
        at += measures.advance;
    });
    const double unit = run.size / 1000;
    return {run.x + ink.left * unit, run.y + ink.top * unit, run.x + ink.right * unit,
            run.y + ink.bottom * unit};
}

} // namespace benchcard::layout
