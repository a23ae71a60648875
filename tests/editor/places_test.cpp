#include "compiler/editor/places.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

using namespace benchcard::editor;

TEST_CASE("columns count what the protocol counts", "[editor]") {
    // Language Server Protocol 3.17, Position: in `a𐐀b` the b is at 3, counted in UTF-16.
    const std::string text = "a𐐀b\née\u0301";
    const places utf16(text, encoding::utf16), utf8(text, encoding::utf8);
    CHECK(utf16.at(5) == position{0, 3});
    CHECK(utf8.at(5) == position{0, 5});
    CHECK(utf16.offset_at({0, 3}) == 5);
    CHECK(utf8.offset_at({0, 5}) == 5);
    CHECK(utf16.at(text.size()) == position{1, 3});
    CHECK(utf8.at(text.size()) == position{1, 5});
    CHECK(utf16.offset_at({0, 2}) == 1); // in the middle of a pair: where it begins
}

TEST_CASE("past a line's end is its end, and past the text the text's", "[editor]") {
    const places at("ab\r\nc\rd\n", encoding::utf16);
    CHECK(at.offset_at({0, 99}) == 2);
    CHECK(at.offset_at({1, 99}) == 5);
    CHECK(at.offset_at({2, 0}) == 6);
    CHECK(at.offset_at({3, 0}) == 8);
    CHECK(at.offset_at({99, 0}) == 8);
    CHECK(at.at(3) == position{0, 2});
    CHECK(at.at(99) == position{3, 0});
}

TEST_CASE("a byte order mark that was left out is counted on the first line", "[editor]") {
    const places utf16("ab\nc", encoding::utf16, 3), utf8("ab\nc", encoding::utf8, 3);
    CHECK(utf16.at(1) == position{0, 2});
    CHECK(utf8.at(1) == position{0, 4});
    CHECK(utf16.offset_at({0, 2}) == 1);
    CHECK(utf16.offset_at({0, 0}) == 0);
    CHECK(utf16.at(3) == position{1, 0});
}

TEST_CASE("an edit takes the place of its range, whichever way round", "[editor]") {
    std::string text = "a𐐀b\nc";
    const auto at = [](int line, int character) {
        return json{{"line", line}, {"character", character}};
    };
    change_text(text, {{"range", {{"start", at(0, 1)}, {"end", at(0, 3)}}}, {"text", "é"}},
                encoding::utf16);
    CHECK(text == "aéb\nc");
    change_text(text, {{"range", {{"start", at(1, 0)}, {"end", at(0, 2)}}}, {"text", ""}},
                encoding::utf16);
    CHECK(text == "aéc");
    change_text(text, {{"text", "x"}}, encoding::utf16);
    CHECK(text == "x");
}

TEST_CASE("there and back is the same place, whatever the text", "[editor]") {
    CHECK(rc::check([] {
        std::string text;
        for (const auto& bit : *rc::gen::container<std::vector<std::string>>(
                 rc::gen::elementOf(std::vector<std::string>{"a", "é", "e\u0301", "𝕏", "\n", "\r\n",
                                                             "\r", "🍐", "\xFF", "\xC3", " "})))
            text += bit;
        const auto counted = *rc::gen::element(encoding::utf16, encoding::utf8);
        const places at(text, counted);
        for (std::size_t i = 0; i <= text.size(); ++i) {
            const bool is_inside = i < text.size() && (text[i] & 0xC0) == 0x80;
            if (is_inside) continue; // of a character
            const auto p = at.at(i);
            const auto back = at.offset_at(p);
            RC_ASSERT(at.at(back) == p);
        }
    }));
}
