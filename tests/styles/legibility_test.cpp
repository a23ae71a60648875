#include "fonts_for_tests.hpp"
#include "sample_cards.hpp"
#include "styles/colour.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/layout/legibility.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace benchcard;
using layout::weight;
using styles::colour;

TEST_CASE("heights for angles are as published", "[legibility]") {
    // Heights in mm at 600, 1000 and 1500 mm for the angles of ISO 9241-3: 16 minutes of arc is its
    // minimum, 20 to 22 what it prefers. Reckoned by h = 2 d tan(a/2).
    CHECK(layout::height_at(600, 16) == Approx(2.79).margin(0.005));
    CHECK(layout::height_at(600, 20) == Approx(3.49).margin(0.005));
    CHECK(layout::height_at(600, 22) == Approx(3.84).margin(0.005));
    CHECK(layout::height_at(1000, 20) == Approx(5.82).margin(0.005));
    CHECK(layout::height_at(1500, 22) == Approx(9.60).margin(0.005));
    // The rule of a 200th of the distance (FAA, human factors design standard) falls short of 20'.
    CHECK(layout::minutes_at(600, 3.0) == Approx(17.19).margin(0.005));
}

TEST_CASE("amounts are as large as their distance asks for, in the font itself", "[legibility]") {
    const auto& metrics = real_fonts().metrics;
    // Noto Sans has an x-height of 536 thousandths (its OS/2 table, sxHeight).
    CHECK(layout::x_height(metrics, weight::regular) == Approx(0.536).margin(0.006));
    for (const double distance : {450.0, 600.0, 900.0}) {
        auto look = *styles::built_in_style("station");
        look.distance = distance;
        for (const auto* paper : {"a4", "a5", "a6", "a5 landscape"}) {
            auto card = samples::long_card();
            card.method.clear(), card.totals.clear(); // where the same figures may stand
            std::size_t amounts = 0;
            for (const auto& p : layout::lay_out(card, look, *styles::paper_named(paper), metrics))
                for (const auto& run : p.text) {
                    const bool is_amount = std::ranges::any_of(
                        card.weigh_out, [&](const auto& row) { return row.amount == run.text; });
                    if (!is_amount || run.text.empty()) continue;
                    ++amounts;
                    const auto face = metrics.faces[run.face].find(U'x')->above;
                    const double height = run.size * face / 1000 / styles::points_per_mm;
                    INFO(run.text << " on " << paper << " from " << distance);
                    CHECK(layout::minutes_at(distance, height) >= 20 - 1e-6);
                }
            CHECK(amounts >= 13);
        }
    }
}

TEST_CASE("contrast is reckoned as WCAG reckons it", "[legibility]") {
    CHECK(styles::contrast(styles::black, styles::white) == Approx(21));
    CHECK(styles::contrast(styles::white, styles::white) == Approx(1));
    // #767676 is the lightest grey with 4.5:1 on white, #595959 with 7:1 (W3C, Understanding
    // success criteria 1.4.3 and 1.4.6).
    CHECK(styles::contrast({0x76, 0x76, 0x76}, styles::white) == Approx(4.54).margin(0.005));
    CHECK(styles::contrast({0x77, 0x77, 0x77}, styles::white) < 4.5);
    CHECK(styles::contrast({0x59, 0x59, 0x59}, styles::white) == Approx(7.0).margin(0.01));
    CHECK(styles::contrast({0x5A, 0x5A, 0x5A}, styles::white) < 7);
    // Pure red on white, a ratio that is often given: 4:1.
    CHECK(styles::contrast({255, 0, 0}, styles::white) == Approx(4.0).margin(0.005));
    CHECK(styles::in_grey({255, 255, 255}) == styles::white);
    CHECK(styles::in_grey({255, 0, 0}) == colour{77, 77, 77});
}

TEST_CASE("a colour that is dark enough only in colour is refused", "[legibility]") {
    // Red weighs 30 % in grey, and 21 % in WCAG's brightness.
    const colour mauve{108, 78, 108};
    CHECK(styles::contrast(mauve, styles::white) >= 7);
    CHECK(styles::contrast(styles::in_grey(mauve), styles::white) < 7);
    grammar::diagnostics messages;
    const auto look =
        styles::read_style(grammar::source(0, "a.style", "accent: 108 78 108"), messages);
    REQUIRE(messages.size() == 1);
    CHECK(messages[0].message ==
          "this colour's contrast to white is 6.8:1 when it is printed in grey");
    CHECK(look.accent == styles::black);
}

TEST_CASE("the accent is that of the card's station, on the tab and the rule", "[legibility]") {
    auto look = *styles::built_in_style("station");
    look.accent = {20, 60, 140};
    look.accents = {{"Mixing Bench", {110, 30, 60}}};
    const auto inks = [&](const styles::card& card) {
        const auto pages =
            layout::lay_out(card, look, *styles::paper_named("a5"), real_fonts().metrics);
        std::vector<colour> out;
        for (const auto& shape : pages.front().shapes) {
            const auto ink = std::visit([](const auto& s) { return s.ink; }, shape);
            if (ink != styles::black) out.push_back(ink);
        }
        return out;
    };
    CHECK(inks(samples::short_card()) == std::vector<colour>(2, {110, 30, 60}));
    CHECK(inks(samples::long_card()) == std::vector<colour>(2, {20, 60, 140}));
}
