#include "grammar/style_rules.hpp"
#include "styles/style.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <tao/pegtl/contrib/analyze.hpp>

using namespace benchcard;
using styles::block;
using styles::column;

namespace {

struct read_file {
    styles::style made;
    grammar::source text;
    grammar::diagnostics messages;
};

read_file read(std::string text) {
    read_file r{{}, grammar::source(7, "my.style", std::move(text)), {}};
    r.made = styles::read_style(r.text, r.messages);
    return r;
}

/// The first message as one line: kind, what it points at, sentence, help.
std::string message_of(const read_file& r) {
    if (r.messages.empty()) return "none";
    const auto& m = r.messages.front();
    auto out = std::string(m.kind) + " [" + std::string(r.text.text_of(m.where)) + "] " + m.message;
    for (const auto& h : m.helps) out += " | " + h.text;
    return out;
}

} // namespace

TEST_CASE("papers have their published sizes", "[paper]") {
    // ISO 216, in millimetres; the American ones are inches of 25.4 mm.
    CHECK(*styles::paper_named("a4") == styles::paper{"a4", 210, 297});
    CHECK(*styles::paper_named("A5") == styles::paper{"a5", 148, 210});
    CHECK(*styles::paper_named("a6") == styles::paper{"a6", 105, 148});
    CHECK(styles::paper_named("Letter")->width == Approx(8.5 * 25.4));
    CHECK(styles::paper_named("letter")->height == Approx(11 * 25.4));
    CHECK(styles::paper_named("Half-Letter")->width == Approx(5.5 * 25.4));
    CHECK(styles::paper_named("half-letter")->height == Approx(8.5 * 25.4));
    for (const auto& [name, width, height] :
         {std::tuple{"5x8", 5, 8}, std::tuple{"4x6", 4, 6}, std::tuple{"3x5", 3, 5}}) {
        CHECK(styles::paper_named(name)->width == Approx(width * 25.4));
        CHECK(styles::paper_named(name)->height == Approx(height * 25.4));
    }
    CHECK(*styles::paper_named("A5 Landscape") == styles::paper{"a5", 210, 148});
    CHECK(styles::paper_named("4x6  landscape")->width == Approx(6 * 25.4));
    CHECK(*styles::paper_named("a5 portrait") == *styles::paper_named("a5"));
    CHECK_FALSE(styles::paper_named("a5 sideways"));
    CHECK_FALSE(styles::paper_named("landscape"));
    CHECK_FALSE(styles::paper_named("a5 "));
    CHECK(*styles::paper_named("A7") == styles::paper{"a7", 74, 105});
    CHECK_FALSE(styles::paper_named("a9"));
    CHECK_FALSE(styles::paper_named(""));
    CHECK_FALSE(styles::paper_named("a55"));
}

TEST_CASE("the rules of a style file have no endless loop", "[style]") {
    CHECK(tao::pegtl::analyze<grammar::style_rules::line>(-1) == 0);
    CHECK(tao::pegtl::analyze<grammar::style_rules::list>(-1) == 0);
    CHECK(tao::pegtl::analyze<grammar::style_rules::type_sizes>(-1) == 0);
    CHECK(tao::pegtl::analyze<grammar::style_rules::side_and_length>(-1) == 0);
    CHECK(tao::pegtl::analyze<grammar::style_rules::number_a_sheet>(-1) == 0);
    CHECK(tao::pegtl::analyze<grammar::style_rules::colour>(-1) == 0);
}

TEST_CASE("every built-in style reads without a message", "[style]") {
    REQUIRE(styles::built_in_style_names() ==
            std::vector<std::string>{"chart", "hand", "label", "office", "sheet", "station"});
    for (const auto& name : styles::built_in_style_names()) {
        INFO(name);
        std::ifstream in(BENCHCARD_SOURCE_DIR "/styles/" + name + ".style");
        REQUIRE(in);
        const auto r = read({std::istreambuf_iterator<char>(in), {}});
        CHECK(message_of(r) == "none");
        CHECK(styles::built_in_style(name) == r.made);
    }
    CHECK_FALSE(styles::built_in_style("nowhere"));
    const auto station = *styles::built_in_style("station");
    CHECK(station.amounts.least == 14);
    CHECK(station.text.least == 11);
    CHECK(station.small_print.least == 11);
    for (const auto* small : {"hand", "sheet", "office"}) {
        const auto look = *styles::built_in_style(small);
        for (const auto& type : {look.title, look.amounts, look.names, look.text, look.small_print})
            CHECK(type.least >= 9);
    }
}

