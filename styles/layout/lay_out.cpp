#include "styles/layout/lay_out.hpp"

#include "styles/layout/compose.hpp"
#include "styles/layout/stack.hpp"

#include <algorithm>

namespace benchcard::layout {

namespace {

using styles::card;
using styles::paper;
using styles::style;

/// `a`, `b`, … `z`, `aa`, `ab`, …
std::string letter(std::size_t index) {
    std::string out;
    for (++index; index > 0; index = (index - 1) / 26)
        out.insert(out.begin(), static_cast<char>('a' + (index - 1) % 26));
    return out;
}

/// What was tried, and how many lines the weigh-out took beyond one a row.
struct attempt {
    stack laid;
    std::size_t wrapped = 0;
};

std::size_t wrapped_lines(const block& weigh_out) {
    std::size_t extra = 0;
    for (auto i = weigh_out.heading; i < weigh_out.groups.size(); ++i)
        extra += weigh_out.groups[i].bands.size() - 1;
    return extra;
}

class setter {
  public:
    setter(const card& of, const style& look, const paper& sheet, const font_metrics& metrics)
        : card_(of), look_(look), metrics_(metrics), ready_(made_ready(of, look, metrics)) {
        using styles::points_per_mm;
        const double margin = std::max(look.margin, styles::least_margin);
        area_ = {sheet.width * points_per_mm, sheet.height * points_per_mm, margin * points_per_mm};
    }

    std::vector<page> run() const {
        const auto smallest = tried({}, false);
        const bool runs_on = smallest.laid.pages.size() > 1;
        const auto least = runs_on ? tried({}, true) : smallest;
        const auto as_whole = [&](const attempt& a) {
            return a.laid.pages.size() <= least.laid.pages.size() &&
                   a.laid.broken <= least.laid.broken;
        };
        const auto fits = [&](fitting to) { return as_whole(tried(to, runs_on)); };
        const auto keeps_lines = [&](fitting to) {
            const auto a = tried(to, runs_on);
            return as_whole(a) && a.wrapped <= least.wrapped;
        };
        // Type grows first, but not at the price of all the air; what is left goes to the air.
        fitting best;
        best.air = fits({.air = some_air}) ? some_air : 0;
        best.scale = largest([&](double s) { return keeps_lines({.scale = s, .air = best.air}); });
        // Rows take second lines only where that makes the type much larger.
        const double wrapping =
            largest([&](double s) { return fits({.scale = s, .air = best.air}); });
        if (wrapping > best.scale + much_larger) best.scale = wrapping;
        if (fits({.scale = best.scale, .air = much_air}))
            best.words = largest(
                [&](double w) { return fits({.scale = best.scale, .words = w, .air = much_air}); });
        best.air = largest(
            [&](double a) { return fits({.scale = best.scale, .words = best.words, .air = a}); });
        return labelled(tried(best, runs_on).laid.pages);
    }

  private:
    static constexpr double some_air = 0.25, much_air = 0.5, much_larger = 0.25;

    /// The largest number from 0 to 1, in 64ths, that passes; 0 is known to.
    template <typename Passes> static double largest(const Passes& passes) {
        constexpr int steps = 64;
        if (passes(1.0)) return 1.0;
        int good = 0, bad = steps;
        while (bad - good > 1) {
            const int middle = (good + bad) / 2;
            (passes(static_cast<double>(middle) / steps) ? good : bad) = middle;
        }
        return static_cast<double>(good) / steps;
    }

    attempt tried(fitting to, bool runs_on) const {
        composing with{ready_, look_, sizes_at(look_, to), area_.width(), area_.height()};
        parts of;
        of.head = compose_head(with);
        of.short_head = compose_short_head(with);
        attempt made;
        for (std::size_t i = 0; i < look_.top.size(); ++i) {
            of.top.push_back(compose(look_.top[i], with));
            if (look_.top[i] == styles::block::weigh_out) made.wrapped = wrapped_lines(of.top[i]);
            // Totals belong to what they add up: kept on one page with it.
            const bool adds_up = i > 0 && look_.top[i] == styles::block::totals &&
                                 look_.top[i - 1] == styles::block::weigh_out;
            if (!adds_up) continue;
            auto& rows = of.top[i - 1].groups;
            rows.insert(rows.end(), of.top[i].groups.begin(), of.top[i].groups.end());
            of.top[i].groups.clear();
        }
        for (const auto which : look_.bottom) of.bottom.push_back(compose(which, with));
        with.long_foot = foot_is_long(with, mark(0, false, runs_on));
        if (with.long_foot) of.bottom.push_back(compose_long_foot(with));
        made.laid = stacked(of, area_, [&](std::size_t index, bool last) {
            return compose_foot(with, mark(index, last, runs_on));
        });
        return made;
    }

    page_mark mark(std::size_t index, bool last, bool runs_on) const {
        if (!runs_on) return mark_of(card_, look_, metrics_, "", "");
        return mark_of(card_, look_, metrics_, letter(index), last ? "" : letter(index + 1));
    }

    std::vector<page> labelled(std::vector<page> pages) const {
        for (std::size_t i = 0; i < pages.size(); ++i)
            pages[i].label = page_label(card_.number, pages.size() > 1 ? letter(i) : "");
        pages.front().bookmark = card_.title;
        return pages;
    }

    const card& card_;
    const style& look_;
    const font_metrics& metrics_;
    ready_card ready_;
    area area_;
};

} // namespace

std::vector<page> lay_out(const card& of, const style& look, const paper& sheet,
                          const font_metrics& metrics) {
    return setter(of, look, sheet, metrics).run();
}

} // namespace benchcard::layout
