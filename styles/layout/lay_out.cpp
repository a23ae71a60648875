#include "styles/layout/lay_out.hpp"

#include "styles/layout/compose.hpp"
#include "styles/layout/largest.hpp"
#include "styles/layout/legibility.hpp"
#include "styles/layout/overhang.hpp"
#include "styles/layout/spread.hpp"
#include "styles/layout/stack.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <map>

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

/// What of an attempt decides whether it is a good one.
struct outcome {
    std::size_t pages = 0, broken = 0;
    double filled = 0;
};

/// Totals belong to what they add up: kept on one page with it.
void join_totals(std::vector<block>& blocks, const std::vector<styles::block>& which) {
    for (std::size_t i = 1; i < blocks.size(); ++i) {
        if (which[i] != styles::block::totals || which[i - 1] != styles::block::weigh_out) continue;
        auto& rows = blocks[i - 1].groups;
        rows.insert(rows.end(), blocks[i].groups.begin(), blocks[i].groups.end());
        blocks[i].groups.clear();
    }
}

/// How the parts between head and foot are put side by side.
struct arrangement {
    std::size_t columns = 1; ///< that all flows through, from page to page
    double left_share = 0;   ///< of the left half of a spread; 0 for no spread
    bool bottom_at_right = false;
};

class setter {
  public:
    setter(const card& of, const style& look, const paper& sheet, const font_metrics& metrics,
           const box& inset = {})
        : card_(of), look_(legible(look, metrics)), metrics_(metrics),
          ready_(made_ready(of, look, metrics)) {
        using styles::edge, styles::points_per_mm;
        const auto clear = [&](edge at) { return styles::clear_at(look, at) * points_per_mm; };
        area_ = {.sheet_width = sheet.width * points_per_mm,
                 .sheet_height = sheet.height * points_per_mm,
                 .left = clear(edge::left) + inset.left,
                 .top = clear(edge::top) + inset.top,
                 .right = clear(edge::right) + inset.right,
                 .bottom = clear(edge::bottom) + inset.bottom};
        if (sheet.is_turned()) arranged_ = for_turned_sheet();
    }

    std::vector<page> run() const {
        const auto within = least();
        const auto best = spread_out(largest_type(within), within);
        return labelled(tried(best, within.runs_on, purpose::printing).pages);
    }

    /// The head that a card's further pages have, and the foot.
    page back() const {
        const auto with = composed({}, ready_, area_.width(), purpose::printing);
        auto bare = ready_;
        bare.revision = bare.footnote = bare.foot = {};
        composing foot_with = composed({}, bare, area_.width(), purpose::printing);
        const auto foot = compose_foot(foot_with, mark(0, true, false, 0));
        const auto foot_of = [&](std::size_t, bool) { return &foot; };
        auto made = stacked({.head = compose_short_head(with)}, area_, foot_of, purpose::printing)
                        .pages.front();
        made.label = page_label(card_.number, "");
        return made;
    }

  private:
    static constexpr double some_air = 0.35, much_air = 0.55, much_larger = 0.25;

    /// What a card takes at its smallest, and may take at any size.
    struct bounds {
        std::size_t pages = 0, broken = 0;
        bool runs_on = false;
        double room = 0; ///< columns
    };

    bounds least() const {
        // What fits on one page with air does so without.
        const auto airy = outcome_of({.air = some_air}, false);
        const bool is_one_page = airy.pages == 1 && airy.broken == 0;
        auto smallest = is_one_page ? airy : outcome_of({}, false);
        const bool runs_on = smallest.pages > 1;
        if (runs_on) smallest = outcome_of({}, true);
        return {smallest.pages, smallest.broken, runs_on,
                static_cast<double>(smallest.pages * arranged_.columns)};
    }

    trial trial_of(fitting to, const bounds& within) const {
        const auto o = outcome_of(to, within.runs_on);
        return {o.pages <= within.pages && o.broken <= within.broken, o.filled - within.room};
    }