TEST_CASE("a style file says how cards look", "[style]") {
    const auto r = read("# mine\n"
                        "paper: Letter # big\n"
                        "margin:12.5 mm\n"
                        "amounts: 16 to 40 pt\r\n"
                        "small print: 11–12.5 pt\n"
                        "x-height: 1.2 mm\n"
                        "\n"
                        "columns: amount,name , tick\n"
                        "top: method\n"
                        "bottom: weigh-out, totals, oven, allergens, cautions, notes, keeping\n"
                        "word continues: weiter auf #1\n"
                        "word fan:\n");
    REQUIRE(message_of(r) == "none");
    CHECK(r.made.sheet.name == "letter");
    CHECK(r.made.margin == 12.5);
    CHECK(r.made.amounts == styles::type_range{16, 40});
    CHECK(r.made.small_print == styles::type_range{11, 12.5});
    CHECK(r.made.x_height == 1.2);
    CHECK(r.made.columns == std::vector{column::amount, column::name, column::tick});
    CHECK(r.made.top == std::vector{block::table, block::method});
    CHECK(r.made.bottom.front() == block::weigh_out);
    CHECK(r.made.words.continues == "weiter auf");
    CHECK(r.made.words.fan.empty());
    CHECK(r.made.words.gas == "gas");
}

TEST_CASE("a style file says what a sheet is and how it is cut", "[style]") {
    const auto r = read("prints: recipes\n"
                        "paper: letter landscape\n"
                        "cut to: 4x6\n"
                        "hole: left 20 mm\n"
                        "corners: 12 mm\n"
                        "distance: 600 mm\n"
                        "accent: 20 60 140\n"
                        "accent Dough bench: 110 30 60\n");
    REQUIRE(message_of(r) == "none");
    CHECK(r.made.prints == styles::printed::recipe);
    CHECK(r.made.sheet == styles::paper{"letter", 279.4, 215.9});
    CHECK(r.made.cut->to == styles::paper_named("4x6"));
    CHECK(r.made.hole == styles::hole{styles::edge::left, 20});
    CHECK(r.made.distance == 600);
    CHECK(styles::accent_for(r.made, "dough BENCH") == styles::colour{110, 30, 60});
    CHECK(styles::accent_for(r.made, "mixing") == styles::colour{20, 60, 140});
    CHECK(styles::clear_at(r.made, styles::edge::left) == 20);
    CHECK(read("cut to: 8 a sheet\n").made.cut == styles::cutting{std::nullopt, 8});
}

TEST_CASE("rounded corners stay clear of ink", "[style]") {
    // The corner of what is printed, from the arc to which the corner of the card is cut.
    for (const double radius : {0.0, 4.0, 8.0, 12.0, 20.0}) {
        styles::style look;
        look.margin = 6;
        look.corners = radius;
        const double clear = styles::clear_at(look, styles::edge::top);
        const double to_middle = std::hypot(radius - clear, radius - clear);
        INFO(radius);
        CHECK(clear >= 6);
        if (clear < radius) CHECK(radius - to_middle >= 6 - 1e-9);
    }
}

