#include "styles/layout/stack.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

constexpr double rounding = 1e-6; // heights are sums of doubles

class stacker {
  public:
    stacker(const parts& of, const area& on, const foot_maker& foot, purpose wanted)
        : parts_(of), area_(on), foot_(foot), prints_(wanted == purpose::printing) {}

    stack run() {
        begin_page();
        place(parts_.head);
        after_head_ = true;
        if (parts_.columns > 1) begin_columns(true);
        for (const auto& b : parts_.top) place(b);
        const double bottom = height_with_space(parts_.bottom);
        const double last_limit = limit_with(height_of(foot_(pages_.size() - 1, true)->groups));
        const double filled =
            static_cast<double>(frames_) + (y_ + bottom - top_) / std::max(last_limit - top_, 1.0);
        if (y_ + bottom <= last_limit + rounding) {
            limit_ = last_limit;
            y_ = last_limit - bottom;
        }
        for (const auto& b : parts_.bottom) place(b);
        for (std::size_t i = 0; prints_ && i < pages_.size(); ++i) draw_foot(i);
        return {std::move(pages_), broken_, filled};
    }

  private:
    double limit_with(double foot_height) const {
        const bool any = foot_height > 0;
        return area_.top + area_.height() - foot_height - (any ? foot_gap : 0);
    }

    void begin_page() {
        in_columns_ = under_head_ = false;
        column_ = 0;
        pages_.push_back({.width = area_.sheet_width, .height = area_.sheet_height});
        const bool first = pages_.size() == 1;
        // Whether the card ends on this page is not known yet: there is room for either foot.
        const auto foot = [&](bool last) {
            return height_of(foot_(pages_.size() - 1, last)->groups);
        };
        limit_ = limit_with(std::max(foot(false), foot(true)));
        y_ = area_.top;
        if (!first) draw_groups(short_head());
        top_ = y_;
        if (!first && parts_.columns > 1) begin_columns(false);
    }

    void begin_columns(bool under_head) {
        in_columns_ = true;
        under_head_ = under_head;
        if (under_head) y_ += head_gap;
        top_ = y_;
    }

    /// The next column, or the first of the next page.
    void begin_frame() {
        ++frames_;
        if (!in_columns_ || column_ + 1 >= parts_.columns) return begin_page();
        ++column_;
        y_ = top_;
    }

    const std::vector<group>& short_head() const {
        static const std::vector<group> none;
        return parts_.short_head ? parts_.short_head()->groups : none;
    }

    /// An upright rule before a column in which something stands.
    void rule_column() {
        const double x = left() - gutter / 2;
        pages_.back().shapes.push_back(line{x, top_, x, limit_, 0.4});
    }

    double left_of(std::size_t column) const {
        return area_.left +
               static_cast<double>(column) * (area_.column_width(parts_.columns) + gutter);
    }
    double left() const { return in_columns_ ? left_of(column_) : area_.left; }
    double width() const {
        return in_columns_ ? area_.column_width(parts_.columns) : area_.width();
    }

    /// Whether nothing stands above in this column.
    bool opens() const { return y_ <= top_ + rounding; }
    /// Whether there is nowhere that has more room.
    bool at_top() const { return opens() && !under_head_; }
    double left_over() const { return limit_ - y_; }
    double fresh() const { return limit_ - area_.top - height_of(short_head()); }

    void draw_groups(const std::vector<group>& groups) {
        for (std::size_t i = 0; i < groups.size(); ++i) {
            if (i > 0) y_ += groups[i].space_before;
            put(groups[i], 0, groups[i].bands.size());
        }
    }

    /// A rule over a group parts it from what stands above: at the top of a page that is the
    /// rule of the head.
    void put(const group& g, std::size_t first, std::size_t last) {
        const bool ruled = !(opens() || after_heading_ || after_head_);
        if (!prints_) {
            y_ += height_of(g, first, last);
        } else {
            if (in_columns_ && column_ > 0 && opens()) rule_column();
            y_ = draw(g, first, last, {left(), y_, width(), ruled}, pages_.back());
        }
        after_heading_ = after_head_ = false;
    }

