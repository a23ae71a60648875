#include "styles/pdf/character_name.hpp"

#include <catch2/catch.hpp>

using benchcard::pdf::named_character;

TEST_CASE("a character is named as Unicode names it", "[pdf]") {
    // The Unicode Standard 15.0, code charts.
    CHECK(named_character(U'é') == "é (latin small letter e with acute, U+00E9)");
    CHECK(named_character(U'🍰') == "🍰 (shortcake, U+1F370)");
    CHECK(named_character(U'\u0301') == "\u0301 (combining acute accent, U+0301)");
    CHECK(named_character(U' ') == "  (space, U+0020)");
    CHECK(named_character(U'!') == "! (exclamation mark, U+0021)");
    CHECK(named_character(U'\U000E01EF') == "\U000E01EF (variation selector-256, U+E01EF)");
    // Named by their number alone (The Unicode Standard, 4.8), not yet assigned, and a control.
    CHECK(named_character(U'麺') == "麺 (U+9EBA)");
    CHECK(named_character(U'\u0378') == "\u0378 (U+0378)");
    CHECK(named_character(U'\u0007') == "\u0007 (U+0007)");
}