TEST_CASE("what a style file gets wrong is said in words", "[style]") {
    const auto said = [](const char* text) { return message_of(read(text)); };
    CHECK(said("paper a5\n") == "style-line [paper a5] this line is neither a setting nor a "
                                "comment | write it as in: paper: a5; a comment begins with #");
    CHECK(said("paper: a5\nmargn: 8 mm\n") ==
          "style-setting [margn] a style has no setting “margn” | did you mean “margin”?");
    CHECK(said("paper: a9\n")
              .starts_with(
                  "style-word [a9] “a9” is not a paper that benchcard knows | did you mean “a"));
    CHECK(said("paper: foolscap\n") ==
          "style-word [foolscap] “foolscap” is not a paper that benchcard knows | write one of: "
          "a4, a5, a6, a7, letter, half-letter, 5x8, 4x6, 3x5");
    CHECK(said("margin: 5.9 mm\n") ==
          "style-margin [5.9 mm] a margin of 5.9 mm is too narrow to laminate | set it between 6 "
          "mm and 25 mm");
    CHECK(
        said("margin: 26 mm\n").starts_with("style-margin [26 mm] a margin of 26 mm is too wide"));
    CHECK(said("margin: 8\n") ==
          "style-value [8] found “8” where a width in millimetres should stand | write it as in: "
          "8 mm");
    CHECK(said("text: 11 pt\n") ==
          "style-value [11 pt] found “11 pt” where the smallest and the largest type should stand "
          "| write them as in: 14-30 pt");
    CHECK(said("text: 20-11 pt\n") ==
          "style-type [20-11 pt] the smallest type, 20 pt, is larger than the largest, 11 pt");
    CHECK(said("text: 1-11 pt\n").starts_with("style-type [1-11 pt]"));
    CHECK(said("x-height: 12 mm\n") ==
          "style-length [12 mm] an x-height of 12 mm is too large | set "
          "it between 0.5 mm and 10 mm");
    const std::string endless = "text: 11-" + std::string(400, '9') + " pt\n";
    CHECK(said(endless.c_str()).starts_with("style-type ["));
    CHECK(said("prints: card\n") ==
          "style-word [card] “card” is nothing that is printed | did you mean “cards”?");
    CHECK(said("cut to: 3 a sheet\n") ==
          "style-value [3 a sheet] a sheet is not cut into 3 equal cards | write 2, 4 or 8 a "
          "sheet, or a size: a6");
    CHECK(said("cut to: a9\n").starts_with("style-word [a9]"));
    CHECK(said("hole: middle 12 mm\n").starts_with("style-value [middle 12 mm]"));
    CHECK(said("hole: top 5 mm\n") ==
          "style-length [top 5 mm] 5 mm clear for a hole are too few | set it between 6 mm and 30 "
          "mm");
    CHECK(said("distance: 20 m\n").starts_with("style-value [20 m] found “20 m” where a length"));
    CHECK(said("distance: 2000 mm\n") ==
          "style-length [2000 mm] a distance of 2000 mm is too large | set it between 200 mm and "
          "1500 mm");
    CHECK(said("accent: 256 0 0\n").starts_with("style-value [256 0 0]"));
    CHECK(said("accent: red\n").starts_with("style-value [red]"));
    CHECK(said("accent bench: 250 250 250\n").starts_with("style-contrast [250 250 250]"));
    CHECK(said("columns: tick, nmae\n") ==
          "style-word [nmae] “nmae” is not a column of a card | did you mean “name”?");
    CHECK(said("columns: tick, tick\n") == "style-repeated [tick] “tick” stands here twice");
    CHECK(said("columns: tick name\n").starts_with("style-value [tick name]"));
    CHECK(said("top: method\ntop: method\n") == "style-repeated [top] “top” was set before");
    CHECK(said("top: method, oven, weigh-out, totals\n") ==
          "style-repeated [] “oven” stands both under top and under bottom");
    CHECK(said("top: method, totals\n") ==
          "style-part-missing [] “weigh-out” stands neither under top nor under bottom, and a "
          "card may not lose a part");
}

TEST_CASE("a wrong line keeps the usual value, and every wrong line is told", "[style]") {
    const auto r = read("paper: nowhere\nmargin: 9 mm\ntext: big\n???\n");
    CHECK(r.messages.size() == 3);
    CHECK(r.made.sheet.name == "a5");
    CHECK(r.made.margin == 9);
    CHECK(r.made.text == styles::style{}.text);
    CHECK(r.messages[1].where.file == 7);
    CHECK(r.text.at(r.messages[1].where.begin) == grammar::position{3, 7});
}
