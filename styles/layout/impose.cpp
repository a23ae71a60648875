#include "styles/layout/impose.hpp"

#include <algorithm>
#include <cmath>

namespace benchcard::layout {

namespace {

using styles::paper;
using styles::points_per_mm;

std::size_t times_in(double whole, double part) {
    return static_cast<std::size_t>(std::floor(whole / part + 1e-6));
}

grid filled(const paper& sheet, const paper& card) {
    return {sheet, card, times_in(sheet.width, card.width), times_in(sheet.height, card.height)};
}

paper upright(const paper& sheet) {
    return {sheet.name, std::min(sheet.width, sheet.height), std::max(sheet.width, sheet.height)};
}

/// 4 cards stand as the sheet stands; 2 and 8 stand upright on a sheet that is turned.
grid halved(const paper& sheet, int number) {
    const auto on = number == 4 ? sheet : turned(sheet);
    const std::size_t across = number == 8 ? 4 : 2, down = number == 2 ? 1 : 2;
    return {
        on,
        {sheet.name, on.width / static_cast<double>(across), on.height / static_cast<double>(down)},
        across,
        down};
}

/// Where the upper left corner of the first card stands on the sheet, in points.
struct origin {
    double x = 0, y = 0;
};
origin origin_of(const grid& g) {
    const auto rest = [](double whole, double part, std::size_t times) {
        return (whole - part * static_cast<double>(times)) / 2 * points_per_mm;
    };
    return {rest(g.sheet.width, g.card.width, g.across),
            rest(g.sheet.height, g.card.height, g.down)};
}

constexpr double mark_width = 0.4;
constexpr double mark_length = 4 * points_per_mm, away = 2 * points_per_mm;
/// Where there is nothing to cut off beside the cards, marks stand on the cut itself, a little
/// away from the edge of the sheet, since few printers reach it.
constexpr double from_edge = 5 * points_per_mm;

/// The marks of one cut: places along it, from end to end of the sheet.
void mark_ends(page& on, double at, double first, double last, double length, bool upright_cut) {
    const auto draw = [&](double from, double to) {
        on.shapes.push_back(upright_cut ? line{at, from, at, to, mark_width}
                                        : line{from, at, to, at, mark_width});
    };
    const bool has_rest = first >= away + mark_length;
    draw(has_rest ? first - away - mark_length : from_edge,
         has_rest ? first - away : from_edge + mark_length);
    draw(has_rest ? last + away : length - from_edge - mark_length,
         has_rest ? last + away + mark_length : length - from_edge);
}

void add_marks(page& on, const grid& g) {
    const auto [x, y] = origin_of(g);
    const double width = g.card.width * points_per_mm, height = g.card.height * points_per_mm;
    const double right = x + width * static_cast<double>(g.across);
    const double lower = y + height * static_cast<double>(g.down);
    constexpr double hardly = 0.5; // points: the edge of the sheet needs no cut
    std::vector<double> upright_cuts, level_cuts;
    for (std::size_t i = 0; i <= g.across; ++i) {
        const double at = x + width * static_cast<double>(i);
        if (at > hardly && at < on.width - hardly) upright_cuts.push_back(at);
    }
    for (std::size_t i = 0; i <= g.down; ++i) {
        const double at = y + height * static_cast<double>(i);
        if (at > hardly && at < on.height - hardly) level_cuts.push_back(at);
    }
    for (const double at : upright_cuts) mark_ends(on, at, y, lower, on.height, true);
    for (const double at : level_cuts) mark_ends(on, at, x, right, on.width, false);
    // A cross where two cuts meet between cards.
    for (const double at : upright_cuts)
        for (const double over : level_cuts) {
            const bool between = at > x + hardly && at < right - hardly && over > y + hardly &&
                                 over < lower - hardly;
            if (!between) continue;
            on.shapes.push_back(line{at, over - away, at, over + away, mark_width});
            on.shapes.push_back(line{at - away, over, at + away, over, mark_width});
        }
    on.trim = box{x, y, right, lower};
}

void add_label(page& to, const std::string& label) {
    if (label.empty() || to.label == label || to.label.ends_with(", " + label)) return;
    to.label += (to.label.empty() ? "" : ", ") + label;
}

void place_card(page& sheet, const page& card, const grid& g, std::size_t across,
                std::size_t down) {
    const auto [x, y] = origin_of(g);
    put(card, x + g.card.width * points_per_mm * static_cast<double>(across),
        y + g.card.height * points_per_mm * static_cast<double>(down), sheet);
    add_label(sheet, card.label);
    for (const auto& title : card.bookmarks)
        if (std::ranges::find(sheet.bookmarks, title) == sheet.bookmarks.end())
            sheet.bookmarks.push_back(title);
}

page empty_sheet(const grid& g) {
    page sheet{.width = g.sheet.width * points_per_mm, .height = g.sheet.height * points_per_mm};
    add_marks(sheet, g);
    return sheet;
}

/// Smaller cards hold no recipe: their edges measure so many millimetres at least.
constexpr double least_short = 65, least_long = 100;

bool is_large_enough(const paper& card) {
    return std::min(card.width, card.height) >= least_short &&
           std::max(card.width, card.height) >= least_long;
}

} // namespace

std::optional<grid> grid_for(const styles::style& look, const paper& sheet) {
    if (!look.cut) return grid{sheet, sheet, 1, 1};
    if (look.cut->number > 0) {
        const auto made = halved(sheet, look.cut->number);
        return is_large_enough(made.card) ? std::optional(made) : std::nullopt;
    }
    const auto as_is = filled(sheet, *look.cut->to);
    const auto other = filled(sheet.is_turned() ? upright(sheet) : turned(sheet), *look.cut->to);
    const auto& best = other.places() > as_is.places() ? other : as_is;
    if (best.places() == 0) return std::nullopt;
    return best;
}

bool turns_like_a_leaf(const paper& sheet, flip over) {
    return sheet.is_turned() == (over == flip::short_edge);
}

void settle_backs(std::vector<page>& pages, const styles::style& look, const paper& sheet,
                  flip over) {
    using styles::edge;
    const auto shift = [&](edge from, edge to) {
        return (styles::clear_at(look, to) - styles::clear_at(look, from)) * points_per_mm;
    };
    const bool like_a_leaf = turns_like_a_leaf(sheet, over);
    const double dx = like_a_leaf ? shift(edge::left, edge::right) : 0;
    const double dy = like_a_leaf ? 0 : shift(edge::top, edge::bottom);
    for (std::size_t i = 1; i < pages.size(); i += 2) {
        page moved_page = pages[i];
        moved_page.shapes.clear(), moved_page.text.clear();
        put(pages[i], dx, dy, moved_page);
        pages[i] = std::move(moved_page);
    }
}

std::vector<page> imposed(std::vector<page> pages, const grid& on, std::size_t copies,
                          std::optional<flip> over) {
    if (!on.is_cut()) return pages;
    const std::size_t sides = over ? 2 : 1;
    const std::size_t a_sheet = std::max<std::size_t>(1, on.places() / copies);
    const bool like_a_leaf = over && turns_like_a_leaf(on.sheet, *over);
    std::vector<page> sheets;
    for (std::size_t card = 0; card * sides < pages.size(); ++card) {
        if (card % a_sheet == 0) sheets.insert(sheets.end(), sides, empty_sheet(on));
        for (std::size_t copy = 0; copy < copies; ++copy) {
            const auto place = card % a_sheet * copies + copy;
            const auto across = place % on.across, down = place / on.across;
            place_card(sheets[sheets.size() - sides], pages[card * sides], on, across, down);
            if (!over || card * sides + 1 >= pages.size()) continue;
            place_card(sheets.back(), pages[card * sides + 1], on,
                       like_a_leaf ? on.across - 1 - across : across,
                       like_a_leaf ? down : on.down - 1 - down);
        }
    }
    return sheets;
}

} // namespace benchcard::layout