    void place(const block& b) {
        if (b.empty()) return;
        const double whole = height_of(b.groups);
        const auto moves = [&] {
            const double before = opens() ? 0 : b.groups.front().space_before;
            return b.whole && !at_top() && before + whole > left_over() + rounding &&
                   whole <= fresh() + rounding;
        };
        while (moves()) begin_frame();
        const auto first = frames_;
        for (std::size_t i = 0; i < b.groups.size(); ++i) place(b, i);
        if (b.whole && frames_ > first) ++broken_;
    }

    /// What must stand on the page under a group: the first band of the next.
    double company_of(const block& b, std::size_t i) const {
        if (!b.groups[i].keep_with_next || i + 1 == b.groups.size()) return 0;
        const auto& next = b.groups[i + 1];
        const double whole = next.height();
        return next.space_before + (whole <= left_over() ? whole : std::min(whole, fresh()));
    }

    void place(const block& b, std::size_t i) {
        const auto& g = b.groups[i];
        const double height = g.height(), company = company_of(b, i);
        const auto fits = [&] {
            const double before = opens() ? 0 : g.space_before;
            return before + height + company <= left_over() + rounding;
        };
        bool moved = false;
        while (!fits() && !at_top() && height <= fresh() + rounding) {
            begin_frame();
            moved = true;
        }
        if (moved)
            repeat_headings(b, i);
        else if (opens())
            repeat(b.over, g);
        if (!opens() && !after_heading_) y_ += g.space_before;
        if (height <= left_over() + rounding)
            put(g, 0, g.bands.size());
        else
            split(g, b.over);
    }

    /// Headings over what runs on; those so long that they would leave little room, or drive what
    /// they head to another page, are left out.
    void repeat(const std::vector<group>& headings, const group& under, std::size_t band = 0) {
        constexpr double most_of_page = 0.4;
        const double height = height_of(headings);
        if (headings.empty() || height > fresh() * most_of_page) return;
        double needed = under.pad_above + under.pad_below;
        const bool whole = band == 0 && under.height() <= left_over() + rounding;
        for (auto i = band; i < under.bands.size() && (whole || i < band + 2); ++i)
            needed += under.bands[i].height();
        if (height + needed > left_over() + rounding) return;
        for (const auto& h : headings) put(h, 0, h.bands.size());
        after_heading_ = true;
    }

    /// What stands again over the groups of a block from the `i`-th on.
    void repeat_headings(const block& b, std::size_t i) {
        if (opens()) repeat(b.over, b.groups[i]);
        const auto end = b.groups.begin() + static_cast<std::ptrdiff_t>(b.heading);
        if (i >= b.heading) repeat({b.groups.begin(), end}, b.groups[i]);
    }

    /// How many bands from `first` on fit into what is left of the page.
    std::size_t fitting(const group& g, std::size_t first) const {
        double height = g.pad_above + g.pad_below;
        auto last = first;
        while (last < g.bands.size() && height + g.bands[last].height() <= left_over() + rounding)
            height += g.bands[last++].height();
        return last;
    }

    void split(const group& g, const std::vector<group>& over) {
        std::size_t first = 0;
        while (first < g.bands.size()) {
            auto last = fitting(g, first);
            const bool lonely = last < first + 2 && last < g.bands.size();
            if (lonely && !at_top()) {
                begin_frame();
                continue;
            }
            last = std::max(last, first + 1);
            put(g, first, last);
            first = last;
            broken_ += first < g.bands.size() ? 1 : 0;
            if (first < g.bands.size()) begin_frame(), repeat(over, g, first);
        }
    }

    void draw_foot(std::size_t i) {
        const auto& foot = *foot_(i, i + 1 == pages_.size());
        double y = area_.top + area_.height() - height_of(foot.groups);
        for (const auto& g : foot.groups)
            y = draw(g, 0, g.bands.size(), {area_.left, y, area_.width()}, pages_[i]);
    }

    const parts& parts_;
    const area& area_;
    const foot_maker& foot_;
    const bool prints_;
    std::vector<page> pages_;
    double y_ = 0, top_ = 0, limit_ = 0;
    bool after_heading_ = false, after_head_ = false;
    bool in_columns_ = false, under_head_ = false;
    std::size_t column_ = 0, frames_ = 0;
    std::size_t broken_ = 0;
};

} // namespace

stack stacked(const parts& of, const area& on, const foot_maker& foot, purpose wanted) {
    return stacker(of, on, foot, wanted).run();
}

} // namespace benchcard::layout
