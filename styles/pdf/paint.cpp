#include "styles/pdf/paint.hpp"

#include "styles/pdf/character_name.hpp"
#include "styles/pdf/painting.hpp"

#include <cmath>
#include <fmt/format.h>

namespace benchcard::pdf {

namespace {

using layout::page;

bool drawable(double number) { return std::isfinite(number) && std::fabs(number) <= 14400; }

struct drawable_shape {
    bool operator()(const layout::line& l) const {
        return drawable(l.x1) && drawable(l.y1) && drawable(l.x2) && drawable(l.y2) &&
               drawable(l.width);
    }
    bool operator()(const layout::rectangle& r) const {
        return drawable(r.x) && drawable(r.y) && drawable(r.width) && drawable(r.height) &&
               drawable(r.line_width);
    }
    bool operator()(const layout::polygon& p) const {
        for (const auto& corner : p.points)
            if (!drawable(corner.x) || !drawable(corner.y)) return false;
        return drawable(p.line_width);
    }
};

/// The PDF library writes numbers that are none into the file without a word, so this is the
/// one place where every number is looked at.
bool drawable_page(const page& p) {
    if (!drawable(p.width) || !drawable(p.height) || p.width < 3 || p.height < 3) return false;
    const auto& t = p.trim;
    if (t && !(drawable(t->left) && drawable(t->top) && drawable(t->right) && drawable(t->bottom)))
        return false;
    for (const auto& s : p.shapes)
        if (!std::visit(drawable_shape{}, s)) return false;
    for (const auto& run : p.text)
        if (!drawable(run.x) || !drawable(run.y) || !(run.size > 0 && run.size <= 600))
            return false;
    return true;
}

/// What keeps some pages from being drawn; the characters that they take from each font.
std::pair<painted, characters_used> looked_over(const std::vector<page>& pages,
                                                const font_set& fonts) {
    painted result;
    if (pages.empty()) result.messages.push_back(failure("nothing-to-print", "there is no card"));
    for (const auto& p : pages)
        if (!drawable_page(p)) {
            result.messages.push_back(
                failure("pdf-failed", fmt::format("card {} has a place that is no number",
                                                  p.label.empty() ? "1" : p.label)));
            return {std::move(result), characters_used{}};
        }
    auto used = characters_of(pages, fonts);
    for (const auto& [code, text] : used.missing) {
        result.missing.push_back(code);
        result.messages.push_back(
            failure("missing-character", fmt::format("no font has the character {}, in “{}”",
                                                     named_character(code), text.substr(0, 200))));
    }
    return {std::move(result), std::move(used)};
}

} // namespace

painted look_over(const std::vector<page>& pages, const font_set& fonts) {
    return looked_over(pages, fonts).first;
}

painted paint(std::vector<page> pages, const font_set& fonts, const document_info& info) {
    auto [result, used] = looked_over(pages, fonts);
    if (grammar::has_errors(result.messages)) return result;
    painting made(fonts, info, std::move(used.by_face));
    for (std::size_t i = 0; i < pages.size(); ++i) {
        auto* drawn = made.add(pages[i]);
        if (!drawn) break;
        if (!pages[i].label.empty()) made.add_label(i, pages[i].label);
        for (const auto& title : pages[i].bookmarks) made.point(made.add_bookmark(title), drawn);
        pages[i] = {};
    }
    return made.finish();
}

} // namespace benchcard::pdf
