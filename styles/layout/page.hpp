#pragma once

#include "styles/colour.hpp"
#include "styles/layout/font_metrics.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// Where everything stands: a list of positioned things that a painter only has to draw.
/// Points, from the upper left corner of the sheet; y grows downwards.
namespace benchcard::layout {

/// A text in one font and size, from `x` on the baseline `y`.
struct text_run {
    double x = 0, y = 0;
    double size = 0;
    face_id face = 0;
    styles::colour ink = styles::black;
    std::string text = {};

    bool operator==(const text_run&) const = default;
};

struct line {
    double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
    double width = 0;
    styles::colour ink = styles::black;

    bool operator==(const line&) const = default;
};

/// Outlined with a line of `line_width`, or filled when that is zero.
struct rectangle {
    double x = 0, y = 0, width = 0, height = 0;
    double line_width = 0;
    styles::colour ink = styles::black;

    bool operator==(const rectangle&) const = default;
};

struct point {
    double x = 0, y = 0;

    bool operator==(const point&) const = default;
};

/// Straight lines from point to point and back to the first; filled when `line_width` is zero.
struct polygon {
    std::vector<point> points;
    double line_width = 0;
    styles::colour ink = styles::black;

    bool operator==(const polygon&) const = default;
};

using shape = std::variant<line, rectangle, polygon>;

/// The extent of some ink.
struct box {
    double left = 0, top = 0, right = 0, bottom = 0;

    bool operator==(const box&) const = default;
};

struct page {
    double width = 0, height = 0;
    std::string label = {}; ///< `2`, or `2a`, `2b` of a card that runs on
    /// The titles of the cards that begin here; none on the further pages of a card.
    std::vector<std::string> bookmarks = {};
    std::optional<box> trim = {}; ///< what is left after cutting; nothing where all of it is
    std::vector<shape> shapes = {};
    std::vector<text_run> text = {};

    bool operator==(const page&) const = default;
};

shape moved(const shape& s, double dx, double dy);
text_run moved(const text_run& run, double dx, double dy);
/// Puts all that stands on a page on another, so much further right and down.
void put(const page& from, double dx, double dy, page& on);

/// The ink of a shape, its lines' widths counted.
box ink_of(const shape& s);
/// The ink of a run, from the boxes of its glyphs.
box ink_of(const text_run& run, const font_metrics& metrics);

} // namespace benchcard::layout
