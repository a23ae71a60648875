#include "fonts_for_tests.hpp"
#include "sample_cards.hpp"
#include "styles/layout/impose.hpp"
#include "styles/layout/lay_out.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace benchcard;
using layout::flip;
using layout::grid;
using layout::page;
using styles::points_per_mm;

namespace {

grid grid_of(const char* cut, const char* sheet) {
    styles::style look;
    if (const auto card = styles::paper_named(cut))
        look.cut = {*card, 0};
    else
        look.cut = {std::nullopt, cut[0] - '0'};
    const auto made = layout::grid_for(look, *styles::paper_named(sheet));
    REQUIRE(made);
    return *made;
}

/// A page with one letter in its upper left corner.
page lettered(const grid& g, const std::string& letter) {
    page p{.width = g.card.width * points_per_mm, .height = g.card.height * points_per_mm};
    p.label = letter;
    p.bookmarks = {"card " + letter};
    p.text.push_back({.x = 20, .y = 30, .size = 10, .text = letter});
    return p;
}

std::vector<page> lettered(const grid& g, const std::string& letters, int) {
    std::vector<page> pages;
    for (const char c : letters) pages.push_back(lettered(g, std::string(1, c)));
    return pages;
}

/// Which place each letter stands in: row by row, a dot for an empty one, a bar between sheets.
std::string places(const std::vector<page>& sheets, const grid& g) {
    std::string out;
    for (const auto& sheet : sheets) {
        if (!out.empty()) out += '|';
        std::string rows(g.places(), '.');
        for (const auto& run : sheet.text) {
            const double x =
                (sheet.width - g.card.width * points_per_mm * static_cast<double>(g.across)) / 2;
            const double y =
                (sheet.height - g.card.height * points_per_mm * static_cast<double>(g.down)) / 2;
            const double across = (run.x - 20 - x) / (g.card.width * points_per_mm);
            const double down = (run.y - 30 - y) / (g.card.height * points_per_mm);
            REQUIRE(across == Approx(std::round(across)).margin(1e-6));
            REQUIRE(down == Approx(std::round(down)).margin(1e-6));
            rows[static_cast<std::size_t>(std::lround(down)) * g.across +
                 static_cast<std::size_t>(std::lround(across))] = run.text[0];
        }
        out += rows;
    }
    return out;
}

} // namespace

TEST_CASE("a sheet holds as many cards as it can, turned where that is more", "[impose]") {
    const auto a6 = grid_of("a6", "a4");
    CHECK((a6.across == 2 && a6.down == 2 && !a6.sheet.is_turned()));
    const auto a5 = grid_of("a5", "a4");
    CHECK((a5.across == 2 && a5.down == 1 && a5.sheet.is_turned()));
    CHECK(grid_of("a5 landscape", "a4").sheet.is_turned() == false);
    CHECK(grid_of("3x5", "letter").places() == 4);
    CHECK(grid_of("4x6", "a4").places() == 2);
    CHECK(grid_of("a6", "a4 landscape").sheet.is_turned() == false); // it would hold two
    // So many equal ones: quarters of A4 are A6, by ISO 216 but for the half millimetre it rounds.
    const auto quarters = grid_of("4 a sheet", "a4");
    CHECK(quarters.card.width == 105);
    CHECK(quarters.card.height == Approx(148).margin(0.5));
    CHECK(grid_of("2 a sheet", "letter").card.width == Approx(5.5 * 25.4));
    CHECK(grid_of("8 a sheet", "a4").places() == 8);
    styles::style look;
    look.cut = {*styles::paper_named("a4"), 0};
    CHECK_FALSE(layout::grid_for(look, *styles::paper_named("a5")));
    look.cut = {std::nullopt, 4}; // 38 × 64 mm
    CHECK_FALSE(layout::grid_for(look, *styles::paper_named("3x5")));
    CHECK_FALSE(layout::grid_for({}, *styles::paper_named("a5"))->is_cut());
}

TEST_CASE("cards follow each other row by row, and copies stay on a sheet", "[impose]") {
    const auto g = grid_of("a6", "a4");
    const auto laid = [&](const std::string& letters, std::size_t copies) {
        return places(layout::imposed(lettered(g, letters, 0), g, copies, std::nullopt), g);
    };
    CHECK(laid("ABCDE", 1) == "ABCD|E...");
    CHECK(laid("AB", 2) == "AABB");
    CHECK(laid("ABC", 2) == "AABB|CC..");
    CHECK(laid("AB", 3) == "AAA.|BBB.");
    CHECK(laid("AB", 4) == "AAAA|BBBB");
    const auto sheets = layout::imposed(lettered(g, "ABCDE", 0), g, 1, std::nullopt);
    CHECK(sheets[0].label == "A, B, C, D");
    CHECK(sheets[0].bookmarks.size() == 4);
    CHECK(layout::imposed(lettered(g, "AB", 0), g, 2, std::nullopt)[0].label == "A, B");
}

