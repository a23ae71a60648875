#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

/// A triangle with a mark of exclamation, drawn: no font need have it. `side` points wide, its
/// foot on the baseline.
std::vector<shape> warning_sign(double x, double side) {
    const double height = side * 0.88, middle = x + side / 2;
    const double bar = side * 0.055, dot = side * 0.06;
    return {
        polygon{{{x, 0}, {middle, -height}, {x + side, 0}}, side * 0.085},
        polygon{{{middle - bar * 1.25, -height * 0.66},
                 {middle + bar * 1.25, -height * 0.66},
                 {middle + bar * 0.75, -height * 0.30},
                 {middle - bar * 0.75, -height * 0.30}},
                0},
        rectangle{middle - dot, -height * 0.21, dot * 2, dot * 2, 0},
    };
}

group caution(const composing& with, const ready_text& text) {
    const auto& s = with.size;
    const double pad = s.text * 0.6, sign = s.text * 1.25;
    const double indent = pad + sign + s.text * 0.55;
    group made{.space_before = s.space * 0.7,
               .pad_above = s.space * 0.4 + s.text * 0.3,
               .pad_below = s.space * 0.4 + s.text * 0.1,
               .box = 1.4};
    const std::vector<cell> cells{
        {evenly_broken(text, one_size(s.text), with.width - indent - pad), indent}};
    made.bands = with.row_of(cells, measures_for(s.text, s.leading));
    if (!made.bands.empty() && with.wanted == purpose::printing) {
        auto& first = made.bands.front();
        for (auto& part : warning_sign(pad, sign))
            first.shapes.push_back(moved(part, 0, s.text * 0.14));
    }
    return made;
}

} // namespace

block compose_allergens(const composing& with) {
    const auto& s = with.size;
    block made;
    if (with.card.allergens.empty()) return made;
    made.groups.push_back(
        {.space_before = s.space * 0.9,
         .pad_above = s.space * 0.3 + s.text * 0.3,
         .pad_below = s.space * 0.3 + s.text * 0.1,
         .rule_above = 0.8,
         .rule_below = 0.8,
         .bands =
             with.row_of({{evenly_broken(with.card.allergens, one_size(s.text), with.width), 0}},
                         measures_for(s.text, s.leading))});
    return made;
}

block compose_cautions(const composing& with) {
    block made;
    for (const auto& text : with.card.cautions)
        if (!text.empty()) made.groups.push_back(caution(with, text));
    return made;
}

block compose_notes(const composing& with) {
    const auto& s = with.size;
    block made;
    for (const auto& text : with.card.notes) {
        if (text.empty()) continue;
        made.groups.push_back(
            {.space_before = s.space * 0.8,
             .bands = with.row_of({{evenly_broken(text, one_size(s.text), with.width), 0}},
                                  measures_for(s.text, s.leading))});
    }
    return made;
}

block compose_keeping(const composing& with) {
    const auto& s = with.size;
    block made;
    if (with.card.keeping.empty() && with.card.made.empty()) return made;
    const auto sizes = one_size(s.text);
    const double label = natural_width(with.card.made, sizes), gap = s.text * 0.5;
    const double blank = std::min(std::max(with.width * 0.24, 84.0), with.width);
    const double right = with.card.made.empty() ? 0 : label + gap + blank;
    group g{.space_before = s.space, .pad_below = s.space * 0.3};
    // Beside the blank while that costs the words no further line.
    const double beside_width = with.width - right - (right > 0 ? s.text : 0);
    const bool beside =
        beside_width > with.width * 0.3 && broken(with.card.keeping, sizes, beside_width).size() <=
                                               broken(with.card.keeping, sizes, with.width).size();
    const auto measures = measures_for(s.text, s.leading);
    const cell keeps{broken(with.card.keeping, sizes, beside ? beside_width : with.width), 0};
    const bool label_fits = label + gap + blank <= with.width;
    const cell label_cell{broken(with.card.made, sizes, label_fits ? label + 1 : with.width),
                          label_fits ? with.width - right : 0};
    if (beside) {
        g.bands = with.row_of({keeps, label_cell}, measures);
    } else {
        g.bands = with.row_of({keeps}, measures);
        auto below = with.row_of({label_cell}, measures);
        if (!g.bands.empty() && !below.empty())
            below.front().above = std::max(below.front().above, s.text * 1.3);
        for (auto& b : below) g.bands.push_back(std::move(b));
    }
    if (right > 0 && !g.bands.empty() && label_fits) {
        auto& with_blank = beside ? g.bands.front() : g.bands.back();
        with_blank.shapes.push_back(
            line{with.width - blank, s.text * 0.12, with.width, s.text * 0.12, 0.8});
    }
    made.groups.push_back(std::move(g));
    return made;
}

block compose(styles::block which, const composing& with) {
    switch (which) {
    case styles::block::weigh_out:
        return compose_weigh_out(with);
    case styles::block::totals:
        return compose_totals(with);
    case styles::block::table:
        return compose_table(with);
    case styles::block::method:
        return compose_method(with);
    case styles::block::oven:
        return compose_oven(with);
    case styles::block::allergens:
        return compose_allergens(with);
    case styles::block::cautions:
        return compose_cautions(with);
    case styles::block::notes:
        return compose_notes(with);
    case styles::block::keeping:
        return compose_keeping(with);
    case styles::block::figures:
        return compose_figures(with);
    }
    return {};
}

} // namespace benchcard::layout
