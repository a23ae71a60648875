#include "styles/layout/compose.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

/// The title and, on a black tab at the right, the batch.
struct headline {
    const ready_text& title;
    const ready_text& batch;
    double size = 0;
    double width = 0;
    styles::colour accent = styles::black;

    double pad() const { return size * 0.26; }
    double tab_width() const {
        return batch.empty() ? 0 : natural_width(batch, one_size(size)) + 2 * pad();
    }
    /// A batch that takes more than half of the card's width goes under the title.
    bool has_tab() const { return !batch.empty() && tab_width() <= width * 0.5; }
    double title_width() const { return has_tab() ? width - tab_width() - size * 0.4 : width; }
};

/// The tab behind a batch that is set on the baseline y = 0.
rectangle tab_of(const headline& h, const type_line& batch, double x) {
    const double up = std::max(batch.above, h.size * 0.714) + h.size * 0.2;
    const double down = batch.below + h.size * 0.2;
    return {x, -up, h.tab_width(), up + down, 0, h.accent};
}

void put_tab(band& behind, const rectangle& tab) {
    behind.above = std::max(behind.above, -tab.y);
    behind.below = std::max(behind.below, tab.y + tab.height);
    behind.shapes.push_back(tab);
}

type_lines reversed(type_lines lines) {
    for (auto& l : lines) l.ink = styles::white;
    return lines;
}

std::vector<group> headline_groups(const composing& with, const headline& h,
                                   const type_lines& title, const type_lines& batch) {
    auto measures = measures_for(h.size, 1.12);
    group row;
    if (!h.has_tab()) {
        row.bands = with.row_of({{title, 0}}, measures);
        std::vector<group> made;
        if (!row.bands.empty()) made.push_back(std::move(row));
        if (batch.empty()) return made;
        group below{.space_before = h.size * 0.2};
        if (batch.size() == 1 && h.tab_width() <= h.width) {
            below.bands = with.row_of({{reversed(batch), h.pad()}}, measures);
            put_tab(below.bands.front(), tab_of(h, batch.front(), 0));
        } else {
            below.bands = with.row_of({{batch, 0}}, measures);
        }
        made.push_back(std::move(below));
        return made;
    }
    row.bands = with.row_of({{title, 0}, {reversed(batch), h.width - h.pad(), cell::side::right}},
                            measures);
    put_tab(row.bands.front(), tab_of(h, batch.front(), h.width - h.tab_width()));
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
type_lines shortened(const ready_text& text, double size, double width, std::size_t most_lines,
                     const composing& with) {
    constexpr std::size_t most_characters = 300;
    auto lines = broken(text, one_size(size), width);
    if (lines.size() <= most_lines) return lines;
    const auto& dots = with.card.dots.slots;
    auto& cut = with.made->emplace_back();
    auto count = std::min(text.slots.size(), most_characters);
    while (lines.size() > most_lines && count > 0) {
        std::vector<slot> part(text.slots.begin(), text.slots.begin() + static_cast<long>(--count));
        part.insert(part.end(), dots.begin(), dots.end());
        cut = ready_text(std::move(part));
        lines = broken(cut, one_size(size), width);
    }
    return lines;
}

} // namespace

block compose_head(const composing& with) {
    const auto& s = with.size;
    const headline h{with.card.title, with.card.batch, title_size(with), with.width, with.accent};
    block made;
    made.groups =
        headline_groups(with, h, evenly_broken(h.title, one_size(h.size), h.title_width()),
                        broken(h.batch, one_size(h.size), h.has_tab() ? h.width : with.width));

    group under{.space_before = s.text * 0.35, .pad_below = s.space * 0.5 + s.text * 0.15};
    const auto sizes = one_size(s.text);
    const double yield = natural_width(with.card.yield, sizes);
    const double of = natural_width(with.card.of, sizes);
    const auto measures = measures_for(s.text, s.leading);
    if (of + s.text * 1.5 + yield <= with.width) {
        under.bands = with.row_of(
            {{broken(with.card.of, sizes, with.width), 0},
             {broken(with.card.yield, sizes, with.width), with.width, cell::side::right}},
            measures);
    } else {
        auto lines = broken(with.card.of, sizes, with.width);
        for (const auto& l : broken(with.card.yield, sizes, with.width)) lines.push_back(l);
        under.bands = with.row_of({{lines, 0}}, measures);
    }
    under.rule_below = 1.6;
    under.ink = with.accent;
    made.groups.push_back(std::move(under));
    return made;
}

