#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

type_sizes one_size(double size) { return {size, size}; }

/// The title and, on a black tab at the right, the batch.
struct headline {
    const ready_text& title;
    const ready_text& batch;
    double size = 0;
    double width = 0;

    double pad() const { return size * 0.26; }
    double tab_width() const {
        return batch.empty() ? 0 : natural_width(batch, one_size(size)) + 2 * pad();
    }
    /// A batch that takes more than half of the card's width goes under the title.
    bool has_tab() const { return !batch.empty() && tab_width() <= width * 0.5; }
    double title_width() const { return has_tab() ? width - tab_width() - size * 0.4 : width; }
};

/// The tab behind a batch that is set on the baseline y = 0.
rectangle tab_of(const headline& h, const type_line& batch) {
    const double up = std::max(batch.above, h.size * 0.714) + h.size * 0.2;
    const double down = batch.below + h.size * 0.2;
    return {h.width - h.tab_width(), -up, h.tab_width(), up + down, 0};
}

std::vector<group> headline_groups(const headline& h, const std::vector<type_line>& title,
                                   const std::vector<type_line>& batch) {
    auto measures = measures_for(h.size, 1.12);
    group row;
    if (!h.has_tab()) {
        row.bands = row_of({{title, 0}}, measures);
        std::vector<group> made;
        if (!row.bands.empty()) made.push_back(std::move(row));
        if (!batch.empty())
            made.push_back(
                {.space_before = h.size * 0.2, .bands = row_of({{batch, 0}}, measures)});
        return made;
    }
    auto reversed = batch;
    for (auto& l : reversed)
        for (auto& run : l.runs) run.reversed = true;
    row.bands = row_of({{title, 0}, {reversed, h.width - h.pad(), cell::side::right}}, measures);
    const auto tab = tab_of(h, batch.front());
    auto& first = row.bands.front();
    first.above = std::max(first.above, -tab.y);
    first.below = std::max(first.below, tab.y + tab.height);
    first.shapes.push_back(tab);
    return {std::move(row)};
}

/// The size of the title: that of the style, or smaller where it saves the title a line.
double title_size(const composing& with) {
    const double largest = with.size.title, least = with.look.title.least;
    for (double size = largest; size > least; size -= 0.5) {
        const headline h{with.card.title, with.card.batch, size, with.width};
        const auto natural = natural_width(with.card.title, one_size(size));
        if (natural <= h.title_width()) return size;
        if (size < largest * 0.72) break;
    }
    // It takes two lines at any size worth having: the largest that does not break a word.
    for (double size = largest; size > least; size -= 0.5) {
        const headline h{with.card.title, with.card.batch, size, with.width};
        if (widest_piece(with.card.title, one_size(size)) > h.title_width()) continue;
        if (broken(with.card.title, one_size(size), h.title_width()).size() <= 2) return size;
    }
    return least;
}

/// What fits of a text on so many lines, with three dots where some was left out.
std::vector<type_line> shortened(const ready_text& text, const ready_text& dots, double size,
                                 double width, std::size_t most_lines) {
    constexpr std::size_t most_characters = 300;
    auto lines = broken(text, one_size(size), width);
    if (lines.size() <= most_lines) return lines;
    auto count = std::min(text.slots.size(), most_characters);
    while (lines.size() > most_lines && count > 0) {
        ready_text part{{text.slots.begin(), text.slots.begin() + static_cast<long>(--count)}};
        part.slots.insert(part.slots.end(), dots.slots.begin(), dots.slots.end());
        lines = broken(part, one_size(size), width);
    }
    return lines;
}

} // namespace

