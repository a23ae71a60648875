#include "fonts_for_tests.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/layout/legibility.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

/// How high small letters stand on a label, measured from the fonts and tested from the layout.
namespace benchcard {
namespace {

styles::card full_label() {
    styles::card c;
    c.title = "Fruited seed bread with rye and barley";
    c.batch = "DRAFT";
    c.recipe = "EU and UK form";
    styles::paragraph list = {{"Ingredients: ", false}};
    for (int i = 0; i < 60; ++i) {
        list.push_back({"RYE", true});
        list.push_back({" flour, crème fraîche ⅔, ", false});
    }
    c.notes = {list};
    c.allergens = {{"May contain: ", false}, {"sesame", true}};
    c.cautions = {{{"A draft for the person responsible for the label.", false}}};
    c.made_label = "Use by";
    c.revision = "rev 3";
    c.number = "label 1 of 1";
    c.fingerprint = "7K4Q-92";
    c.language = "en";
    return c;
}

/// The lowest small letter of a label, in millimetres, and how many pages it takes.
std::pair<double, std::size_t> lowest(const char* paper, styles::style look) {
    const auto& metrics = real_fonts().metrics;
    const auto pages = layout::lay_out(full_label(), look, *styles::paper_named(paper), metrics);
    double least = 1000;
    for (const auto& p : pages)
        for (const auto& run : p.text)
            least = std::min(least, run.size * layout::x_height_of(metrics.faces[run.face]) /
                                        styles::points_per_mm);
    return {least, pages.size()};
}

} // namespace

TEST_CASE("a font's x-height is measured from its ink", "[layout]") {
    // Noto Sans states an sxHeight of 536 of 1000 in its OS/2 table.
    const auto& metrics = real_fonts().metrics;
    for (const auto& chain : metrics.chains)
        CHECK(layout::x_height_of(metrics.faces[chain.front()]) == Approx(0.536).margin(0.012));
    CHECK(layout::x_height_of({}) == 0);
}

TEST_CASE("no small letter of a label is lower than its style says", "[layout]") {
    auto look = *styles::built_in_style("label");
    // As a style without it would set so long a list, to save a page.
    look.x_height = 0;
    look.text.least = look.small_print.least = 4;
    CHECK(lowest("a7", look).first < 0.9);
    // 0.9 mm and 1.2 mm: Reg. (EU) No 1169/2011, Art. 13(2) and (3).
    for (const auto height : {0.9, 1.2, 2.5})
        for (const auto* paper : {"a7", "3x5", "a6", "a5"}) {
            INFO(height << " mm on " << paper);
            look.x_height = height;
            CHECK(lowest(paper, look).first >= Approx(height).epsilon(1e-9));
        }
    look.x_height = 0.9;
    const auto small = lowest("a7", look);
    look.x_height = 1.2;
    CHECK(small.second <= lowest("a7", look).second);
    CHECK(small.first < 1.2);
}

TEST_CASE("a style that asks for no x-height is left as it is", "[layout]") {
    const auto station = *styles::built_in_style("station");
    CHECK(layout::legible(station, real_fonts().metrics) == station);
}

} // namespace benchcard