block compose_short_head(const composing& with) {
    const headline h{with.card.title, with.card.batch, with.look.title.least, with.width,
                     with.accent};
    // Two lines, or one where they would take much of the page.
    const std::size_t lines = with.height < 12 * h.size ? 1 : 2;
    block made;
    made.groups = headline_groups(
        with, h, shortened(h.title, h.size, h.title_width(), lines, with),
        shortened(h.batch, h.size, h.has_tab() ? h.width : with.width, lines, with));
    made.groups.push_back(
        {.pad_below = with.size.space * 0.5 + 2, .rule_below = 1.6, .ink = with.accent});
    made.groups.push_back({.pad_below = with.size.space * 0.8});
    return made;
}

namespace {

/// The foot in the first of three forms that goes: all beside the number; the revision beside
/// it and the footnote under both; or one under the other.
struct foot_form {
    type_lines beside, beneath, marks;
    bool marks_at_right = true;

    std::size_t lines() const { return std::max(beside.size(), marks.size()) + beneath.size(); }
};

foot_form formed(const composing& with, const page_mark& mark, in_foot repeated) {
    const auto sizes = one_size(with.size.small_print);
    const double mark_width =
        std::max(natural_width(mark.number, sizes), natural_width(mark.next, sizes));
    const double beside_width = with.width - mark_width - with.size.small_print * 1.5;
    foot_form form;
    form.marks = broken(mark.number, sizes, with.width);
    for (const auto& l : broken(mark.next, sizes, with.width)) form.marks.push_back(l);

    form.marks_at_right = beside_width > with.width * 0.35;
    if (repeated == in_foot::nothing) return form;
    const bool with_footnote = repeated == in_foot::all;
    const auto& all = with_footnote ? *with.card.foot : *with.card.revision;
    if (form.marks_at_right) {
        form.beside = broken(all, sizes, beside_width);
        if (form.beside.size() <= 2) return form;
        form.beside = broken(*with.card.revision, sizes, beside_width);
        if (with_footnote) form.beneath = broken(*with.card.footnote, sizes, with.width);
        return form;
    }
    form.beneath = broken(all, sizes, with.width);
    return form;
}

} // namespace

in_foot repeated_with(const composing& with, const page_mark& mark) {
    const auto share_of_page = [&](in_foot repeated) {
        const auto lines = static_cast<double>(formed(with, mark, repeated).lines());
        return lines * with.size.small_print * with.size.leading / with.height;
    };
    if (share_of_page(in_foot::all) <= 0.18) return in_foot::all;
    return share_of_page(in_foot::revision) <= 0.3 ? in_foot::revision : in_foot::nothing;
}

block compose_long_foot(const composing& with, in_foot repeated) {
    block made;
    if (repeated == in_foot::all) return made;
    const auto& rest = repeated == in_foot::revision ? *with.card.footnote : *with.card.foot;
    if (rest.empty()) return made;
    const double size = with.size.small_print;
    group text{.space_before = with.size.space};
    text.bands = with.row_of({{broken(rest, one_size(size), with.width), 0}},
                             measures_for(size, with.size.leading));
    made.groups.push_back(std::move(text));
    return made;
}

block compose_foot(const composing& with, const page_mark& mark) {
    const auto& s = with.size;
    const auto form = formed(with, mark, with.repeated);
    const auto measures = measures_for(s.small_print, s.leading - 0.04);
    group made{.space_before = s.space * 0.8, .pad_above = s.small_print * 0.45, .rule_above = 0.8};
    const cell marks{form.marks, form.marks_at_right ? with.width : 0,
                     form.marks_at_right ? cell::side::right : cell::side::left};
    made.bands = with.row_of({{form.beside, 0}, marks}, measures);
    auto beneath = with.row_of({{form.beneath, 0}}, measures);
    if (!made.bands.empty() && !beneath.empty())
        beneath.front().above = std::max(beneath.front().above, measures.pitch - measures.below);
    for (auto& b : beneath) made.bands.push_back(std::move(b));
    block foot;
    if (!made.bands.empty()) foot.groups.push_back(std::move(made));
    return foot;
}

} // namespace benchcard::layout
