#include "fonts_for_tests.hpp"
#include "listing.hpp"
#include "made_up_cards.hpp"
#include "styles/layout/impose.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/layout/legibility.hpp"
#include "words_of.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <set>

using namespace benchcard;
using layout::box;
using layout::page;
using layout::text_run;

namespace {

// So many cards in a usual run, the same each time; RC_PARAMS="max_success=5000" in the environment
// tries more and others.
const bool few_cards = (setenv("RC_PARAMS", "max_success=40 noshrink=1 seed=11", 0), true);

/// How much two boxes overlap, as the smaller of width and height; zero when they do not.
double overlap(const box& a, const box& b) {
    const double across = std::min(a.right, b.right) - std::max(a.left, b.left);
    const double down = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return across > 0 && down > 0 ? std::min(across, down) : 0;
}

/// How near to an edge ink may come, in points: 6 mm, or what is kept clear for a hole.
double safe_at(const styles::style& look, styles::edge at) {
    const bool has_hole = look.hole && look.hole->at == at;
    const double clear =
        has_hole ? std::max(look.hole->clear, styles::least_margin) : styles::least_margin;
    return clear * styles::points_per_mm - 1e-6;
}

void require_inside(const box& ink, const page& p, const styles::style& look,
                    const std::string& what) {
    using styles::edge;
    const auto outside = fmt::format("{} at {}, {} to {}, {} of {} by {}\n", what, ink.left,
                                     ink.top, ink.right, ink.bottom, p.width, p.height);
    const bool is_inside =
        ink.left >= safe_at(look, edge::left) && ink.top >= safe_at(look, edge::top);
    if (!is_inside) RC_LOG() << outside;
    RC_ASSERT(ink.left >= safe_at(look, edge::left));
    RC_ASSERT(ink.top >= safe_at(look, edge::top));
    RC_ASSERT(ink.right <= p.width - safe_at(look, edge::right));
    RC_ASSERT(ink.bottom <= p.height - safe_at(look, edge::bottom));
    // And 6 mm from the arc to which a corner is cut.
    const double r = look.corners * styles::points_per_mm;
    for (const double x : {ink.left, p.width - ink.right})
        for (const double y : {ink.top, p.height - ink.bottom}) {
            if (x >= r || y >= r) continue;
            const double from_arc = r - std::hypot(r - x, r - y);
            RC_ASSERT(from_arc >= styles::least_margin * styles::points_per_mm - 1e-6);
        }
}

void check_places(const page& p, const styles::style& look, const layout::font_metrics& metrics) {
    std::vector<box> inks;
    for (const auto& run : p.text) inks.push_back(layout::ink_of(run, metrics));
    for (std::size_t i = 0; i < inks.size(); ++i)
        require_inside(inks[i], p, look,
                       fmt::format("“{}”, {} pt", p.text[i].text, p.text[i].size));
    for (const auto& s : p.shapes)
        require_inside(layout::ink_of(s), p, look, fmt::format("shape {}", s.index()));
    for (std::size_t i = 0; i < inks.size(); ++i)
        for (std::size_t k = i + 1; k < inks.size(); ++k) {
            // Letters lean a little over the run beside them, as within a run.
            const bool same_line = p.text[i].y == p.text[k].y;
            const double slack = same_line ? 0.1 * p.text[i].size : 0.01;
            if (overlap(inks[i], inks[k]) > slack)
                RC_LOG() << p.text[i].text << " | " << p.text[k].text << "\n";
            RC_ASSERT(overlap(inks[i], inks[k]) <= slack);
        }
    for (const auto& s : p.shapes) {
        if (!std::holds_alternative<layout::line>(s)) continue;
        for (std::size_t i = 0; i < inks.size(); ++i) {
            if (overlap(inks[i], layout::ink_of(s)) > 0.01)
                RC_LOG() << "a line strikes through: " << p.text[i].text << " in\n" << listing({p});
            RC_ASSERT(overlap(inks[i], layout::ink_of(s)) <= 0.01);
        }
    }
}

/// The ground that a run stands on: what the last filled shape under its middle left there.
styles::colour ground_of(const text_run& run, const page& p, const layout::font_metrics& metrics) {
    const auto ink = layout::ink_of(run, metrics);
    const double x = (ink.left + ink.right) / 2, y = (ink.top + ink.bottom) / 2;
    auto ground = styles::white;
    for (const auto& s : p.shapes) {
        const auto* r = std::get_if<layout::rectangle>(&s);
        const bool covers = r && r->line_width == 0 && x >= r->x && x <= r->x + r->width &&
                            y >= r->y && y <= r->y + r->height;
        if (covers) ground = r->ink;
    }
    return ground;
}

void check_contrast(const page& p, const layout::font_metrics& metrics) {
    for (const auto& run : p.text) {
        const auto ground = ground_of(run, p, metrics);
        RC_ASSERT(styles::contrast(run.ink, ground) >= 7);
        RC_ASSERT(styles::contrast(styles::in_grey(run.ink), styles::in_grey(ground)) >= 7);
    }
}

bool is_amount_of(const styles::card& c, const std::string& text) {
    const auto is = [&](const auto& row) { return !row.amount.empty() && row.amount == text; };
    return std::ranges::any_of(c.weigh_out, is) ||
           std::ranges::any_of(c.parts, [&](const auto& part) { return is_amount_of(part, text); });
}

void check_sizes(const page& p, const styles::card& c, const styles::style& asked,
                 const layout::font_metrics& metrics) {
    const auto look = layout::legible(asked, metrics);
    const double least =
        std::min({look.title.least, look.names.least, look.text.least, look.small_print.least});
    const double most = std::max({look.title.most, look.amounts.most, look.names.most * 1.12});
    for (const auto& run : p.text) {
        RC_ASSERT(run.size >= least - 1e-9);
        RC_ASSERT(run.size <= most + 1e-9);
        if (is_amount_of(c, run.text)) RC_ASSERT(run.size >= look.amounts.least - 1e-9);
    }
}

/// Whether a word stands broken among others from `from` on: piece after piece, in order, with
/// the pieces of cells beside it between.
bool has_pieces(const word_list& words, const std::string& word) {
    std::vector<bool> reached(word.size() + 1, false); // beginnings of the word that were found
    reached[0] = true;
    const auto reach = [&](std::size_t at) {
        reached[at] = true;
        // Words are kept without commas at their ends.
        if (at < word.size() && word[at] == ',') reached[at + 1] = true;
    };
    for (const auto& piece : words)
        for (auto at = word.size(); at-- > 0;)
            if (reached[at] && word.compare(at, piece.size(), piece) == 0) reach(at + piece.size());
    return reached.back();
}

void check_words(const std::vector<page>& pages, const styles::card& c, const styles::style& look,
                 const layout::font_metrics& metrics) {
    word_list all;
    for (const auto& p : pages)
        for (auto& w : page_words(p, metrics)) all.push_back(std::move(w));
    const auto repeated = counted(repeated_words(c, look));
    const auto expected = counted(body_words(c, look));
    const auto seen = counted(all);
    for (const auto& [word, count] : expected) {
        const auto at = seen.find(word);
        const int times = at == seen.end() ? 0 : at->second;
        // A piece of a broken word may look like a short one.
        const bool may_repeat = repeated.contains(word) || word.size() <= 3;
        if (times == count || (times > count && may_repeat)) continue;
        // A word too wide for its line was broken: its pieces follow one another.
        const bool complete = times < count && has_pieces(all, word);
        if (!complete) {
            RC_LOG() << word << ": " << count << " wanted, " << times << " seen in:";
            for (const auto& w : all) RC_LOG() << ' ' << w;
        }
        RC_ASSERT(complete);
    }
}

/// No page has but heads and feet that were on another: a heading so long that it fills a page by
/// itself may do so once.
void check_content(const std::vector<page>& pages, const styles::card& c, const styles::style& look,
                   const layout::font_metrics& metrics) {
    if (pages.size() == 1) return;
    const auto repeated = counted(repeated_words(c, look));
    std::set<std::string> seen;
    for (const auto& p : pages) {
        const auto words = page_words(p, metrics);
        constexpr std::size_t longest_label = 3; // `1b`
        RC_ASSERT(std::ranges::any_of(words, [&](const auto& w) {
            const bool is_new = w.size() > longest_label && !seen.contains(w);
            return is_new || !repeated.contains(w);
        }));
        seen.insert(words.begin(), words.end());
    }
}

void check_made_up_cards(const layout::font_metrics& metrics) {
    const bool holds = rc::check("made-up cards in all styles on all papers", [&] {
        const auto look = made_up::look();
        const auto grid = layout::grid_for(look, made_up::paper());
        RC_PRE(grid.has_value());
        RC_PRE(layout::room_across(look, grid->card) >= layout::least_room(look, metrics));
        const auto card =
            look.prints == styles::printed::recipe ? made_up::recipe() : made_up::card();
        RC_LOG() << grid->card.name << ' ' << grid->card.width << " by " << grid->card.height
                 << ", amounts from " << look.amounts.least << " pt, prints "
                 << static_cast<int>(look.prints) << "\n";
        auto pages = layout::lay_out(card, look, grid->card, metrics);
        RC_ASSERT(!pages.empty());
        check_words(pages, card, look, metrics);
        check_content(pages, card, look, metrics);
        pages.push_back(layout::back_of(card, look, grid->card, metrics));
        for (const auto& p : pages) {
            check_places(p, look, metrics);
            check_sizes(p, card, look, metrics);
            check_contrast(p, metrics);
        }
    });
    CHECK(holds);
}

} // namespace

TEST_CASE("whatever a card says, all of it stands inside the safe area and nothing on another",
          "[layout][property]") {
    check_made_up_cards(real_fonts().metrics);
}

TEST_CASE("and so it does where no font is installed", "[layout][property]") {
    check_made_up_cards(pdf::fonts_of_readers().metrics);
}