TEST_CASE("backs lie behind their fronts, whichever edge the sheet is turned over", "[impose]") {
    const auto g = grid_of("a6", "a4");
    const auto laid = [&](const grid& on, const std::string& letters, flip over) {
        return places(layout::imposed(lettered(on, letters, 0), on, 1, over), on);
    };
    // Capitals are fronts. Turned over the long, upright edge left and right change places.
    CHECK(laid(g, "AaBbCcDdEe", flip::long_edge) == "ABCD|badc|E...|.e..");
    CHECK(laid(g, "AaBbCcDdEe", flip::short_edge) == "ABCD|cdab|E...|..e.");
    // On a sheet that is turned the long edge is the upper one.
    const auto wide = grid_of("a5", "a4");
    CHECK(laid(wide, "AaBb", flip::long_edge) == "AB|ab");
    CHECK(laid(wide, "AaBb", flip::short_edge) == "AB|ba");
    const auto copies = layout::imposed(lettered(g, "AaBb", 0), g, 2, flip::long_edge);
    CHECK(places(copies, g) == "AABB|aabb");
}

TEST_CASE("the place of a hole is one on both sides", "[impose]") {
    styles::style look;
    look.margin = 8;
    look.hole = {styles::edge::left, 20};
    const auto sheet = *styles::paper_named("a5");
    const auto settled = [&](flip over) {
        std::vector<page> pages(2, page{.width = 400, .height = 600});
        for (auto& p : pages) p.text.push_back({.x = 20 * points_per_mm, .y = 100, .size = 10});
        layout::settle_backs(pages, look, sheet, over);
        return pages;
    };
    CHECK(settled(flip::long_edge)[0].text[0].x == Approx(20 * points_per_mm));
    CHECK(settled(flip::long_edge)[1].text[0].x == Approx(8 * points_per_mm));
    // Turned over the short, upper edge left stays left.
    CHECK(settled(flip::short_edge)[1].text[0].x == Approx(20 * points_per_mm));
    look.hole = {styles::edge::top, 20};
    CHECK(settled(flip::short_edge)[1].text[0].y == Approx(100 - 12 * points_per_mm));
}

TEST_CASE("cutting marks stand on the cuts and never on a card", "[impose]") {
    for (const auto& [cut, sheet] : {std::pair{"a6", "a4"},
                                     {"4 a sheet", "letter"},
                                     {"3x5", "letter"},
                                     {"3x5 landscape", "a4"},
                                     {"a5", "a4"},
                                     {"8 a sheet", "a4"},
                                     {"4x6", "letter"}}) {
        INFO(cut << " on " << sheet);
        const auto g = grid_of(cut, sheet);
        auto bare = lettered(g, "A");
        bare.text.clear();
        const auto made = layout::imposed({bare}, g, 1, std::nullopt);
        REQUIRE(made.size() == 1);
        REQUIRE(made[0].trim);
        const auto& trim = *made[0].trim;
        const double width = g.card.width * points_per_mm, height = g.card.height * points_per_mm;
        const auto is_cut = [](double at, double first, double last, double step) {
            const double times = (at - first) / step;
            return at > first - 0.01 && at < last + 0.01 &&
                   std::abs(times - std::round(times)) * step < 0.01;
        };
        std::size_t ends = 0;
        for (const auto& s : made[0].shapes) {
            const auto& l = std::get<layout::line>(s);
            const bool upright = l.x1 == l.x2;
            CHECK((upright ? is_cut(l.x1, trim.left, trim.right, width)
                           : is_cut(l.y1, trim.top, trim.bottom, height)));
            const auto ink = layout::ink_of(s);
            CHECK((ink.left >= 0 && ink.top >= 0));
            CHECK((ink.right <= made[0].width && ink.bottom <= made[0].height));
            ++ends;
        }
        const double rest_x = trim.left, rest_y = trim.top;
        const auto cuts_x = g.across - 1 + (rest_x > 0.5 ? 2 : 0);
        const auto cuts_y = g.down - 1 + (rest_y > 0.5 ? 2 : 0);
        CHECK(ends == 2 * (cuts_x + cuts_y) + 2 * (g.across - 1) * (g.down - 1));
    }
}

TEST_CASE("the back of a card says whose it is", "[impose]") {
    const auto card = samples::short_card();
    const auto back = layout::back_of(card, *styles::built_in_style("station"),
                                      *styles::paper_named("a5"), real_fonts().metrics);
    std::string text;
    for (const auto& run : back.text) text += run.text + "|";
    CHECK(text == "Almond cream|× 2|card 2 of 3| · 7K4Q-92|");
    CHECK(back.label == "2");
    CHECK(back.bookmarks.empty());
}
