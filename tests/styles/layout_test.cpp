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
    CHECK(pages[0].bookmarks == std::vector<std::string>{"Seeded rye and wheat tin loaf"});
    CHECK(pages[1].bookmarks.empty());
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

TEST_CASE("on a sheet that is turned the method stands beside the weigh-out", "[layout]") {
    for (const auto* paper : {"a5 landscape", "a4 landscape", "5x8 landscape"}) {
        INFO(paper);
        const auto pages = pages_of(samples::short_card(), paper);
        REQUIRE(pages.size() == 1);
        const auto& p = pages[0];
        CHECK(p.width > p.height);
        const auto* last_name = run_with(p, "ground");
        const auto* first_step = run_with(p, "Beat");
        REQUIRE((last_name && first_step));
        CHECK(first_step->y < last_name->y);
        CHECK(first_step->x > last_name->x + 100);
        for (const auto& s : p.shapes) {
            const auto* rule = std::get_if<layout::line>(&s);
            const bool between_rows =
                rule && rule->y1 == rule->y2 && rule->y1 > first_step->y && rule->y1 < last_name->y;
            if (between_rows) CHECK((rule->x2 < first_step->x || rule->x1 > last_name->x));
        }
        // Copied, the text comes in the order in which it is read.
        CHECK(last_name < first_step);
        CHECK(first_step < run_with(p, "Contains"));
    }
}

TEST_CASE("what is too much for two halves flows through two columns", "[layout]") {
    const auto pages = pages_of(samples::long_card(), "a5 landscape");
    REQUIRE(pages.size() > 1);
    const auto middle = pages[0].width / 2;
    const auto* row = run_with(pages[0], "dark rye flour");
    REQUIRE(row);
    CHECK(row->x < middle);
    for (const auto& p : pages) {
        if (&p == &pages.back()) continue;
        const auto is_right = [&](const text_run& run) {
            return run.x > middle && run.y > p.height * 0.3 && run.y < p.height * 0.8;
        };
        CHECK(std::ranges::any_of(p.text, is_right));
    }
}

namespace {

/// Two components and what holds for both.
styles::card whole() {
    styles::card c = samples::short_card();
    c.is_recipe = true;
    c.title = "Pear tart";
    c.number = "";
    for (const auto& from : {samples::short_card(), samples::long_card()}) {
        auto part = from;
        part.allergens.clear(), part.cautions.clear();
        part.revision = part.footnote = part.number = part.fingerprint = part.made_label = "";
        c.parts.push_back(part);
    }
    c.weigh_out.clear(), c.totals.clear(), c.method.clear(), c.oven.clear();
    c.figures = {{"Almond cream", {{0, "unsalted butter: 400 g"}, {1, "200 g × 2 = 400 g"}}}};
    return c;
}

std::vector<page> pages_in(const styles::card& card, const char* style, const char* paper) {
    return pages_of(card, paper, *styles::built_in_style(style));
}

} // namespace

TEST_CASE("a whole recipe has its components under each other, and pages with numbers",
          "[layout]") {
    const auto pages = pages_in(whole(), "office", "a4");
    REQUIRE(pages.size() == 2);
    CHECK(labels_of(pages) == std::vector<std::string>{"1", "2"});
    CHECK(run_with(pages[0], "page 1 of 2"));
    CHECK(run_with(pages[1], "page 2 of 2"));
    const auto* first = run_with(pages[0], "Almond cream");
    const auto* second = run_with(pages[0], "Seeded rye");
    REQUIRE((first && second));
    CHECK(first->y < run_with(pages[0], "ground almonds")->y);
    CHECK(run_with(pages[0], "ground almonds")->y < second->y);
    const auto* why = run_with(pages[1], "unsalted butter: 400 g");
    const auto* under = run_with(pages[1], "200 g × 2 = 400 g");
    REQUIRE((why && under));
    CHECK(under->y > why->y);
    CHECK(under->x > why->x);
    // Only a style that names them shows figures.
    for (const auto& p : pages_in(whole(), "hand", "a4")) CHECK_FALSE(run_with(p, "200 g × 2"));
}

TEST_CASE("the name of a component is never the last on a page", "[layout]") {
    auto card = whole();
    for (int steps = 0; steps < 30; ++steps) {
        card.parts[0].method.push_back({samples::plain("Stir until it is smooth.")});
        for (const auto* paper : {"5x8", "a5 landscape"})
            for (const auto& p : pages_in(card, "hand", paper))
                if (const auto* name = run_with(p, "Seeded rye"))
                    CHECK(std::ranges::any_of(p.text, [&](const text_run& run) {
                        const bool is_foot = run.text.find("local rules") != std::string::npos;
                        return run.y > name->y && run.x < name->x + 60 && !is_foot;
                    }));
    }
}

TEST_CASE("a component that runs on has its name over what runs on", "[layout]") {
    auto card = whole();
    for (int steps = 0; steps < 60; ++steps)
        card.parts[0].method.push_back({samples::plain("Stir until it is smooth.")});
    for (const auto* paper : {"5x8", "a5 landscape"}) {
        std::size_t run_on = 0;
        for (const auto& p : pages_in(card, "hand", paper)) {
            const auto* step = run_with(p, "Stir until");
            if (!step) continue;
            const auto* name = run_with(p, "Almond cream");
            REQUIRE(name);
            CHECK(name < step);
            CHECK(name->y < step->y);
            ++run_on;
        }
        CHECK(run_on > 1);
    }
}

TEST_CASE("a recipe that fits on one index card stands on one, in larger type", "[layout]") {
    auto card = whole();
    card.parts.pop_back();
    const auto pages = pages_in(card, "hand", "5x8");
    REQUIRE(pages.size() == 1);
    CHECK(run_with(pages[0], "400")->size > 11);
    CHECK_FALSE(run_with(pages[0], "page"));
    CHECK(labels_of(pages) == std::vector<std::string>{""});
}
