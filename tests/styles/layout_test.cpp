#include "fonts_for_tests.hpp"
#include "sample_cards.hpp"
#include "styles/layout/lay_out.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace benchcard;
using layout::page;
using layout::text_run;

namespace {

std::vector<page> pages_of(const styles::card& card, const char* paper,
                           const styles::style& look = *styles::built_in_style("station")) {
    return layout::lay_out(card, look, *styles::paper_named(paper), real_fonts().metrics);
}

const text_run* run_with(const page& p, const std::string& text) {
    const auto at = std::ranges::find_if(
        p.text, [&](const text_run& run) { return run.text.find(text) != std::string::npos; });
    return at == p.text.end() ? nullptr : &*at;
}

/// Where the whole part of an amount ends.
double point_of(const text_run& run) {
    double advance = 0;
    for (const auto c : run.text) {
        if (c == '.') break;
        advance += real_fonts().metrics.faces[run.face].find(static_cast<char32_t>(c))->advance;
    }
    return run.x + advance * run.size / 1000;
}

std::vector<std::string> labels_of(const std::vector<page>& pages) {
    std::vector<std::string> out;
    for (const auto& p : pages) out.push_back(p.label);
    return out;
}

} // namespace

TEST_CASE("all cells of a row stand on one baseline", "[layout]") {
    const auto pages = pages_of(samples::long_card(), "a4");
    REQUIRE(pages.size() == 1);
    const auto* name = run_with(pages[0], "wholemeal flour");
    REQUIRE(name);
    for (const auto* text : {"1800", "stoneground", "3 lb 15½ oz", "30 %"}) {
        INFO(text);
        const auto* run = run_with(pages[0], text);
        REQUIRE(run);
        CHECK(run->y == name->y);
    }
}

TEST_CASE("amounts stand under one another on the decimal point", "[layout]") {
    const auto pages = pages_of(samples::long_card(), "a4");
    const double point = point_of(*run_with(pages[0], "3600"));
    for (const auto* amount : {"600", "42.5", "1.5", "24", "11024"}) {
        INFO(amount);
        const auto at = std::ranges::find(pages[0].text, amount, &text_run::text);
        REQUIRE(at != pages[0].text.end());
        CHECK(point_of(*at) == Approx(point));
    }
}

TEST_CASE("type grows into the room that a short card leaves", "[layout]") {
    auto card = samples::short_card();
    const auto size = [](const std::vector<page>& pages) {
        REQUIRE(pages.size() == 1);
        return run_with(pages[0], "400")->size;
    };
    const double on_a5 = size(pages_of(card, "a5"));
    CHECK(on_a5 > 18);
    CHECK(size(pages_of(card, "a4")) >= on_a5);
    card.weigh_out.resize(2);
    CHECK(size(pages_of(card, "a5")) >= on_a5);
}

TEST_CASE("a card that does not fit runs on, marked with letters", "[layout]") {
    const auto pages = pages_of(samples::long_card(), "a5");
    REQUIRE(pages.size() == 2);
    CHECK(labels_of(pages) == std::vector<std::string>{"1a", "1b"});
    CHECK(run_with(pages[0], "card 1a of 2"));
    CHECK(run_with(pages[1], "card 1b of 2"));
    CHECK(run_with(pages[0], "continues on 1b"));
    CHECK_FALSE(run_with(pages[1], "continues"));
    for (const auto& p : pages) {
        CHECK(run_with(p, "Seeded rye"));
        CHECK(run_with(p, "× 3 · 12 loaves"));
        CHECK(run_with(p, "P3VX-6H"));
        CHECK(run_with(p, "local rules"));
    }
    CHECK(pages[0].bookmark == "Seeded rye and wheat tin loaf");
    CHECK(pages[1].bookmark.empty());
    // The weigh-out is whole on the first, and no step is broken.
    CHECK(run_with(pages[0], "tin papers"));
    CHECK(run_with(pages[1], "Fold in the soaked seeds"));
}

TEST_CASE("a card of one page has no letter", "[layout]") {
    const auto pages = pages_of(samples::short_card(), "a5");
    CHECK(labels_of(pages) == std::vector<std::string>{"2"});
    CHECK(run_with(pages[0], "card 2 of 3"));
    auto card = samples::short_card();
    card.number.clear();
    CHECK(labels_of(pages_of(card, "a5")) == std::vector<std::string>{""});
    CHECK(labels_of(pages_of(card, "a6")) == std::vector<std::string>{"a", "b"});
    card.number = "2/3";
    CHECK(run_with(pages_of(card, "a6")[0], "2a/3"));
}

TEST_CASE("headings never stand alone at the end of a page", "[layout]") {
    auto card = samples::short_card();
    for (int steps = 0; steps < 24; ++steps) {
        card.method.push_back({samples::plain("Stir, and stir again until it is smooth.")});
        auto look = *styles::built_in_style("station");
        look.top = {styles::block::method, styles::block::weigh_out, styles::block::totals};
        for (const auto& p : pages_of(card, "a5", look)) {
            const auto* heading = run_with(p, "US cups");
            if (heading) CHECK(run_with(p, "unsalted"));
        }
    }
}

TEST_CASE("parts that a card lacks take no room", "[layout]") {
    auto card = samples::short_card();
    card.oven.clear();
    card.cautions.clear();
    card.allergens.clear();
    card.keeping.clear();
    card.made_label.clear();
    card.totals.clear();
    const auto pages = pages_of(card, "a5");
    for (const auto* gone : {"oven", "gas", "Contains", "Keeps", "made", "in the bowl"})
        CHECK_FALSE(run_with(pages[0], gone));
    for (const auto& s : pages[0].shapes) CHECK_FALSE(std::holds_alternative<layout::polygon>(s));

    styles::card only_title;
    only_title.title = "Salt";
    const auto bare = pages_of(only_title, "3x5");
    REQUIRE(bare.size() == 1);
    CHECK(bare[0].text.size() == 1);
}

TEST_CASE("a caution has a sign that is drawn", "[layout]") {
    const auto pages = pages_of(samples::short_card(), "a5");
    const auto is_sign = [](const layout::shape& s) {
        const auto* p = std::get_if<layout::polygon>(&s);
        return p && p->points.size() == 3;
    };
    CHECK(std::ranges::count_if(pages[0].shapes, is_sign) == 1);
}

TEST_CASE("the same card gives the same pages", "[layout]") {
    CHECK(pages_of(samples::long_card(), "a6") == pages_of(samples::long_card(), "a6"));
}
