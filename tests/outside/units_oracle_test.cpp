#include "compiler/measures/systems.hpp"
#include "compiler/measures/temperatures.hpp"
#include "gnu_units.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <cmath>
#include <string>

/// Our measures against GNU units (Debian package `units`), which is asked while the test runs,
/// and against figures that laws and standards give.
namespace benchcard::measures {
namespace {

double gnu(const std::string& from, const std::string& to) { return testing::gnu_units(from, to); }

Approx near(double value) { return Approx(value).epsilon(1e-9); }

void check_volume(unit u, system s, const std::string& gnu_name) {
    INFO(name_of(s) << " " << grammar::short_name(u) << " as " << gnu_name);
    const auto volume = volume_of(u, s);
    REQUIRE(volume);
    CHECK(approximately(volume->value) == near(gnu(gnu_name, "ml")));
}

void check_weight(unit u, const std::string& gnu_name) {
    INFO(gnu_name);
    CHECK(approximately(weight_of(u)->value) == near(gnu(gnu_name, "g")));
}

} // namespace

TEST_CASE("GNU units is installed (Debian package units)") {
    CHECK(gnu("1 inch", "mm") == near(25.4));
}

TEST_CASE("US measures are those of GNU units") {
    check_volume(unit::teaspoon, system::us, "usteaspoon");
    check_volume(unit::tablespoon, system::us, "ustablespoon");
    check_volume(unit::fluid_ounce, system::us, "usfloz");
    check_volume(unit::gill, system::us, "usgill");
    check_volume(unit::cup, system::us, "uscup");
    check_volume(unit::pint, system::us, "uspint");
    check_volume(unit::quart, system::us, "usquart");
    check_volume(unit::gallon, system::us, "usgallon");
}

TEST_CASE("British measures are those of GNU units") {
    for (const system s : {system::uk, system::imperial, system::australian, system::canadian}) {
        check_volume(unit::fluid_ounce, s, "brfloz");
        check_volume(unit::gill, s, "brgill");
        check_volume(unit::pint, s, "brpint");
        check_volume(unit::quart, s, "brquart");
        check_volume(unit::gallon, s, "brgallon");
    }
    check_volume(unit::cup, system::imperial, "brcup");
    check_volume(unit::teaspoon, system::uk, "brteaspoon");
    check_volume(unit::tablespoon, system::uk, "brtablespoon");
    check_volume(unit::tablespoon, system::imperial, "5|8 brfloz"); // its comment on brtablespoon
    check_volume(unit::teaspoon, system::imperial, "5|24 brfloz");
}

TEST_CASE("metric, Australian, Canadian and labelling measures are those of GNU units") {
    for (const system s : {system::metric, system::australian, system::canadian})
        check_volume(unit::cup, s, "metriccup");
    check_volume(unit::tablespoon, system::metric, "brtablespoon"); // 15 ml
    check_volume(unit::teaspoon, system::metric, "brteaspoon");
    check_volume(unit::tablespoon, system::australian, "australiatablespoon");
    check_volume(unit::teaspoon, system::australian, "australiateaspoon");
    check_volume(unit::cup, system::us_label, "legalcup");
    check_volume(unit::tablespoon, system::us_label, "legaltablespoon");
}

TEST_CASE("measures that no system changes are those of GNU units") {
    for (const system s : all_systems) {
        check_volume(unit::dessertspoon, s, "dessertspoon");
        check_volume(unit::drop, s, "drop");
        check_volume(unit::millilitre, s, "ml");
        check_volume(unit::centilitre, s, "cl");
        check_volume(unit::decilitre, s, "dl");
        check_volume(unit::litre, s, "liter");
    }
}

TEST_CASE("weights are those of GNU units") {
    check_weight(unit::milligram, "mg");
    check_weight(unit::gram, "g");
    check_weight(unit::kilogram, "kg");
    check_weight(unit::ounce, "oz");
    check_weight(unit::pound, "lb");
    check_weight(unit::stick, "stickbutter");
}

TEST_CASE("gas marks are those of GNU units") {
    for (const exact& mark :
         {exact(1, 16), exact(1, 8), exact(1, 4), exact(3, 8), exact(1, 2), exact(3, 4), exact(1),
          exact(3, 2), exact(4), exact(11, 2), exact(9), exact(10)}) {
        const std::string asked = fmt::format("gasmark({})", approximately(mark));
        INFO(asked);
        const celsius ours = exactly(mark, oven_scale::gas_mark);
        CHECK(approximately(degrees_on(oven_scale::fahrenheit, ours)) == near(gnu(asked, "tempF")));
        CHECK(approximately(ours.value) == near(gnu(asked, "tempC")));
    }
    CHECK(approximately(degrees_on(oven_scale::gas_mark, {180})) ==
          near(gnu("tempC(180)", "gasmark")));
}

TEST_CASE("the dial of a gas oven is the one of GNU units, either way") {
    for (const exact& mark : {exact(1, 4), exact(1, 2), exact(1), exact(2), exact(3), exact(4),
                              exact(5), exact(6), exact(7), exact(8), exact(9), exact(10)}) {
        const std::string asked = fmt::format("gasmark({})", approximately(mark));
        INFO(asked);
        const double fahrenheit = std::round(gnu(asked, "tempF"));
        const dial by_mark = dial_settings(mark, mark, oven_scale::gas_mark);
        CHECK(by_mark.fahrenheit == fmt::format("{} °F", fahrenheit));
        const exact figure = static_cast<int>(fahrenheit);
        CHECK(dial_settings(figure, figure, oven_scale::fahrenheit) == by_mark);
        // The °C that charts print beside a mark is rounded, at 9 from 246 to 240.
        CHECK(std::stod(by_mark.celsius) == Approx(gnu(asked, "tempC")).margin(6.2));
    }
}

TEST_CASE("Celsius and Fahrenheit are those of GNU units") {
    for (const int degrees : {-40, 0, 32, 180, 212, 350, 500}) {
        INFO(degrees);
        CHECK(approximately(exactly(degrees, oven_scale::fahrenheit).value) ==
              Approx(gnu(fmt::format("tempF({})", degrees), "tempC")).epsilon(1e-9).margin(1e-9));
        CHECK(approximately(degrees_on(oven_scale::fahrenheit, {degrees})) ==
              near(gnu(fmt::format("tempC({})", degrees), "tempF")));
    }
}

TEST_CASE("gallons are what the law says") {
    // US: 231 cubic inches. UK: 4.54609 cubic decimetres (Weights and Measures Act 1985, Sch. 1,
    // as GNU units quotes it).
    CHECK(volume_of(unit::gallon, system::us)->value == exact(3785411784, 1000000));
    CHECK(volume_of(unit::gallon, system::uk)->value == exact(454609, 100));
    CHECK(volume_of(unit::cup, system::us)->value == exact(2365882365, 10000000));
    // Unicode CLDR 48, unitsTest.txt: the teaspoon is 4.92892159375 ml, the pound 0.45359237 kg.
    CHECK(volume_of(unit::teaspoon, system::us)->value == exact(492892159375, 100000000000));
    CHECK(weight_of(unit::pound)->value == exact(45359237, 100000));
}

TEST_CASE("US labelling measures are those of 21 CFR 101.9(b)(5)(viii)") {
    CHECK(volume_of(unit::teaspoon, system::us_label)->value == 5);
    CHECK(volume_of(unit::tablespoon, system::us_label)->value == 15);
    CHECK(volume_of(unit::cup, system::us_label)->value == 240);
    CHECK(volume_of(unit::fluid_ounce, system::us_label)->value == 30);
    CHECK_FALSE(volume_of(unit::pint, system::us_label));
}

} // namespace benchcard::measures
