#include "compiler/measures/duration.hpp"

#include <catch2/catch.hpp>

namespace benchcard::measures {
using grammar::amount;
using grammar::length_unit;

namespace {

std::string time_of(const exact& minutes) { return shown_duration(minutes, minutes); }
std::string hours(int low, int high) { return shown_duration(low * 60, high * 60); }

amount side(const exact& low, const exact& high) {
    amount a{};
    a.low = low;
    a.high = high;
    return a;
}
std::string length(const exact& figure, length_unit in) {
    return shown_length({side(figure, figure)}, in);
}
std::string tin(const exact& a, const exact& b, length_unit in) {
    return shown_length({side(a, a), side(b, b)}, in);
}

} // namespace

TEST_CASE("a time has every unit it needs") {
    CHECK(time_of(exact(1, 2)) == "30 s");
    CHECK(time_of(exact(3, 2)) == "1 min 30 s");
    CHECK(time_of(20) == "20 min");
    CHECK(time_of(60) == "1 h");
    CHECK(time_of(80) == "1 h 20 min");
    CHECK(time_of(90) == "1 h 30 min");
    CHECK(time_of(24 * 60) == "24 h");
    CHECK(time_of(36 * 60) == "36 h");
    CHECK(time_of(48 * 60) == "2 days");
    CHECK(time_of(60 * 60) == "2 days 12 h");
    CHECK(time_of(exact(1, 1000)) == "1 s");
    CHECK(time_of(exact(1, 3)) == "20 s");
}

TEST_CASE("a range of times is in one unit where both ends have it whole") {
    CHECK(shown_duration(35, 40) == "35–40 min");
    CHECK(hours(1, 2) == "1–2 h");
    CHECK(shown_duration(45, 75) == "45–75 min");
    CHECK(shown_duration(exact(1, 2), exact(3, 4)) == "30–45 s");
    CHECK(shown_duration(1, exact(3, 2)) == "60–90 s");
    CHECK(hours(24, 48) == "1–2 days");
    CHECK(hours(12, 24) == "12–24 h");
    CHECK(hours(12, 48) == "12–48 h");
    CHECK(shown_duration(120, 150) == "2 h – 2 h 30 min");
    CHECK(shown_duration(exact(1, 2), 3) == "30 s – 3 min");
}

TEST_CASE("a length in metric has its inches") {
    CHECK(length(23, length_unit::centimetre) == "23 cm (9 in)");
    CHECK(length(3, length_unit::millimetre) == "3 mm (⅛ in)");
    CHECK(tin(20, 30, length_unit::centimetre) == "20 × 30 cm (8 × 12 in)");
    CHECK(length(exact(5, 2), length_unit::centimetre) == "2.5 cm (1 in)");
    CHECK(length(24, length_unit::centimetre) == "24 cm (9½ in)");
    CHECK(length(13, length_unit::millimetre) == "13 mm (½ in)");
    CHECK(length(2, length_unit::millimetre) == "2 mm (1/16 in)");
    CHECK(length(5, length_unit::millimetre) == "5 mm (3/16 in)");
    CHECK(length(exact(1, 2), length_unit::millimetre) == "0.5 mm");
    CHECK(shown_length({side(3, 6)}, length_unit::millimetre) == "3–6 mm (⅛–¼ in)");
}

TEST_CASE("a length in inches has its metric") {
    CHECK(length(9, length_unit::inch) == "9 in (23 cm)");
    CHECK(tin(9, 13, length_unit::inch) == "9 × 13 in (23 × 33 cm)");
    CHECK(length(exact(1, 8), length_unit::inch) == "⅛ in (3 mm)");
    CHECK(length(exact(1, 2), length_unit::inch) == "½ in (13 mm)");
    CHECK(length(1, length_unit::inch) == "1 in (2.5 cm)");
    CHECK(length(exact(17, 2), length_unit::inch) == "8½ in (22 cm)");
    CHECK(tin(exact(1, 2), 9, length_unit::inch) == "½ × 9 in (1.3 × 23 cm)");
}

TEST_CASE("about stays with a length") {
    amount a = side(5, 5);
    a.about = true;
    CHECK(shown_length({a}, length_unit::centimetre) == "about 5 cm (2 in)");
    CHECK(shown_length({}, length_unit::centimetre).empty());
}

} // namespace benchcard::measures