    /// Type grows first, but not at the price of all the air. Rows take further lines only where
    /// that makes it much larger.
    fitting largest_type(const bounds& within) const {
        const double air = trial_of({.air = some_air}, within).passes ? some_air : 0;
        const auto scaled = [&](double scale) {
            return trial_of({.scale = scale, .air = air}, within);
        };
        const auto fewest = wrapped_at(0, std::numeric_limits<std::size_t>::max());
        const double in_their_lines =
            largest([&](double scale) { return trial{wrapped_at(scale, fewest) <= fewest}; });
        double scale = largest(scaled, 0, in_their_lines);
        const double worth_it = in_their_lines + largest_step + much_larger;
        if (scale == in_their_lines && worth_it <= 1 && scaled(worth_it).passes)
            scale = largest(scaled, worth_it);
        return {.scale = scale, .air = air};
    }

    /// Room that is left goes to the words, and then to the air.
    fitting spread_out(fitting to, const bounds& within) const {
        const auto aired = [&](double air) {
            return trial_of({.scale = to.scale, .words = to.words, .air = air}, within);
        };
        const auto worded = [&](double words) {
            return trial_of({.scale = to.scale, .words = words, .air = much_air}, within);
        };
        if (!worded(0).passes) {
            to.air = largest(aired, to.air, much_air);
            return to;
        }
        to.words = largest(worded);
        // Words that could not grow to the end have left no room.
        to.air = to.words < 1 ? much_air : largest(aired, much_air);
        return to;
    }

    /// A sheet that is wider than high holds two halves side by side, the one of some that takes
    /// least room; what is too much for that flows through two columns.
    arrangement for_turned_sheet() const {
        // In narrower halves amounts and names would not stand side by side.
        const double narrowest = look_.amounts.least * 9;
        if (area_.column_width(2) < narrowest) return {};
        arrangement best{.columns = 2};
        if (!ready_.parts.empty()) return best;
        double least = 0;
        for (const bool at_right : {false, true})
            for (const double share : {0.42, 0.5, 0.56}) {
                const arrangement a{.left_share = share, .bottom_at_right = at_right};
                const auto made = spread_at({}, a, purpose::counting);
                if (!made.laid || (least > 0 && made.height >= least)) continue;
                best = a;
                least = made.height;
            }
        return best;
    }

    composing composed(fitting to, const ready_card& of, double width, purpose wanted) const {
        return {.card = of,
                .look = look_,
                .size = sizes_at(look_, to),
                .width = width,
                .height = area_.height(),
                .accent = accent(),
                .made = &made_texts_,
                .wanted = wanted};
    }
    styles::colour accent() const { return styles::accent_for(look_, card_.station); }

    std::vector<block> blocks_of(const std::vector<styles::block>& which,
                                 const composing& with) const {
        std::vector<block> made;
        for (const auto part : which) made.push_back(compose(part, with));
        join_totals(made, which);
        return made;
    }

    stack tried(fitting to, bool runs_on, purpose wanted) const {
        if (arranged_.left_share > 0) {
            auto a = spread_at(to, arranged_, wanted);
            if (a.laid) return {{std::move(*a.laid)}, 0, 0};
            return {std::vector<page>(2), 1, 0}; // two pages are what it must not take
        }
        auto with = composed(to, ready_, area_.width(), wanted);
        parts of;
        of.columns = arranged_.columns;
        of.head = compose_head(with);
        std::optional<block> short_head;
        of.short_head = [&short_head, with] {
            if (!short_head) short_head = compose_short_head(with);
            return &*short_head;
        };
        const auto foot_with = with;
        with.width = area_.column_width(of.columns);
        for (const auto& part : ready_.parts) add_part(of, part, to, wanted);
        for (auto& b : blocks_of(look_.top, with)) of.top.push_back(std::move(b));
        of.bottom = blocks_of(look_.bottom, with);
        return stack_with_foot(of, with, foot_with, runs_on, wanted);
    }

