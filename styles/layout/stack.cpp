#include "styles/layout/stack.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

constexpr double slack = 1e-6; // heights are sums of doubles

/// Blocks one under the other, with the space before each but the first of a page.
double height_with_space(const std::vector<block>& blocks) {
    double sum = 0;
    for (const auto& b : blocks)
        if (!b.empty()) sum += b.groups.front().space_before + height_of(b.groups);
    return sum;
}

class stacker {
  public:
    stacker(const parts& of, const area& on, const foot_maker& foot)
        : parts_(of), area_(on), foot_(foot) {}

    stack run() {
        begin_page();
        place(parts_.head);
        for (const auto& b : parts_.top) place(b);
        const double bottom = height_with_space(parts_.bottom);
        const double last_limit = limit_with(height_of(foot_(pages_.size() - 1, true).groups));
        if (y_ + bottom <= last_limit + slack) {
            limit_ = last_limit;
            y_ = last_limit - bottom;
        }
        for (const auto& b : parts_.bottom) place(b);
        for (std::size_t i = 0; i < pages_.size(); ++i) draw_foot(i);
        return {std::move(pages_), broken_};
    }

  private:
    double limit_with(double foot_height) const {
        const bool any = foot_height > 0;
        return area_.margin + area_.height() - foot_height - (any ? foot_gap : 0);
    }

    void begin_page() {
        pages_.push_back({.width = area_.sheet_width, .height = area_.sheet_height});
        const bool first = pages_.size() == 1;
        const double foot = height_of(foot_(pages_.size() - 1, false).groups);
        limit_ = limit_with(foot);
        y_ = area_.margin;
        if (!first) draw_groups(parts_.short_head.groups);
        top_ = y_;
    }

    bool at_top() const { return y_ <= top_ + slack; }
    double left_over() const { return limit_ - y_; }
    double fresh() const { return limit_ - area_.margin - height_of(parts_.short_head.groups); }

    void draw_groups(const std::vector<group>& groups) {
        for (std::size_t i = 0; i < groups.size(); ++i) {
            if (i > 0) y_ += groups[i].space_before;
            put(groups[i], 0, groups[i].bands.size());
        }
    }

    /// A rule over a group parts it from what stands above: at the top of a page that is the
    /// rule of the head.
    void put(const group& g, std::size_t first, std::size_t last) {
        if (g.rule_above > 0 && (at_top() || after_heading_)) {
            auto without = g;
            without.rule_above = 0;
            y_ = draw(without, first, last, area_.margin, y_, area_.width(), pages_.back());
        } else {
            y_ = draw(g, first, last, area_.margin, y_, area_.width(), pages_.back());
        }
        after_heading_ = false;
    }

    void place(const block& b) {
        if (b.empty()) return;
        const double whole = height_of(b.groups);
        const double before = at_top() ? 0 : b.groups.front().space_before;
        const bool moves = b.whole && !at_top() && before + whole > left_over() + slack &&
                           whole <= fresh() + slack;
        if (moves) begin_page();
        const auto first = pages_.size();
        for (std::size_t i = 0; i < b.groups.size(); ++i) place(b, i);
        if (b.whole && pages_.size() > first) ++broken_;
    }

    /// What must stand on the page under a group: the first band of the next.
    double company_of(const block& b, std::size_t i) const {
        if (!b.groups[i].keep_with_next || i + 1 == b.groups.size()) return 0;
        const auto& next = b.groups[i + 1];
        return next.space_before + std::min(next.height(), fresh());
    }

    void place(const block& b, std::size_t i) {
        const auto& g = b.groups[i];
        const double before = at_top() ? 0 : g.space_before;
        const double needed = before + g.height() + company_of(b, i);
        if (needed > left_over() + slack && !at_top() && g.height() <= fresh() + slack) {
            begin_page();
            if (i >= b.heading) repeat_heading(b);
        }
        if (!at_top() && !after_heading_) y_ += g.space_before;
        if (g.height() <= left_over() + slack)
            put(g, 0, g.bands.size());
        else
            split(g);
    }

    void repeat_heading(const block& b) {
        for (std::size_t i = 0; i < b.heading; ++i) put(b.groups[i], 0, b.groups[i].bands.size());
        after_heading_ = b.heading > 0;
    }

    /// How many bands from `first` on fit into what is left of the page.
    std::size_t fitting(const group& g, std::size_t first) const {
        double height = g.pad_above + g.pad_below;
        auto last = first;
        while (last < g.bands.size() && height + g.bands[last].height() <= left_over() + slack)
            height += g.bands[last++].height();
        return last;
    }

    void split(const group& g) {
        std::size_t first = 0;
        while (first < g.bands.size()) {
            auto last = fitting(g, first);
            const bool lonely = last < first + 2 && last < g.bands.size();
            if (lonely && !at_top()) {
                begin_page();
                continue;
            }
            last = std::max(last, first + 1);
            put(g, first, last);
            first = last;
            broken_ += first < g.bands.size() ? 1 : 0;
            if (first < g.bands.size()) begin_page();
        }
    }

    void draw_foot(std::size_t i) {
        const auto foot = foot_(i, i + 1 == pages_.size());
        double y = area_.margin + area_.height() - height_of(foot.groups);
        for (const auto& g : foot.groups)
            y = draw(g, 0, g.bands.size(), area_.margin, y, area_.width(), pages_[i]);
    }

    static constexpr double foot_gap = 6;

    const parts& parts_;
    const area& area_;
    const foot_maker& foot_;
    std::vector<page> pages_;
    double y_ = 0, top_ = 0, limit_ = 0;
    bool after_heading_ = false;
    std::size_t broken_ = 0;
};

} // namespace

stack stacked(const parts& of, const area& on, const foot_maker& foot) {
    return stacker(of, on, foot).run();
}

} // namespace benchcard::layout
