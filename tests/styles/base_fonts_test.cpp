#include "fonts_for_tests.hpp"
#include "readers.hpp"
#include "sample_cards.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/pdf/paint.hpp"

#include <catch2/catch.hpp>

using namespace benchcard;
using layout::page;

namespace {

const pdf::font_set& base_fonts() {
    static const auto fonts = pdf::fonts_of_readers();
    return fonts;
}

styles::card card_with_signs() {
    auto card = samples::long_card();
    card.title = "Éclairs, ⅔ of a batch";
    card.notes.push_back({samples::plain("œuf, 1⅔ cups and 2½ or ⅒, ☐ or ✓ ≥ 5 °C → chill −18")});
    card.notes.push_back({{.text = "bold ⅝ ⚠", .strong = true}});
    return card;
}

std::vector<page> pages_of(const styles::card& card, const char* style, const char* paper) {
    return layout::lay_out(card, *styles::built_in_style(style), *styles::paper_named(paper),
                           base_fonts().metrics);
}

std::string pdf_file(const std::vector<page>& pages, const std::string& name) {
    const auto made = pdf::paint(pages, base_fonts(), {.title = "Éclairs"});
    for (const auto& m : made.messages) UNSCOPED_INFO(m.message);
    REQUIRE(made);
    return file_with(made.bytes, name);
}

} // namespace

TEST_CASE("without any font a card carries none, and draws its fractions", "[pdf][base-fonts]") {
    const auto file = pdf_file(pages_of(card_with_signs(), "station", "a5"), "base.pdf");
    const auto checked = run("qpdf --check '" + file + "' 2>&1");
    INFO(checked.text);
    CHECK(checked.status == 0);
    CHECK(checked.text.find("WARNING") == std::string::npos);
    const auto fonts = run("pdffonts '" + file + "'").text;
    INFO(fonts);
    CHECK(fonts.find("Helvetica ") != std::string::npos);
    CHECK(fonts.find("Helvetica-Bold ") != std::string::npos);
    CHECK(fonts.find("yes") == std::string::npos); // nothing embedded
}

TEST_CASE("what is drawn can be found and copied", "[pdf][base-fonts]") {
    // By Poppler; MuPDF 1.21, Ghostscript 10 and pdf.js 4 do not ask what a drawing stands for.
    const auto pages = pages_of(card_with_signs(), "station", "a5");
    const auto file = pdf_file(pages, "base-words.pdf");
    const auto text = run("pdftotext '" + file + "' - 2>&1").text;
    INFO(text);
    for (const auto* said : {"1⅔ cups", "2½ or", "⅒", "☐", "✓", "≥", "→", "−", "⅝", "⚠"})
        CHECK(text.find(said) != std::string::npos);
    CHECK(text.find("Error") == std::string::npos);
    const auto by_mupdf = run("mutool draw -q -F txt '" + file + "' 2>/dev/null").text;
    for (const auto* said : {"œuf", "Éclairs", "230 °C"})
        CHECK(by_mupdf.find(said) != std::string::npos);
}

TEST_CASE("signs that are drawn leave ink where they stand, within their boxes",
          "[pdf][base-fonts]") {
    constexpr double size = 60;
    const std::u32string signs = U"½⅓⅔⅒⅝⁄−☐✓⚠→≤≥≈";
    const auto metrics = base_fonts().metrics;
    for (const auto w : {layout::weight::regular, layout::weight::bold})
        for (const auto code : signs) {
            const auto found = metrics.look_up(code, w);
            REQUIRE(found.known);
            page p{.width = 144, .height = 144};
            layout::text_run run{.x = 36, .y = 96, .size = size, .face = found.face};
            layout::append(run.text, code);
            INFO(run.text);
            p.text.push_back(run);
            const auto picture = rendered(pdf_file({p}, "sign.pdf"), 72);
            const auto box = layout::ink_of(run, metrics);
            CHECK(greys_in(picture, box, 1).first < 100);
            for (int y = 0; y < picture.height; ++y)
                for (int x = 0; x < picture.width; ++x) {
                    const bool inside = x >= box.left - 1 && x <= box.right + 1 &&
                                        y >= box.top - 1 && y <= box.bottom + 1;
                    if (!inside && picture.at(x, y) != 255) FAIL("ink at " << x << ", " << y);
                }
        }
}

TEST_CASE("the widths of the base fonts are those that readers draw", "[pdf][base-fonts]") {
    // Adobe's metrics of Helvetica, as the free fonts that poppler draws with have them too.
    page p{.width = 600, .height = 100};
    p.text.push_back({.x = 20, .y = 60, .size = 20, .face = 0, .text = "Crème brûlée, 250 g"});
    const auto file = pdf_file({p}, "base-width.pdf");
    const auto boxes = run("pdftotext -bbox '" + file + "' -").text;
    const auto at = boxes.rfind("xMax=\"");
    REQUIRE(at != std::string::npos);
    double advance = 0;
    for (const auto code : layout::characters_of(p.text[0].text))
        advance += base_fonts().metrics.faces[0].find(code)->advance;
    CHECK(std::stod(boxes.substr(at + 6)) == Approx(20 + advance * 20 / 1000).margin(0.01));
}

TEST_CASE("a letter that Helvetica lacks is named", "[pdf][base-fonts]") {
    auto card = samples::short_card();
    card.title = "Крем";
    const auto made = pdf::paint(pages_of(card, "station", "a5"), base_fonts(), {.title = "x"});
    CHECK_FALSE(made);
    CHECK(made.missing == std::vector<char32_t>{U'К', U'р', U'е', U'м'});
}
