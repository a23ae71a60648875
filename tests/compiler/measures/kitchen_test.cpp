#include "compiler/measures/kitchen.hpp"
#include "numbers.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

namespace benchcard::measures {
using testing::any_number;
using testing::positive;

namespace {

shown scale(const exact& g) { return on_a_scale({g}); }
exact g_of(const exact& ounces) { return ounces * weight_of(unit::ounce)->value; }

} // namespace

TEST_CASE("a value is rounded half up to a step") {
    CHECK(rounded_to(exact(5, 2), 1) == 3);
    CHECK(rounded_to(exact(-5, 2), 1) == -2);
    CHECK(rounded_to(exact(-26, 10), 1) == -3);
    CHECK(rounded_to(177, 5) == 175);
    CHECK(rounded_to(exact(355, 2), 5) == 180);
    CHECK(whole_part(exact(-7, 2)) == -4);
    CHECK(whole_part(-4) == -4);
    CHECK(whole_part(exact(7, 2)) == 3);
    rc::prop("within half a step, on the step, and again the same", [] {
        const exact value = any_number(10000), step = positive(20);
        const exact rounded = rounded_to(value, step);
        RC_ASSERT(abs(rounded - value) * 2 <= step);
        RC_ASSERT(denominator(exact(rounded / step)) == 1);
        RC_ASSERT(rounded_to(rounded, step) == rounded);
    });
}

TEST_CASE("a scale shows its steps, and finer what they cannot show") {
    const auto at = [](const exact& g, const exact& step) {
        const auto s = on_a_scale({g}, step);
        return s.figure + " " + s.unit;
    };
    CHECK(at(187, 5) == "185 g");
    CHECK(at(exact(1873, 10), exact(1, 10)) == "187.3 g");
    CHECK(at(exact(15, 10), 1) == "1.5 g"); // 2 g would be a third more
    CHECK(at(42, 5) == "42 g");             // 40 g would be 4.8 % less
    CHECK(at(12344, exact(1, 10)) == "12.34 kg");
    CHECK(at(12344, 50) == "12.35 kg");
    CHECK(at(exact(19997, 2), exact(42, 10)) == "10 kg"); // 10 000.2 g in steps
    CHECK(grams_shown(exact(19997, 2), exact(42, 10)) == 10000);
    CHECK(on_a_scale({187}, std::nullopt) == scale(187));
    CHECK(scale_shows(100, 3));
    CHECK_FALSE(scale_shows(exact(1, 2), 1));
    rc::prop("what is printed is what the parts are reckoned from", [] {
        const exact grams = positive(20000), step(*rc::gen::inRange(1, 100), 10);
        const auto s = on_a_scale({grams}, step);
        const exact unit = s.unit == "kg" ? 1000 : 1;
        RC_ASSERT(s.figure == in_decimals(grams_shown(grams, step) / unit, 6));
    });
}

TEST_CASE("a thing is cut to quarters and thirds, many to halves") {
    CHECK(as_cut(exact(137, 100)) == exact(4, 3));
    CHECK(as_cut(exact(17, 10)) == exact(5, 3));
    CHECK(as_cut(exact(1, 10)) == exact(1, 4));
    CHECK(as_cut(exact(127, 10)) == exact(25, 2));
    CHECK(as_cut(exact(244, 10)) == 24);
    CHECK(as_cut(3) == 3);
}

TEST_CASE("decimals have no trailing zeros and are rounded half up") {
    CHECK(in_decimals(exact(3, 2), 2) == "1.5");
    CHECK(in_decimals(400, 2) == "400");
    CHECK(in_decimals(exact(5, 1000), 2) == "0.01");
    CHECK(in_decimals(exact(4999, 1000000), 2) == "0");
    CHECK(in_decimals(exact(1, 8), 2) == "0.13");
    CHECK(in_decimals(exact(1999, 1000), 2) == "2");
    CHECK(in_decimals(exact(-3, 2), 1) == "-1.5");
    CHECK(in_decimals(exact(-1, 1000), 1) == "0");
    CHECK(in_decimals(exact(1234567), 0) == "1234567");
    CHECK(in_decimals(exact(1005, 10), 0) == "101");
    rc::prop("read back, within half the last place", [] {
        const exact value = positive(5000);
        const int places = *rc::gen::inRange(0, 5);
        const std::string text = in_decimals(value, places);
        const auto point = text.find('.');
        const std::string digits =
            point == std::string::npos ? text : text.substr(0, point) + text.substr(point + 1);
        exact unit_of_last = 1, half = exact(1, 2);
        if (point != std::string::npos)
            for (std::size_t i = point + 1; i < text.size(); ++i) unit_of_last /= 10;
        for (int i = 0; i < places; ++i) half /= 10;
        const exact read(boost::multiprecision::cpp_int(
            digits.substr(std::min(digits.find_first_not_of('0'), digits.size() - 1))));
        RC_ASSERT(abs(read * unit_of_last - value) <= half);
    });
}

TEST_CASE("a number has the fraction that a cook would use") {
    CHECK(with_fraction(4) == "4");
    CHECK(with_fraction(0) == "0");
    CHECK(with_fraction(exact(1, 2)) == "½");
    CHECK(with_fraction(exact(3, 2)) == "1½");
    CHECK(with_fraction(exact(2, 3)) == "⅔");
    CHECK(with_fraction(exact(7, 3)) == "2⅓");
    CHECK(with_fraction(exact(1, 4)) == "¼");
    CHECK(with_fraction(exact(11, 4)) == "2¾");
    CHECK(with_fraction(exact(1, 8)) == "⅛");
    CHECK(with_fraction(exact(3, 8)) == "⅜");
    CHECK(with_fraction(exact(5, 8)) == "⅝");
    CHECK(with_fraction(exact(23, 8)) == "2⅞");
    CHECK(with_fraction(exact(137, 100)) == "1.37");
    CHECK(with_fraction(exact(1, 16), 3) == "0.063");
    CHECK(with_fraction(exact(-3, 2)) == "-1½");
}

TEST_CASE("only what is a third is shown as one") {
    CHECK(with_fraction(exact(333, 1000)) == "⅓");
    CHECK(with_fraction(exact(667, 1000)) == "⅔");
    CHECK(with_fraction(exact(33, 100)) == "0.33");
    CHECK(with_fraction(exact(4001, 10)) == "400.1");
    CHECK(with_fraction(exact(501, 1000)) == "0.5");
    CHECK(with_fraction(exact(34, 100)) == "0.34");
}

TEST_CASE("a kitchen scale shows grams, tenths below 10 g and kilograms from 10 kg") {
    CHECK(scale(400) == shown{"400", "g"});
    CHECK(scale(exact(4004, 10)) == shown{"400", "g"});
    CHECK(scale(exact(4005, 10)) == shown{"401", "g"});
    CHECK(scale(10) == shown{"10", "g"});
    CHECK(scale(exact(994, 100)) == shown{"9.9", "g"});
    CHECK(scale(exact(996, 100)) == shown{"10", "g"});
    CHECK(scale(exact(3, 2)) == shown{"1.5", "g"});
    CHECK(scale(9999) == shown{"9999", "g"});
    CHECK(scale(exact(99996, 10)) == shown{"10", "kg"});
    CHECK(scale(12345) == shown{"12.35", "kg"});
    CHECK(scale(10000) == shown{"10", "kg"});
    CHECK(scale(1200000) == shown{"1200", "kg"});
}

TEST_CASE("a scale never shows nothing for something") {
    CHECK(scale(exact(1, 20)) == shown{"0.05", "g"});
    CHECK(scale(exact(96, 1000)) == shown{"0.1", "g"});
    CHECK(scale(exact(4, 100)) == shown{"0.04", "g"});
    CHECK(scale(exact(2, 10000)) == shown{"0.0002", "g"});
    CHECK(scale(0) == shown{"0", "g"});
}

TEST_CASE("a jug shows millilitres, and litres from 10 l") {
    CHECK(in_a_jug({250}) == shown{"250", "ml"});
    CHECK(in_a_jug({exact(2365882365, 10000000)}) == shown{"237", "ml"});
    CHECK(in_a_jug({exact(492892159375, 100000000000)}) == shown{"5", "ml"}); // a US teaspoon
    CHECK(in_a_jug({exact(739338239063, 100000000000)}) == shown{"7.4", "ml"});
    CHECK(in_a_jug({999}) == shown{"999", "ml"});
    CHECK(in_a_jug({1000}) == shown{"1", "l"});
    CHECK(in_a_jug({1250}) == shown{"1.25", "l"});
    CHECK(in_a_jug({12340}) == shown{"12.34", "l"});
    CHECK(in_a_jug({exact(1, 20)}) == shown{"0.05", "ml"});
}

TEST_CASE("ounces are in eighths, then quarters, then with pounds") {
    CHECK(in_ounces({g_of(14)}) == "14 oz");
    CHECK(in_ounces({400}) == "14 oz");
    CHECK(in_ounces({g_of(exact(37, 2))}) == "1 lb 2½ oz");
    CHECK(in_ounces({g_of(16)}) == "1 lb");
    CHECK(in_ounces({g_of(exact(159, 10))}) == "1 lb");
    CHECK(in_ounces({g_of(32)}) == "2 lb");
    CHECK(in_ounces({1000}) == "2 lb 3¼ oz");
    CHECK(in_ounces({g_of(exact(3, 8))}) == "⅜ oz");
    CHECK(in_ounces({g_of(exact(1, 8))}) == "⅛ oz");
    CHECK(in_ounces({g_of(exact(17, 8))}) == "2¼ oz");
}

TEST_CASE("ounces are left out where such a scale cannot show them") {
    CHECK(in_ounces({g_of(exact(124, 1000))}).empty());
    CHECK(in_ounces({5}).empty()); // 0.176 oz is neither an eighth nor a quarter
    CHECK(in_ounces({8}).empty()); // 0.282 oz is a ninth more than a quarter
    CHECK(in_ounces({10}) == "⅜ oz");
    CHECK(in_ounces({0}).empty());
}

TEST_CASE("fluid ounces are those of the system") {
    const exact us = volume_of(unit::fluid_ounce, system::us)->value;
    CHECK(in_fluid_ounces({us * 8}, system::us) == "8 fl oz");
    CHECK(in_fluid_ounces({us * 8}, system::imperial) == "8¼ fl oz");
    CHECK(in_fluid_ounces({250}, system::us) == "8½ fl oz");
    CHECK(in_fluid_ounces({us / 4}, system::us) == "¼ fl oz");
    CHECK(in_fluid_ounces({us / 5}, system::us).empty());
    CHECK(in_fluid_ounces({us * 3 / 8}, system::us).empty());
    CHECK(in_fluid_ounces({250}, system::metric).empty());
    CHECK(in_fluid_ounces({250}, system::unstated).empty());
}

TEST_CASE("what a scale shows is within half its last step") {
    rc::prop("grams from 10 g to 10 kg", [] {
        const exact weight = 10 + positive(9980);
        const shown s = on_a_scale({weight});
        RC_ASSERT(s.unit == "g");
        RC_ASSERT(abs(exact(exact::whole(s.figure)) - weight) * 2 <= 1);
    });
    rc::prop("a bigger batch never shows less", [] {
        const exact weight = positive(5000);
        const int batches = *rc::gen::inRange(2, 10);
        const auto in_g = [](const exact& w) {
            const shown s = on_a_scale({w});
            std::string digits = s.figure;
            exact step = s.unit == "kg" ? 1000 : 1;
            if (const auto point = digits.find('.'); point != std::string::npos) {
                for (std::size_t i = point + 1; i < digits.size(); ++i) step /= 10;
                digits.erase(point, 1);
            }
            digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size() - 1));
            return exact(exact(boost::multiprecision::cpp_int(digits)) * step);
        };
        RC_ASSERT(in_g(weight) < in_g(weight * batches));
    });
}

} // namespace benchcard::measures
