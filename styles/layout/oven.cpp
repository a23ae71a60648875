#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

/// Which columns of the oven table have anything to say.
std::vector<std::size_t> used_columns(const ready_card& card) {
    std::vector<std::size_t> used;
    for (std::size_t c = 0; c < card.oven.front().size(); ++c)
        if (std::ranges::any_of(card.oven, [c](const auto& row) { return !row[c].value.empty(); }))
            used.push_back(c);
    return used;
}

/// What a column would take to stand on one line, and what it cannot do without.
struct column_need {
    double natural = 0, least = 0;
};

column_need need_of(const composing& with, std::size_t column) {
    column_need need;
    for (const auto& row : with.card.oven) {
        const auto label = one_size(with.size.small_print), value = one_size(with.size.name);
        need.natural = std::max({need.natural, natural_width(row[column].label, label),
                                 natural_width(row[column].value, value)});
        need.least = std::max({need.least, widest_piece(row[column].label, label),
                               widest_piece(row[column].value, value)});
    }
    return need;
}

struct oven_grid {
    std::vector<std::vector<std::size_t>> lines; ///< columns, line by line
    std::vector<double> widths;                  ///< of the cells in each line
};

/// All columns on one line when they fit, else in as few even lines as hold them.
oven_grid arranged(const composing& with, const std::vector<std::size_t>& used, double pad) {
    std::vector<column_need> needs;
    double natural = 0, least = 0, widest = 0;
    for (const auto c : used) {
        needs.push_back(need_of(with, c));
        natural += needs.back().natural + 2 * pad;
        least += needs.back().least + 2 * pad;
        widest = std::max(widest, needs.back().least + 2 * pad);
    }
    oven_grid grid;
    if (least <= with.width) {
        // The room that is left goes to those whose text would have to wrap, or to all alike.
        const double spare = with.width - (natural <= with.width ? natural : least);
        const double wish = natural - least;
        grid.lines.push_back(used);
        for (const auto& need : needs) {
            const double base = (natural <= with.width ? need.natural : need.least) + 2 * pad;
            const double share = natural <= with.width || wish <= 0
                                     ? 1.0 / static_cast<double>(needs.size())
                                     : (need.natural - need.least) / wish;
            grid.widths.push_back(base + spare * share);
        }
        return grid;
    }
    auto across = static_cast<std::size_t>(std::max(1.0, with.width / std::max(widest, 1.0)));
    const auto count = (used.size() + across - 1) / across;
    across = (used.size() + count - 1) / count;
    for (std::size_t from = 0; from < used.size(); from += across)
        grid.lines.emplace_back(
            used.begin() + static_cast<std::ptrdiff_t>(from),
            used.begin() + static_cast<std::ptrdiff_t>(std::min(from + across, used.size())));
    grid.widths.assign(across, with.width / static_cast<double>(across));
    return grid;
}

/// The cells of one line: labels in small print over values in bold.
group line_group(const composing& with, const std::vector<ready_oven_cell>& row,
                 const std::vector<std::size_t>& columns, const std::vector<double>& widths,
                 bool labelled, double pad) {
    const auto& s = with.size;
    // Even in the smallest type clear of the rules, which are as thick in any.
    group made{.pad_above = std::max(s.space * 0.7, 1.8),
               .pad_below = std::max(s.space * 0.55, 1.6)};
    std::vector<cell> labels, values;
    double x = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto& c = row[columns[i]];
        const double room = widths[i] - 2 * pad;
        labels.push_back({broken(c.label, one_size(s.small_print), room), x + pad});
        values.push_back({broken(c.value, one_size(s.name), room), x + pad});
        if (i > 0) made.dividers.push_back(x);
        x += widths[i];
    }
    if (labelled) made.bands = with.row_of(labels, measures_for(s.small_print, s.leading - 0.08));
    auto value_bands = with.row_of(values, measures_for(s.name, s.leading - 0.06));
    if (labelled && !value_bands.empty()) value_bands.front().above += s.space * 0.3;
    for (auto& b : value_bands) made.bands.push_back(std::move(b));
    return made;
}

} // namespace

block compose_oven(const composing& with) {
    block made;
    if (with.card.oven.empty()) return made;
    const auto used = used_columns(with.card);
    if (used.empty()) return made;
    const double pad = with.size.name * 0.45;
    const auto grid = arranged(with, used, pad);
    for (const auto& row : with.card.oven)
        for (const auto& columns : grid.lines) {
            const bool first = made.groups.empty();
            const bool labelled = first || grid.lines.size() > 1;
            auto g = line_group(with, row, columns, grid.widths, labelled, pad);
            g.space_before = first ? with.size.space * 1.2 : 0;
            g.rule_above = first ? 1.6 : 0.4;
            made.groups.push_back(std::move(g));
        }
    made.groups.back().rule_below = 1.6;
    return made;
}

} // namespace benchcard::layout
