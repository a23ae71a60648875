#include "grammar/source.hpp"

#include <catch2/catch.hpp>

using namespace benchcard::grammar;

TEST_CASE("a byte order mark is no part of the text") {
    const source s(0, "a.recipe",
                   "\xEF\xBB\xBF"
                   "recipe: A\n");
    CHECK(s.text() == "recipe: A\n");
    CHECK(s.at(0) == position{1, 1});
}

TEST_CASE("places count characters, not bytes") {
    const source s(0, "a.recipe", "é½x\n𝕏y\n");
    CHECK(s.at(4) == position{1, 3});
    CHECK(s.at(6) == position{2, 1});
    CHECK(s.at(10) == position{2, 2});
    CHECK(s.at(999) == position{3, 1});
}

TEST_CASE("a Windows line end is no part of the line") {
    const source s(0, "a.recipe", "one\r\ntwo\r\n");
    CHECK(s.line_count() == 3);
    CHECK(s.line(1) == "one");
    CHECK(s.line(2) == "two");
    CHECK(s.line(3).empty());
    CHECK(s.line(4).empty());
}

TEST_CASE("the first byte that is not UTF-8 is found") {
    CHECK(first_not_utf8("crème") == std::string_view::npos);
    CHECK(first_not_utf8("cr\xE8me") == 2);
    CHECK(first_not_utf8("\xC0\xAF") == 0);       // overlong
    CHECK(first_not_utf8("ab\xED\xA0\x80") == 2); // a surrogate
    CHECK(first_not_utf8("ab\xF0\x9F\x8D") == 2); // cut short
}