    stack stack_with_foot(parts& of, const composing& with, composing foot_with, bool runs_on,
                          purpose wanted) const {
        foot_with.repeated = repeated_with(foot_with, mark(0, false, runs_on, 0));
        of.bottom.push_back(compose_long_foot(with, foot_with.repeated));
        std::map<const page_mark*, block> feet; // each is asked for several times
        const auto stack_of = [&](std::size_t count) {
            return stacked(
                of, area_,
                [&](std::size_t index, bool last) {
                    const auto& with_mark = mark(index, last, runs_on, count);
                    const auto [known, is_new] = feet.try_emplace(&with_mark);
                    if (is_new) known->second = compose_foot(foot_with, with_mark);
                    return &known->second;
                },
                wanted);
        };
        auto laid = stack_of(0);
        // How many pages there are is known when they are; then it stands in the foot of each.
        if (is_numbered() && runs_on) return stack_of(laid.pages.size());
        return laid;
    }

    /// A component of a whole recipe; its heading is repeated wherever it runs on.
    void add_part(parts& to, const ready_card& part, fitting scale, purpose wanted) const {
        const auto with = composed(scale, part, area_.column_width(to.columns), wanted);
        auto blocks = blocks_of(look_.top, with);
        for (auto& b : blocks_of(look_.bottom, with)) blocks.push_back(std::move(b));
        std::erase_if(blocks, [](const block& b) { return b.empty(); });
        if (blocks.empty()) blocks.emplace_back();
        const auto heading = compose_part_heading(with);
        for (auto& b : blocks) b.over = {heading};
        auto& first = blocks.front();
        first.over.clear(); // it stands in it, and is repeated with it
        first.groups.insert(first.groups.begin(), heading);
        ++first.heading;
        for (auto& b : blocks) to.top.push_back(std::move(b));
    }

    /// The searches of one card ask for much the same.
    outcome outcome_of(fitting to, bool runs_on) const {
        const auto [known, is_new] =
            outcomes_.try_emplace({to.scale, to.words, to.air, runs_on ? 1.0 : 0.0});
        if (is_new) {
            const auto made = tried(to, runs_on, purpose::counting);
            known->second = {made.pages.size(), made.broken, made.filled};
        }
        return known->second;
    }

    /// How many lines the rows of the weigh-outs take beyond one each, or some number over
    /// `enough`.
    std::size_t wrapped_at(double scale, std::size_t enough) const {
        const double width = weigh_out_width();
        if (width == 0) return 0;
        const auto of = [&](const ready_card& card) {
            const auto with = composed({.scale = scale}, card, width, purpose::counting);
            return wrapped_lines(with, enough);
        };
        auto wrapped = of(ready_);
        for (const auto& part : ready_.parts) wrapped += of(part);
        return wrapped;
    }

    /// How wide the weigh-out is set; 0 where the style has none.
    double weigh_out_width() const {
        const auto stands_in = [](const std::vector<styles::block>& which) {
            return std::ranges::find(which, styles::block::weigh_out) != which.end();
        };
        const bool at_foot = stands_in(look_.bottom);
        if (!at_foot && !stands_in(look_.top)) return 0;
        if (arranged_.left_share == 0) return area_.column_width(arranged_.columns);
        const double left = left_width(arranged_);
        if (stands_in(halves().first)) return left;
        const bool at_right = !at_foot || arranged_.bottom_at_right;
        return at_right ? right_half(area_, left).width : area_.width();
    }

    double left_width(arrangement how) const { return area_.width() * how.left_share - gutter / 2; }

    struct spread_attempt {
        std::optional<page> laid;
        double height = 0; ///< of the halves and what is under them
    };

    spread_attempt spread_at(fitting to, arrangement how, purpose wanted) const {
        spread_attempt made;
        auto with = composed(to, ready_, area_.width(), wanted);
        with.repeated = repeated_with(with, mark(0, true, false, 0));
        spread_parts of;
        of.head = compose_head(with);
        of.left_width = left_width(how);
        const auto [left, right] = halves();
        auto side = with;
        side.width = of.left_width;
        of.left = blocks_of(left, side);
        side.width = right_half(area_, of.left_width).width;
        of.right = blocks_of(right, side);
        auto bottom = blocks_of(look_.bottom, how.bottom_at_right ? side : with);
        of.bottom.push_back(compose_long_foot(with, with.repeated));
        auto& under = how.bottom_at_right ? of.right : of.bottom;
        under.insert(how.bottom_at_right ? under.end() : under.begin(), bottom.begin(),
                     bottom.end());
        made.height = std::max(height_with_space(of.left), height_with_space(of.right)) +
                      height_with_space(of.bottom);
        if (height_with_space(of.left) > 0 && height_with_space(of.right) > 0)
            made.laid = spread(of, area_, compose_foot(with, mark(0, true, false, 0)), wanted);
        return made;
    }

