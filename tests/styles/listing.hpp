#pragma once

#include "styles/layout/page.hpp"

#include <fmt/format.h>
#include <string>
#include <vector>

/// Pages as readable text: what a golden file holds.
namespace benchcard {

struct lister {
    std::string operator()(const layout::line& l) const {
        return fmt::format("line {:.1f} {:.1f} to {:.1f} {:.1f}, {:.1f} wide", l.x1, l.y1, l.x2,
                           l.y2, l.width);
    }
    std::string operator()(const layout::rectangle& r) const {
        return fmt::format("{} {:.1f} {:.1f}, {:.1f} by {:.1f}",
                           r.line_width > 0 ? "box" : "black box", r.x, r.y, r.width, r.height);
    }
    std::string operator()(const layout::polygon& p) const {
        std::string out = p.line_width > 0 ? "outline" : "black outline";
        for (const auto& corner : p.points)
            out += fmt::format(" {:.1f},{:.1f}", corner.x, corner.y);
        return out;
    }
};

inline std::string listing(const std::vector<layout::page>& pages) {
    std::string out;
    for (const auto& p : pages) {
        out += fmt::format("page {}: {:.1f} by {:.1f}{}\n", p.label, p.width, p.height,
                           p.bookmarks.empty() ? "" : ", bookmark " + p.bookmarks.front());
        for (const auto& s : p.shapes) out += "  " + std::visit(lister{}, s) + "\n";
        for (const auto& run : p.text)
            out +=
                fmt::format("  {:6.1f} {:6.1f} {:5.1f} pt font {}{} “{}”\n", run.x, run.y, run.size,
                            run.face, run.ink == styles::white ? " white" : "", run.text);
    }
    return out;
}

} // namespace benchcard
