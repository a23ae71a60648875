#include "fonts_for_tests.hpp"
#include "readers.hpp"
#include "sample_cards.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/pdf/paint.hpp"
#include "words_of.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <map>
#include <sstream>

using namespace benchcard;
using layout::page;
using layout::text_run;

namespace {

std::vector<page> sample_pages(const styles::card& card, const char* paper) {
    return layout::lay_out(card, *styles::built_in_style("station"), *styles::paper_named(paper),
                           real_fonts().metrics);
}

pdf::painted painted(const std::vector<page>& pages) {
    return pdf::paint(pages, real_fonts(), {.title = "Crème caramel ½ 🍰", .language = "en"});
}

std::string checked_file(const std::vector<page>& pages, const std::string& name) {
    const auto result = painted(pages);
    for (const auto& m : result.messages) UNSCOPED_INFO(m.message);
    REQUIRE(result);
    return file_with(result.bytes, name);
}

page page_with(text_run run) {
    page p{.width = 400, .height = 400};
    p.text.push_back(std::move(run));
    return p;
}

word_list set_words(const std::vector<page>& pages) {
    word_list all;
    for (const auto& p : pages)
        for (auto& w : page_words(p, real_fonts().metrics)) all.push_back(std::move(w));
    return sorted(without_percent_signs(all));
}

/// How often each character but blanks, commas and dots stands in a text.
std::map<char32_t, int> letters_of(const std::string& text) {
    std::map<char32_t, int> out;
    for (const auto c : layout::characters_of(text))
        if (c > 0x20 && c != 0xA0 && c != ',' && c != U'·' && c != '%') ++out[c];
    return out;
}

} // namespace

TEST_CASE("the same card gives the same bytes", "[pdf]") {
    const auto first = painted(sample_pages(samples::long_card(), "a5"));
    const auto second = painted(sample_pages(samples::long_card(), "a5"));
    REQUIRE(first);
    CHECK(first.bytes == second.bytes);
    CHECK(first.bytes.find("CreationDate") == std::string::npos);
    CHECK(first.bytes.find("/ID") == std::string::npos);
}

TEST_CASE("a date is the one that is given, and so is how sheets are turned", "[pdf]") {
    // 1700000000 s after 1970 is 2023-11-14 22:13:20 in UTC (date -u -d @1700000000).
    pdf::document_info info{.title = "Dated", .date = 1'700'000'000};
    info.duplex = layout::flip::short_edge;
    const auto made = pdf::paint(sample_pages(samples::short_card(), "a5"), real_fonts(), info);
    REQUIRE(made);
    const auto file = file_with(made.bytes, "dated.pdf");
    const auto said = run("TZ=UTC pdfinfo -isodates '" + file + "'").text;
    INFO(said);
    CHECK(said.find("CreationDate:    2023-11-14T22:13:20Z") != std::string::npos);
    const auto root = run("mutool show '" + file + "' trailer/Root/ViewerPreferences").text;
    CHECK(root.find("/Duplex /DuplexFlipShortEdge") != std::string::npos);
    CHECK(run("qpdf --check '" + file + "'").status == 0);
}

TEST_CASE("a checker finds nothing wrong with the file", "[pdf]") {
    for (const auto* paper : {"a4", "a5", "3x5"}) {
        const auto file = checked_file(sample_pages(samples::long_card(), paper),
                                       std::string("long-") + paper + ".pdf");
        const auto checked = run("qpdf --check '" + file + "' 2>&1");
        INFO(checked.text);
        CHECK(checked.status == 0);
        CHECK(checked.text.find("WARNING") == std::string::npos);
    }
}

TEST_CASE("the words can be found and copied by three readers", "[pdf]") {
    auto card = samples::long_card();
    card.notes.push_back({samples::plain("Κρέμα, крем, œuf, ⅔ and ☐ or ✓ ≥ 5 °C → chill")});
    for (const auto* paper : {"a4", "a6"}) {
        const auto pages = sample_pages(card, paper);
        const auto file = checked_file(pages, std::string("words-") + paper + ".pdf");
        const auto expected = set_words(pages);
        const auto by_poppler = read_words("pdftotext '" + file + "' - 2>/dev/null");
        const auto by_mupdf = read_words("mutool draw -q -F txt '" + file + "' 2>/dev/null");
        CHECK(unlike(by_poppler, expected) == word_list{});
        CHECK(unlike(by_mupdf, expected) == word_list{});
        // Ghostscript gives words that stand closely side by side as one: letter by letter it is.
        const auto by_gs =
            run("gs -q -dNOPAUSE -dBATCH -sDEVICE=txtwrite -o - '" + file + "'").text;
        CHECK(letters_of(by_gs) == letters_of(joined(expected)));
        const auto warned = run("pdftotext '" + file + "' - 2>&1 >/dev/null");
        CHECK(warned.text.empty());
    }
}

TEST_CASE("there is ink where there is text, and none outside the safe area", "[pdf]") {
    constexpr int dots = 50;
    constexpr double scale = dots / 72.0;
    auto card = samples::short_card();
    card.notes.push_back({samples::plain("☐ ✓ ₂ Ж Ω")});
    const auto pages = sample_pages(card, "a5");
    REQUIRE(pages.size() == 1);
    const auto picture = rendered(checked_file(pages, "ink.pdf"), dots);
    for (const auto& run : pages[0].text) {
        INFO(run.text);
        if (run.text == " ") continue; // between words of two weights
        const auto [dark, light] =
            greys_in(picture, layout::ink_of(run, real_fonts().metrics), scale);
        CHECK(dark < 160);
        CHECK(light > 160); // letters, and not a black bar
    }
    const double safe = styles::least_margin * styles::points_per_mm * scale;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x) {
            const bool inside = x > safe - 1 && x < picture.width - safe && y > safe - 1 &&
                                y < picture.height - safe;
            if (!inside && picture.at(x, y) != 255) FAIL("ink at " << x << ", " << y);
        }
}

