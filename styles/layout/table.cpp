#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

double whole_width(const ready_figure& f, double size) {
    return part_width(f.text, 0, f.whole_part, size);
}

double decimals_width(const ready_figure& f, double size) {
    return part_width(f.text, f.whole_part, f.text.slots.size(), size);
}

/// A column of figures: where their decimal points stand, and where it ends.
struct figure_column {
    double whole = 0, decimals = 0; ///< the widest of each part
    double width = 0;
    double point_x = 0, right = 0;
};

struct column_plan {
    std::vector<figure_column> columns;
    double name_width = 0;
};

column_plan planned_columns(const composing& with) {
    const auto& s = with.size;
    column_plan p;
    const double gap = s.name * 1.3;
    // The names keep two fifths of the card, whatever stands in the columns.
    const auto count = static_cast<double>(with.card.table_headings.size());
    const double widest = count > 0 ? with.width * 0.6 / count - gap : 0;
    for (std::size_t i = 0; i < with.card.table_headings.size(); ++i) {
        figure_column c;
        const double heading = natural_width(with.card.table_headings[i], one_size(s.small_print));
        for (const auto& row : with.card.table) {
            if (i >= row.figures.size()) continue;
            c.whole = std::max(c.whole, whole_width(row.figures[i], s.amount));
            c.decimals = std::max(c.decimals, decimals_width(row.figures[i], s.amount));
        }
        c.width = std::min(std::max(c.whole + c.decimals, heading), widest);
        p.columns.push_back(c);
    }
    double right = with.width;
    for (auto c = p.columns.rbegin(); c != p.columns.rend(); ++c) {
        c->right = right;
        c->point_x = right - c->decimals;
        right -= c->width + gap;
    }
    p.name_width = right;
    return p;
}

cell figure_cell(const ready_figure& f, const figure_column& c, double size) {
    const double whole = whole_width(f, size);
    if (whole > c.width - c.decimals + 1e-6)
        return {broken(f.text, one_size(size), c.width), c.right, cell::side::right};
    return {broken(f.text, one_size(size), whole + decimals_width(f, size) + 1), c.point_x - whole};
}

group heading_of(const composing& with, const column_plan& p) {
    const auto& s = with.size;
    group made{.pad_above = s.space * 0.5, .keep_with_next = true};
    std::vector<cell> cells;
    for (std::size_t i = 0; i < p.columns.size(); ++i)
        cells.push_back({broken(with.card.table_headings[i], one_size(s.small_print),
                                p.columns[i].width + 0.01),
                         p.columns[i].right, cell::side::right});
    made.bands = with.row_of(cells, measures_for(s.small_print, s.leading - 0.08));
    return made;
}

group row_group(const ready_table_row& row, const composing& with, const column_plan& p) {
    const auto& s = with.size;
    std::vector<cell> cells{{broken(row.name, {s.name, s.detail}, p.name_width), 0}};
    for (std::size_t i = 0; i < row.figures.size() && i < p.columns.size(); ++i)
        cells.push_back(figure_cell(row.figures[i], p.columns[i], s.amount));
    auto measures = measures_for(s.name, s.leading - 0.06);
    measures.above = std::max(measures.above, s.amount * 0.73);
    return {.pad_above = s.space * 0.45,
            .pad_below = s.space * 0.45,
            .rule_above = 0.4,
            .bands = with.row_of(cells, measures)};
}

} // namespace

block compose_table(const composing& with) {
    block made;
    if (with.card.table.empty()) return made;
    const auto p = planned_columns(with);
    made.groups.push_back(heading_of(with, p));
    made.heading = 1;
    for (const auto& row : with.card.table) made.groups.push_back(row_group(row, with, p));
    return made;
}

} // namespace benchcard::layout
