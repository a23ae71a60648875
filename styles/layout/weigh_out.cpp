#include "styles/layout/compose.hpp"

#include <algorithm>
#include <functional>
#include <optional>

namespace benchcard::layout {

namespace {

using styles::column;

/// The width of an amount before its decimal point.
double whole_width(const ready_row& row, double size) {
    return part_width(row.amount, 0, row.whole_part, size);
}

/// The width of an amount from its decimal point on.
double decimals_width(const ready_row& row, double size) {
    return part_width(row.amount, row.whole_part, row.amount.slots.size(), size);
}

/// A column whose figures end at its right edge.
struct side_column {
    column which;
    double right = 0;
    double width = 0;
};

/// Where the columns stand, from the left margin.
struct plan {
    std::optional<double> tick_x = {};
    double tick = 0;
    double amount_width = 0;
    double point_x = 0; ///< where the whole part of an amount ends
    double unit_gap = 0, unit_width = 0;
    double decimals = 0; ///< the width of the longest decimals
    double name_x = 0, name_width = 0;
    boost::container::small_vector<side_column, 3> sides = {};
    bool beneath = false; ///< imperial, spoons and percent stand under the name
};

const ready_text& side_text(const ready_row& row, column which) {
    return which == column::imperial ? row.imperial
           : which == column::spoons ? row.spoons
                                     : row.percent;
}

const ready_text& side_heading(const ready_card& card, column which) {
    return which == column::imperial ? card.imperial_heading
           : which == column::spoons ? card.spoons_heading
                                     : card.percent_heading;
}

bool is_side(column c) {
    return c == column::imperial || c == column::spoons || c == column::percent;
}

/// The width of a side column, 0 when no row has anything in it.
double side_width(const composing& with, column which) {
    double most = 0;
    for (const auto& row : with.card.weigh_out)
        most = std::max(most, natural_width(side_text(row, which), one_size(with.size.detail)));
    if (most == 0) return 0;
    const auto& heading = side_heading(with.card, which);
    return std::max(most, widest_piece(heading, one_size(with.size.small_print)));
}

/// The widths of the amounts of all rows and totals: whole part, decimals and unit.
struct amount_widths {
    double whole = 0, decimals = 0, unit = 0;
};

amount_widths amounts_of(const composing& with) {
    const auto& s = with.size;
    amount_widths w;
    for (const auto* rows : {&with.card.weigh_out, &with.card.totals}) {
        for (const auto& row : *rows) {
            w.whole = std::max(w.whole, whole_width(row, s.amount));
            w.decimals = std::max(w.decimals, decimals_width(row, s.amount));
        }
    }
    for (const auto* rows : {&with.card.weigh_out, &with.card.totals})
        for (const auto& row : *rows) {
            // A word without a figure (`some`) stands in the place of the figures.
            const double unit = natural_width(row.unit, one_size(s.unit));
            auto& place = row.amount.empty() ? w.whole : w.unit;
            place = std::max(place, unit);
        }
    w.whole = std::min(w.whole, with.width * 0.34);
    w.decimals = std::min(w.decimals, with.width * 0.12);
    w.unit = std::min(w.unit, with.width * 0.2);
    return w;
}

/// Puts the columns in the style's order; the name gets what the others leave.
plan placed(const composing& with, bool beneath) {
    const auto& s = with.size;
    const auto amounts = amounts_of(with);
    const double gap = s.name * 0.6, unit_gap = s.amount * 0.2;
    plan p{.tick = s.amount * 0.74, .beneath = beneath};
    p.amount_width = amounts.whole;
    p.unit_width = amounts.unit;
    const double amount_total =
        amounts.whole + amounts.decimals + (amounts.unit > 0 ? unit_gap + amounts.unit : 0);

    double fixed = 0;
    std::size_t count = 0;
    const auto width_of = [&](column c) {
        if (c == column::tick) return p.tick;
        if (c == column::amount) return amount_total;
        return is_side(c) && !beneath ? side_width(with, c) : 0.0;
    };
    boost::container::small_vector<double, 8> widths; // of each column
    for (const auto c : with.look.columns) {
        const double width = widths.emplace_back(width_of(c));
        fixed += width;
        count += width > 0 || c == column::name ? 1 : 0;
    }
    p.name_width = with.width - fixed - gap * (count > 0 ? static_cast<double>(count - 1) : 0);

    double x = 0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const auto c = with.look.columns[i];
        const double width = c == column::name ? p.name_width : widths[i];
        if (width <= 0) continue;
        if (c == column::tick) p.tick_x = x;
        if (c == column::amount) {
            p.point_x = x + amounts.whole;
            p.unit_gap = unit_gap;
            p.decimals = amounts.decimals;
        }
        if (c == column::name) p.name_x = x;
        if (is_side(c)) p.sides.push_back({c, x + width, width});
        x += width + gap;
    }
    return p;
}

/// Columns beside the name where it keeps room enough, else lines beneath it.
plan planned(const composing& with) {
    const auto beside = placed(with, false);
    if (beside.sides.empty()) return beside;
    double longest = 0;
    for (const auto& row : with.card.weigh_out)
        longest = std::max(longest, widest_piece(row.name, {with.size.name, with.size.detail}));
    const double least = std::max(with.width * 0.26, std::min(longest, with.width * 0.45));
    return beside.name_width >= least ? beside : placed(with, true);
}

cell amount_cell(const ready_row& row, const plan& p, double size) {
    const double natural = natural_width(row.amount, one_size(size));
    const double whole = whole_width(row, size);
    if (whole <= p.amount_width + 1e-6 && natural - whole <= p.decimals + 1e-6)
        return {broken(row.amount, one_size(size), natural + 1), p.point_x - whole};
    return {broken(row.amount, one_size(size), p.amount_width), p.point_x, cell::side::right};
}

/// A unit stands close behind its own figures, or in their place where there are none.
cell unit_cell(const ready_row& row, const plan& p, const sizes& s) {
    if (row.amount.empty())
        return {broken(row.unit, one_size(s.unit), p.amount_width), p.point_x, cell::side::right};
    const double decimals = std::min(decimals_width(row, s.amount), p.decimals);
    return {broken(row.unit, one_size(s.unit), p.unit_width), p.point_x + decimals + p.unit_gap};
}

/// Amount, unit, name, what is beneath it, and the columns.
using cells_of_row = boost::container::small_vector<cell, 7>;

/// The name and what stands beside it; where there are no columns, beside it on its own line
/// if there is room, else beneath.
void add_names(cells_of_row& cells, const ready_row& row, const plan& p, const sizes& s) {
    const type_sizes named{s.name, s.detail};
    const auto detail = one_size(s.detail);
    cell name{broken(row.name, named, p.name_width), p.name_x};
    if (p.beneath) {
        const double beneath = natural_width(*row.beneath, detail);
        if (natural_width(row.name, named) + s.name * 0.8 + beneath <= p.name_width)
            cells.push_back({broken(*row.beneath, detail, p.name_width), p.name_x + p.name_width,
                             cell::side::right});
        else
            for (const auto& l : broken(*row.beneath, detail, p.name_width))
                name.lines.push_back(l);
    }
    cells.push_back(std::move(name));
    for (const auto& side : p.sides)
        cells.push_back({broken(side_text(row, side.which), detail, side.width), side.right,
                         cell::side::right});
}

/// A box to tick, drawn, in the middle of the height of the figures beside it.
shape tick_box(const plan& p, double amount_size) {
    constexpr double line_width = 1.1, half_capital = 0.357;
    const double side = p.tick - line_width;
    return rectangle{*p.tick_x + line_width / 2, -amount_size * half_capital - side / 2, side, side,
                     line_width};
}

cells_of_row row_cells(const ready_row& row, const plan& p, const sizes& s) {
    cells_of_row cells;
    cells.push_back(amount_cell(row, p, s.amount));
    cells.push_back(unit_cell(row, p, s));
    add_names(cells, row, p, s);
    return cells;
}

std::vector<band> row_bands(const ready_row& row, const plan& p, const composing& with) {
    const auto& s = with.size;
    auto measures = measures_for(s.name, s.leading - 0.06);
    measures.above = std::max(measures.above, s.amount * 0.73);
    const auto cells = row_cells(row, p, s);
    auto bands = with.row_of(std::span(cells.data(), cells.size()), measures);
    if (p.tick_x) {
        if (bands.empty()) bands.push_back({.above = measures.above, .below = measures.below});
        bands.front().shapes.push_back(tick_box(p, s.amount));
    }
    return bands;
}

/// A total has no columns behind its words: they may run to the edge of the card, or to the amount
/// where that stands behind them.
std::vector<band> total_bands(const ready_row& row, const plan& p, const composing& with) {
    const auto& s = with.size;
    const double room = p.point_x > p.name_x ? p.name_width : with.width - p.name_x;
    auto measures = measures_for(s.detail, s.leading);
    measures.above = std::max(measures.above, s.amount * 0.73);
    return with.row_of({amount_cell(row, p, s.amount),
                        unit_cell(row, p, s),
                        {broken(row.name, one_size(s.detail), room), p.name_x}},
                       measures);
}

group heading_group(const composing& with, const plan& p) {
    const auto& s = with.size;
    group made{.space_before = 0, .pad_above = s.space * 0.5, .keep_with_next = true};
    std::vector<cell> cells;
    if (p.beneath && !with.card.beneath_heading->empty())
        cells.push_back({broken(*with.card.beneath_heading, one_size(s.small_print), p.name_width),
                         p.name_x + p.name_width, cell::side::right});
    for (const auto& side : p.sides)
        cells.push_back(
            {broken(side_heading(with.card, side.which), one_size(s.small_print), side.width),
             side.right, cell::side::right});
    made.bands = with.row_of(cells, measures_for(s.small_print, s.leading - 0.08));
    return made;
}

/// Whether any row has one of the columns that need a heading.
bool has_sides(const composing& with) {
    return std::ranges::any_of(with.look.columns, [&](column c) {
        return is_side(c) && std::ranges::any_of(with.card.weigh_out, [&](const ready_row& row) {
                   return !side_text(row, c).empty();
               });
    });
}

} // namespace