TEST_CASE("the file says what it is", "[pdf]") {
    auto pages = sample_pages(samples::long_card(), "a5");
    for (auto& p : sample_pages(samples::short_card(), "a5")) pages.push_back(p);
    const auto file = checked_file(pages, "info.pdf");
    const auto info = run("pdfinfo -box '" + file + "'").text;
    CHECK(info.find("Title:           Crème caramel ½ 🍰\n") != std::string::npos);
    CHECK(info.find("Producer:        benchcard\n") != std::string::npos);
    CHECK(info.find("Date") == std::string::npos);
    // A5 is 419.53 by 595.28 points.
    CHECK(info.find("CropBox:             0.00     0.00   419.53   595.28") != std::string::npos);
    CHECK(info.find("TrimBox:             0.00     0.00   419.53   595.28") != std::string::npos);
    const auto outline = run("mutool show '" + file + "' outline").text;
    CHECK(outline.find("Seeded rye and wheat tin loaf") != std::string::npos);
    CHECK(outline.find("Almond cream") != std::string::npos);
    CHECK(std::ranges::count(outline, '\n') == 2);
    const auto root = run("mutool show '" + file + "' trailer/Root").text;
    CHECK(root.find("/Lang (en)") != std::string::npos);
    const auto labels = run("mutool show '" + file + "' trailer/Root/PageLabels/Nums").text;
    for (const auto* label : {"/P (1a)", "/P (1b)", "/P (2)"}) {
        INFO(labels);
        CHECK(labels.find(label) != std::string::npos);
    }
    CHECK(labels.find("/S") == std::string::npos);
}

TEST_CASE("what is drawn and what is embedded is compressed, and once", "[pdf]") {
    const auto file = checked_file(sample_pages(samples::long_card(), "a5"), "compressed.pdf");
    std::istringstream objects(run("mutool show '" + file + "' grep").text); // one on a line
    int streams = 0;
    for (std::string object; std::getline(objects, object);) {
        if (object.find("/Length ") == std::string::npos) continue;
        INFO(object);
        ++streams;
        CHECK(object.find("/Filter[/FlateDecode]") != std::string::npos);
    }
    CHECK(streams >= 2 + 2 * 3); // pages; of two fonts the file, the codes and the characters
    CHECK(run("grep -a -c ^/Filter '" + file + "'").text == std::to_string(streams) + "\n");
    const auto page = run("mutool show '" + file + "' pages/1/Resources").text;
    CHECK(page.find("/Font") != std::string::npos);
    CHECK(page.find("ProcSet") == std::string::npos);
}