block compose_head(const composing& with) {
    const auto& s = with.size;
    const headline h{with.card.title, with.card.batch, title_size(with), with.width};
    block made;
    made.groups =
        headline_groups(h, broken(h.title, one_size(h.size), h.title_width()),
                        broken(h.batch, one_size(h.size), h.has_tab() ? h.width : with.width));

    group under{.space_before = s.text * 0.35, .pad_below = s.space * 0.5 + s.text * 0.15};
    const auto sizes = one_size(s.text);
    const double yield = natural_width(with.card.yield, sizes);
    const double of = natural_width(with.card.of, sizes);
    const auto measures = measures_for(s.text, s.leading);
    if (of + s.text * 1.5 + yield <= with.width) {
        under.bands = row_of({{broken(with.card.of, sizes, with.width), 0},
                              {broken(with.card.yield, sizes, with.width), with.width,
                               cell::side::right}},
                             measures);
    } else {
        auto lines = broken(with.card.of, sizes, with.width);
        for (auto& l : broken(with.card.yield, sizes, with.width)) lines.push_back(std::move(l));
        under.bands = row_of({{lines, 0}}, measures);
    }
    under.rule_below = 1.6;
    made.groups.push_back(std::move(under));
    return made;
}

block compose_short_head(const composing& with) {
    const headline h{with.card.title, with.card.batch, with.look.title.least, with.width};
    block made;
    made.groups = headline_groups(
        h, shortened(h.title, with.card.dots, h.size, h.title_width(), 2),
        shortened(h.batch, with.card.dots, h.size, h.has_tab() ? h.width : with.width, 2));
    made.groups.push_back({.pad_below = with.size.space * 0.5 + 2, .rule_below = 1.6});
    return made;
}

namespace {

/// Where the number and fingerprint stand, and what that leaves for revision and footnote.
struct foot_plan {
    double mark_width = 0;
    bool beside = false;
    double text_width = 0;
};

foot_plan planned(const composing& with, const page_mark& mark) {
    const auto sizes = one_size(with.size.small_print);
    foot_plan p;
    p.mark_width = std::max(natural_width(mark.number, sizes), natural_width(mark.next, sizes));
    p.beside = p.mark_width <= with.width * 0.55;
    p.text_width = p.beside ? with.width - p.mark_width - with.size.small_print * 1.5 : with.width;
    return p;
}

std::vector<type_line> foot_lines(const composing& with, double width) {
    return broken(with.card.foot, one_size(with.size.small_print), width);
}

} // namespace

bool foot_is_long(const composing& with, const page_mark& mark) {
    constexpr double most_of_page = 0.16;
    const auto lines = foot_lines(with, planned(with, mark).text_width).size();
    return static_cast<double>(lines) * with.size.small_print * with.size.leading >
           with.height * most_of_page;
}

block compose_long_foot(const composing& with) {
    group text{.space_before = with.size.space};
    text.bands = row_of({{foot_lines(with, with.width), 0}},
                        measures_for(with.size.small_print, with.size.leading));
    block made;
    made.groups.push_back(std::move(text));
    return made;
}

block compose_foot(const composing& with, const page_mark& mark) {
    const auto& s = with.size;
    const auto sizes = one_size(s.small_print);
    const auto p = planned(with, mark);
    const bool with_text = !with.card.foot.empty() && !foot_is_long(with, mark);
    auto marks = broken(mark.number, sizes, with.width);
    for (auto& l : broken(mark.next, sizes, with.width)) marks.push_back(std::move(l));
    const auto text =
        with_text ? foot_lines(with, p.text_width) : std::vector<type_line>{};
    const auto measures = measures_for(s.small_print, s.leading - 0.04);
    group made{.space_before = s.space * 0.8, .pad_above = s.small_print * 0.45,
               .rule_above = 0.8};
    if (p.beside) {
        made.bands = row_of({{text, 0}, {marks, with.width, cell::side::right}}, measures);
    } else {
        auto all = marks;
        all.insert(all.end(), text.begin(), text.end());
        made.bands = row_of({{all, 0}}, measures);
    }
    block foot;
    if (!made.bands.empty()) foot.groups.push_back(std::move(made));
    return foot;
}

} // namespace benchcard::layout