block compose_weigh_out(const composing& with) {
    block made{.whole = true};
    if (with.card.weigh_out.empty()) return made;
    const auto p = planned(with);
    if (has_sides(with)) {
        auto heading = heading_group(with, p);
        if (!heading.bands.empty()) {
            made.groups.push_back(std::move(heading));
            made.heading = 1;
        }
    }
    made.groups.reserve(with.card.weigh_out.size() + 1);
    for (const auto& row : with.card.weigh_out) {
        const bool first = made.groups.size() == made.heading;
        const double pad = with.size.space * 0.72;
        made.groups.push_back({.pad_above = first && made.heading > 0 ? pad * 0.55 : pad,
                               .pad_below = pad * 0.8,
                               .rule_above = first ? 0 : 0.4,
                               .bands = row_bands(row, p, with)});
    }
    return made;
}

std::size_t wrapped_lines(const composing& with, std::size_t enough) {
    std::size_t beyond = 0;
    if (with.card.weigh_out.empty()) return beyond;
    const auto p = planned(with);
    for (const auto& row : with.card.weigh_out) {
        if (beyond > enough) break;
        std::size_t lines = 1;
        for (const auto& c : row_cells(row, p, with.size)) lines = std::max(lines, c.lines.size());
        beyond += lines - 1;
    }
    return beyond;
}

block compose_totals(const composing& with) {
    block made;
    if (with.card.totals.empty()) return made;
    const auto p = planned(with);
    for (const auto& row : with.card.totals) {
        const bool first = made.groups.empty();
        made.groups.push_back({.pad_above = with.size.space * (first ? 0.8 : 0.3),
                               .pad_below = with.size.space * 0.3,
                               .rule_above = first ? 1.2 : 0,
                               .bands = total_bands(row, p, with)});
    }
    return made;
}

} // namespace benchcard::layout