TEST_CASE("more pages are named than one array of the library holds", "[pdf]") {
    std::vector<page> pages(16'500, page{.width = 72, .height = 72});
    for (std::size_t i = 0; i < pages.size(); ++i) pages[i].label = std::to_string(i + 1) + "a";
    const auto file = checked_file(pages, "labels.pdf");
    const auto node = [&](const std::string& of) {
        return run("mutool show '" + file + "' trailer/Root/PageLabels/Kids/" + of).text;
    };
    CHECK(node("1/Limits").find("[ 0 9999 ]") != std::string::npos);
    CHECK(node("2/Limits").find("[ 10000 16499 ]") != std::string::npos);
    CHECK(node("1/Nums").find("/P (10000a)") != std::string::npos);
    CHECK(node("2/Nums").find("/P (16500a)") != std::string::npos);
}

TEST_CASE("a character that no font has is named, and nothing is printed", "[pdf]") {
    auto card = samples::short_card();
    card.notes.push_back({samples::plain("a cake 🍰 and another 🍰")});
    const auto emoji = painted(sample_pages(card, "a5"));
    CHECK_FALSE(emoji);
    REQUIRE(emoji.messages.size() == 1);
    CHECK(emoji.messages[0].kind == "missing-character");
    // The name is that of the Unicode Character Database.
    CHECK(emoji.messages[0].message ==
          "no font has the character 🍰 (shortcake, U+1F370), in “a cake 🍰 and another 🍰”");
    CHECK(emoji.missing == std::vector<char32_t>{0x1F370});

    // Written from right to left: in a line of type set from the left it would be wrong.
    card = samples::short_card();
    card.title = "חלה";
    const auto hebrew = painted(sample_pages(card, "a5"));
    CHECK_FALSE(hebrew);
    CHECK(hebrew.messages.size() == 3);
}

TEST_CASE("a word of 70,000 letters is printed whole", "[pdf]") {
    const std::string endless(70'000, 'x');
    const auto one_run = checked_file(
        {page_with({.x = 10, .y = 100, .size = 0.005, .text = endless})}, "endless.pdf");
    CHECK(run("qpdf --check '" + one_run + "'").status == 0);
    const auto text = run("mutool draw -q -F txt '" + one_run + "' 2>/dev/null").text;
    CHECK(std::ranges::count(text, 'x') == 70'000);

    auto card = samples::short_card();
    card.notes = {{samples::plain(endless)}};
    const auto pages = sample_pages(card, "a4");
    std::ptrdiff_t letters = 0;
    for (const auto& p : pages)
        for (const auto& r : p.text)
            if (r.text.starts_with("xxx")) letters += std::ranges::count(r.text, 'x');
    CHECK(letters == 70'000);
    CHECK(painted(pages));
}

TEST_CASE("a place that is no number is refused", "[pdf]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    for (const double wrong : {nan, infinite, -infinite, 1e9}) {
        const auto text = painted({page_with({.x = wrong, .y = 100, .size = 10, .text = "a"})});
        CHECK_FALSE(text);
        REQUIRE(text.messages.size() == 1);
        CHECK(text.messages[0].kind == "pdf-failed");
        page with_line{.width = 400, .height = 400};
        with_line.shapes.push_back(layout::line{0, 0, 10, wrong, 1});
        CHECK_FALSE(painted({with_line}));
        page with_polygon{.width = 400, .height = 400};
        with_polygon.shapes.push_back(layout::polygon{{{0, 0}, {wrong, 1}, {1, 2}}, 0});
        CHECK_FALSE(painted({with_polygon}));
        CHECK_FALSE(painted({page{.width = wrong, .height = 400}}));
    }
    CHECK_FALSE(painted({page_with({.x = 10, .y = 100, .size = nan, .text = "a"})}));
    CHECK_FALSE(painted({page_with({.x = 10, .y = 100, .size = 601, .text = "a"})}));
}

TEST_CASE("no pages make no file", "[pdf]") {
    const auto none = painted({});
    CHECK_FALSE(none);
    REQUIRE(none.messages.size() == 1);
    CHECK(none.messages[0].kind == "nothing-to-print");
}

TEST_CASE("what is no TrueType font is refused before the PDF library sees it", "[pdf][fonts]") {
    CHECK_FALSE(pdf::measures_of({""}));
    CHECK_FALSE(pdf::measures_of({"this is not a font"}));
    CHECK_FALSE(pdf::measures_of({std::string("\0\1\0\0", 4) + std::string(3000, '\0')}));
    const auto& font = std::get<pdf::font_program>(real_fonts().faces[0]).bytes;
    REQUIRE(pdf::measures_of({font}));
    for (const auto size : {std::size_t(8), std::size_t(3000), font.size() / 2, font.size() - 64}) {
        INFO(size << " of " << font.size() << " bytes");
        CHECK_FALSE(pdf::measures_of({font.substr(0, size)}));
    }
    CHECK(real_fonts().metrics.look_up(U'⅔', layout::weight::bold).known);
    CHECK(real_fonts().metrics.look_up(U'✓', layout::weight::regular).known);
}

TEST_CASE("without the text font the message names the package", "[pdf][fonts]") {
    // Another process, for fontconfig reads its configuration once: one that knows no folder.
    const auto empty = file_with("<?xml version=\"1.0\"?><fontconfig></fontconfig>", "none.conf");
    const auto out =
        run("FONTCONFIG_FILE='" + empty +
            "' '" BENCHCARD_BINARY_DIR "/tests/styles_tests' '[.only-without-fonts]' 2>&1");
    INFO(out.text);
    CHECK(out.status == 0);
}

TEST_CASE("no font is found where none is installed", "[.only-without-fonts]") {
    grammar::diagnostics messages;
    const auto fonts = pdf::load_fonts(messages);
    CHECK(fonts.faces.size() == pdf::fonts_of_readers().faces.size());
    REQUIRE(messages.size() == 1);
    CHECK(messages[0].kind == "missing-font");
    CHECK(messages[0].helps[0].text.find("fonts-noto-core") != std::string::npos);
}
