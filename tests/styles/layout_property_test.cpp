#include "fonts_for_tests.hpp"
#include "made_up_cards.hpp"
#include "styles/layout/lay_out.hpp"
#include "words_of.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>

using namespace benchcard;
using layout::box;
using layout::page;

namespace {

// So many cards in a usual run; RC_PARAMS="max_success=5000" in the environment tries more.
const bool few_cards = (setenv("RC_PARAMS", "max_success=40", 0), true);

const styles::style& station() {
    static const auto look = *styles::built_in_style("station");
    return look;
}

/// How much two boxes overlap, as the smaller of width and height; zero when they do not.
double overlap(const box& a, const box& b) {
    const double across = std::min(a.right, b.right) - std::max(a.left, b.left);
    const double down = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return across > 0 && down > 0 ? std::min(across, down) : 0;
}

void require_inside(const box& ink, const page& p) {
    const double safe = styles::least_margin * styles::points_per_mm;
    RC_ASSERT(ink.left >= safe);
    RC_ASSERT(ink.top >= safe);
    RC_ASSERT(ink.right <= p.width - safe);
    RC_ASSERT(ink.bottom <= p.height - safe);
}

void check_places(const page& p, const layout::font_metrics& metrics) {
    std::vector<box> inks;
    for (const auto& run : p.text) inks.push_back(layout::ink_of(run, metrics));
    for (const auto& ink : inks) require_inside(ink, p);
    for (const auto& s : p.shapes) require_inside(layout::ink_of(s), p);
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
                RC_LOG() << "a line strikes through: " << p.text[i].text << "\n";
            RC_ASSERT(overlap(inks[i], layout::ink_of(s)) <= 0.01);
        }
    }
}

void check_sizes(const page& p, const styles::card& c) {
    for (const auto& run : p.text) {
        RC_ASSERT(run.size >= 11);
        RC_ASSERT(run.size <= station().title.most);
        const bool is_amount = std::ranges::any_of(
            c.weigh_out, [&](const auto& r) { return !r.amount.empty() && r.amount == run.text; });
        if (is_amount) RC_ASSERT(run.size >= 14);
    }
}

/// Whether a word stands broken among others from `from` on: piece after piece, in order, with
/// the pieces of cells beside it between.
bool has_pieces(const word_list& words, std::string_view word, std::size_t from = 0) {
    if (word.empty()) return true;
    for (auto i = from; i < words.size(); ++i)
        if (word.starts_with(words[i]) && has_pieces(words, word.substr(words[i].size()), i + 1))
            return true;
    return false;
}

void check_words(const std::vector<page>& pages, const styles::card& c,
                 const layout::font_metrics& metrics) {
    word_list all;
    for (const auto& p : pages)
        for (auto& w : page_words(p, metrics)) all.push_back(std::move(w));
    const auto repeated = counted(repeated_words(c, station()));
    const auto expected = counted(body_words(c));
    const auto seen = counted(all);
    for (const auto& [word, count] : expected) {
        const auto at = seen.find(word);
        const int times = at == seen.end() ? 0 : at->second;
        // A piece of a broken word may look like a short one.
        const bool may_repeat = repeated.contains(word) || word.size() <= 2;
        if (times == count || (times > count && may_repeat)) continue;
        // A word too wide for its line was broken: its pieces follow one another.
        const bool complete = times < count && has_pieces(all, word);
        if (!complete) RC_LOG() << word << ": " << count << " wanted, " << times << " seen\n";
        RC_ASSERT(complete);
    }
}

void check_content(const std::vector<page>& pages, const styles::card& c,
                   const layout::font_metrics& metrics) {
    if (pages.size() == 1) return;
    auto repeated = counted(repeated_words(c, station()));
    for (const auto& p : pages) {
        const auto words = page_words(p, metrics);
        RC_ASSERT(std::ranges::any_of(words, [&](const auto& w) { return !repeated.contains(w); }));
    }
}

} // namespace

TEST_CASE("whatever a card says, all of it stands inside the safe area and nothing on another",
          "[layout][property]") {
    const auto& metrics = real_fonts().metrics;
    const bool holds = rc::check("made-up cards on all papers", [&] {
        const auto card = made_up::card();
        const auto sheet = made_up::paper();
        const auto pages = layout::lay_out(card, station(), sheet, metrics);
        RC_ASSERT(!pages.empty());
        for (const auto& p : pages) {
            check_places(p, metrics);
            check_sizes(p, card);
        }
        check_words(pages, card, metrics);
        check_content(pages, card, metrics);
    });
    CHECK(holds);
}
