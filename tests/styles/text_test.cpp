#include "fonts_for_tests.hpp"
#include "styles/layout/text.hpp"

#include <catch2/catch.hpp>

using namespace benchcard;
using layout::weight;

namespace {

layout::ready_text ready(const std::vector<layout::words>& text) {
    return layout::made_ready(text, plain_metrics(), "en");
}

std::vector<layout::text_run> runs_of(const layout::type_line& line) {
    std::vector<layout::text_run> runs;
    layout::add_runs(line, 0, 0, runs);
    return runs;
}

/// The lines of a text at 10 pt, with a bar between each two.
std::string lines_of(const std::vector<layout::words>& text, double width) {
    std::string out;
    const auto set = ready(text);
    for (const auto& l : layout::broken(set, {10, 10}, width)) {
        if (!out.empty()) out += " | ";
        for (const auto& run : runs_of(l)) out += run.text;
        CHECK((l.width <= width + 1e-6 || l.to - l.from <= 4));
    }
    return out;
}
std::string lines_of(const std::string& text, double width) {
    return lines_of(std::vector<layout::words>{{.text = text}}, width);
}

} // namespace

TEST_CASE("a line takes as many words as go", "[text]") {
    // In these measures a small letter is 5.6 pt wide at 10 pt, and a blank 2.7 pt.
    CHECK(lines_of("aaa bbb ccc", 100) == "aaa bbb ccc");
    CHECK(lines_of("aaa bbb ccc", 16.8 + 2.7 + 16.8) == "aaa bbb | ccc");
    CHECK(lines_of("aaa bbb ccc", 16.8 + 2.7 + 16.7) == "aaa | bbb | ccc");
    CHECK(lines_of("  aaa \t\n bbb  ", 100) == "aaa bbb");
    CHECK(lines_of("", 100).empty());
    CHECK(lines_of("   ", 100).empty());
}

TEST_CASE("widths are whole thousandths, summed and multiplied once", "[text]") {
    CHECK(layout::natural_width(ready({{.text = "aaa"}}), {10, 10}) == 3 * 560 * 10 / 1000.0);
    CHECK(layout::natural_width(
              ready({{.text = "aa", .in = weight::bold}, {.text = "b", .minor = true}}),
              {20, 10}) == Approx(2 * 600 * 0.02 + 560 * 0.01));
    CHECK(layout::widest_piece(ready({{.text = "aaa bb 400 g"}}), {10, 10}) ==
          Approx(4 * 5.6 + 2.7));
}

TEST_CASE("a number and its unit stay on one line", "[text]") {
    CHECK(lines_of("add 400 g now", 33) == "add | 400 g | now");
    CHECK(lines_of("bake 3 min, then", 42) == "bake | 3 min, | then");
    CHECK(lines_of("oven 160 °C", 48) == "oven | 160 °C");
    CHECK(lines_of("take 1½ cups of it", 40) == "take | 1½ cups | of it");
    CHECK(lines_of("bake 35–40 min", 62) == "bake | 35–40 min");
    CHECK(lines_of("mix 2 × 400 g", 50) == "mix | 2 × 400 g");
    CHECK(lines_of("pour 9 fl oz in", 40) == "pour | 9 fl oz | in");
    // The same where the words change weight between them.
    CHECK(lines_of({{.text = "add the "}, {.text = "400", .in = weight::bold}, {.text = " g"}},
                   40) == "add the | 400 g");
    // A long word after a number is no unit.
    CHECK(lines_of("12 pieces", 40) == "12 | pieces");
}

TEST_CASE("what fits on no line is broken all the same", "[text]") {
    CHECK(lines_of("abcdefgh", 5.6 * 3) == "abc | def | gh");
    CHECK(lines_of("400 g", 5.6 * 3) == "400 | g");
    CHECK(lines_of("a", 0.5) == "a");
    const std::string endless(70'000, 'a');
    const auto endless_text = ready({{.text = endless}});
    CHECK(layout::broken(endless_text, {10, 10}, 560).size() == 700);
    // An accent stays with the letter it stands on: x̂ is not one character in any form.
    CHECK(lines_of("xx\u0302", 5.6) == "x | x\u0302");
}

TEST_CASE("a last line of hardly a word is filled from the lines before it", "[text]") {
    const auto text = ready({{.text = "aaaa bbbb cccc dddd eeee f"}});
    const double width = 5 * 22.4 + 4 * 2.7;
    CHECK(layout::broken(text, {10, 10}, width).back().width == Approx(5.6));
    const auto even = layout::evenly_broken(text, {10, 10}, width);
    CHECK(even.size() == 2);
    CHECK(even.back().width > 20);
}

TEST_CASE("text is composed, and characters without ink are left out", "[text]") {
    CHECK(lines_of("cre\u0300me", 100) == "crème");
    CHECK(lines_of("a\u00ADb\u200Bc\uFEFF", 100) == "abc");
    CHECK(lines_of(std::string("a\0b\x01", 4), 100) == "ab");
    CHECK(lines_of("a\xFF"
                   "b",
                   100) == "a\uFFFDb");
}

TEST_CASE("a character that the first font lacks comes from the next", "[text]") {
    layout::font_metrics two = plain_metrics();
    two.faces.push_back({{{0x2610, 700, 0, 700, 0, 700}}});
    two.chains[0] = {0, 2};
    const auto text = layout::made_ready({{.text = "a\u2610b"}}, two, "en");
    const auto lines = layout::broken(text, {10, 10}, 100);
    const auto runs = runs_of(lines.front());
    REQUIRE(runs.size() == 3);
    CHECK(runs[1].face == 2);
    CHECK(runs[2].x == Approx(5.6 + 7));
    CHECK_FALSE(two.look_up(0x1F370, weight::regular).known);
}