    /// What stands before the method is weighed, and what comes with it is done.
    std::pair<std::vector<styles::block>, std::vector<styles::block>> halves() const {
        const auto at = std::ranges::find(look_.top, styles::block::method);
        return {{look_.top.begin(), at}, {at, look_.top.end()}};
    }

    /// A whole recipe has pages with numbers, and no letters.
    bool is_numbered() const { return card_.is_recipe; }

    const page_mark& mark(std::size_t index, bool last, bool runs_on, std::size_t count) const {
        if (!runs_on) {
            if (!only_mark_) only_mark_ = mark_of(card_, card_.number, "", look_, metrics_);
            return *only_mark_;
        }
        if (is_numbered()) return marked(page_number(index, count), "");
        return marked(with_letter(card_.number, letter(index)),
                      last ? "" : page_label(card_.number, letter(index + 1)));
    }

    /// Made ready once: every attempt has the same few in its feet.
    const page_mark& marked(const std::string& number, const std::string& next) const {
        const auto [known, is_new] = marks_.try_emplace({number, next});
        if (is_new) known->second = mark_of(card_, number, next, look_, metrics_);
        return known->second;
    }

    std::string page_number(std::size_t index, std::size_t count) const {
        const auto& w = look_.words;
        return w.page + " " + std::to_string(index + 1) + " " + w.of + " " +
               (count > 0 ? std::to_string(count) : "999");
    }

    std::vector<page> labelled(std::vector<page> pages) const {
        const bool several = pages.size() > 1;
        for (std::size_t i = 0; i < pages.size(); ++i)
            pages[i].label = is_numbered() ? (several ? std::to_string(i + 1) : "")
                                           : page_label(card_.number, several ? letter(i) : "");
        pages.front().bookmarks = {card_.title};
        for (auto& p : pages) { // of thousands of cards
            p.text.shrink_to_fit();
            p.shapes.shrink_to_fit();
        }
        return pages;
    }

    const card& card_;
    style look_;
    const font_metrics& metrics_;
    ready_card ready_;
    area area_;
    arrangement arranged_;
    mutable std::deque<ready_text> made_texts_;
    mutable std::map<std::array<double, 4>, outcome> outcomes_;
    mutable std::map<std::pair<std::string, std::string>, page_mark> marks_;
    mutable std::optional<page_mark> only_mark_; ///< of a card on one page
};

/// What a setter makes, a little further in where ink would lean over the edge.
template <typename Made>
std::vector<page> set_clear(const card& of, const style& look, const paper& sheet,
                            const font_metrics& metrics, const Made& made) {
    box inset;
    std::vector<page> pages;
    for (int tries = 0; tries < 4; ++tries) {
        pages = made(setter(of, look, sheet, metrics, inset));
        const auto over = overhang_of(pages, look, metrics);
        if (over == box{}) break;
        inset = further_in(inset, over);
    }
    return pages;
}

} // namespace

double room_across(const style& look, const paper& sheet) {
    using styles::edge;
    return (sheet.width - styles::clear_at(look, edge::left) -
            styles::clear_at(look, edge::right)) *
           styles::points_per_mm;
}

double least_room(const style& look, const font_metrics& metrics) {
    const auto set = legible(look, metrics);
    // Tick and gaps are in parts of the type size; what is left for the name is 0.34 of the room.
    return (0.94 * set.amounts.least + 2.2 * set.names.least) / 0.34;
}

std::vector<page> lay_out(const card& of, const style& look, const paper& sheet,
                          const font_metrics& metrics) {
    return set_clear(of, look, sheet, metrics, [](const setter& s) { return s.run(); });
}

page back_of(const card& of, const style& look, const paper& sheet, const font_metrics& metrics) {
    return set_clear(of, look, sheet, metrics,
                     [](const setter& s) { return std::vector<page>{s.back()}; })
        .front();
}

} // namespace benchcard::layout
