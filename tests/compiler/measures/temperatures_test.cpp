#include "compiler/measures/temperatures.hpp"
#include "numbers.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

namespace benchcard::measures {
using testing::any_number;

namespace {

constexpr oven_scale all_scales[] = {oven_scale::celsius, oven_scale::fan_celsius,
                                     oven_scale::fahrenheit, oven_scale::gas_mark};

dial at(const exact& figure, oven_scale scale) { return dial_settings(figure, figure, scale); }

exact fahrenheit_of_gas(const exact& mark) {
    return degrees_on(oven_scale::fahrenheit, exactly(mark, oven_scale::gas_mark));
}

} // namespace

TEST_CASE("conversions are exact") {
    CHECK(exactly(350, oven_scale::fahrenheit).value == exact(530, 3));
    CHECK(exactly(160, oven_scale::fan_celsius).value == 180);
    CHECK(degrees_on(oven_scale::fahrenheit, {180}) == 356);
    CHECK(degrees_on(oven_scale::fahrenheit, {-40}) == -40);
    CHECK(fahrenheit_of_gas(exact(1, 4)) == 225);
    CHECK(fahrenheit_of_gas(exact(1, 2)) == 250);
    CHECK(fahrenheit_of_gas(exact(3, 4)) == exact(525, 2));
    CHECK(fahrenheit_of_gas(1) == 275);
    CHECK(fahrenheit_of_gas(4) == 350);
    CHECK(fahrenheit_of_gas(exact(11, 2)) == exact(775, 2));
    CHECK(fahrenheit_of_gas(10) == 500);
}

TEST_CASE("a conversion and its inverse") {
    rc::prop("to °C and back, on any scale", [] {
        const oven_scale scale =
            *rc::gen::elementOf(std::vector(std::begin(all_scales), std::end(all_scales)));
        const exact figure = scale == oven_scale::gas_mark ? any_number(12) : any_number(600);
        RC_ASSERT(degrees_on(scale, exactly(figure, scale)) == figure);
    });
    rc::prop("hotter is hotter on every scale", [] {
        const exact cool = any_number(300), hot = cool + testing::positive(20);
        for (const oven_scale scale : all_scales)
            RC_ASSERT(degrees_on(scale, {cool}) < degrees_on(scale, {hot}));
    });
}

TEST_CASE("every row of the dial table, from any scale") {
    struct row {
        exact mark;
        int fahrenheit, celsius;
        const char* gas;
    };
    const row rows[] = {
        {exact(1, 4), 225, 110, "¼"}, {exact(1, 2), 250, 120, "½"}, {1, 275, 140, "1"},
        {2, 300, 150, "2"},           {3, 325, 160, "3"},           {4, 350, 180, "4"},
        {5, 375, 190, "5"},           {6, 400, 200, "6"},           {7, 425, 220, "7"},
        {8, 450, 230, "8"},           {9, 475, 240, "9"},           {10, 500, 260, "10"}};
    for (const row& r : rows) {
        const dial expected{std::to_string(r.celsius) + " °C",
                            std::to_string(r.celsius - 20) + " °C",
                            std::to_string(r.fahrenheit) + " °F", r.gas};
        INFO(r.gas);
        CHECK(at(r.mark, oven_scale::gas_mark) == expected);
        CHECK(at(r.fahrenheit, oven_scale::fahrenheit) == expected);
        CHECK(at(r.celsius, oven_scale::celsius) == expected);
        CHECK(at(r.celsius - 20, oven_scale::fan_celsius) == expected);
    }
}

TEST_CASE("the scale as written is never altered") {
    CHECK(at(183, oven_scale::celsius) == dial{"183 °C", "163 °C", "360 °F", "4"});
    CHECK(at(355, oven_scale::fahrenheit) == dial{"180 °C", "160 °C", "355 °F", "4"});
    CHECK(at(exact(7, 2), oven_scale::gas_mark) == dial{"170 °C", "150 °C", "340 °F", "3½"});
    CHECK(at(150, oven_scale::fan_celsius) == dial{"170 °C", "150 °C", "325 °F", "3"});
    rc::prop("whole degrees", [] {
        const int degrees = *rc::gen::inRange(30, 320);
        const std::string figure = std::to_string(degrees);
        RC_ASSERT(at(degrees, oven_scale::celsius).celsius == figure + " °C");
        RC_ASSERT(at(degrees, oven_scale::fan_celsius).fan == figure + " °C");
        RC_ASSERT(at(degrees, oven_scale::fahrenheit).fahrenheit == figure + " °F");
    });
}

TEST_CASE("a figure between rows is rounded, not dragged to a row") {
    CHECK(at(340, oven_scale::fahrenheit) == dial{"170 °C", "150 °C", "340 °F", "4"});
    CHECK(at(175, oven_scale::celsius) == dial{"175 °C", "155 °C", "350 °F", "4"});
    CHECK(at(185, oven_scale::celsius) == dial{"185 °C", "165 °C", "365 °F", "5"});
    CHECK(at(210, oven_scale::celsius) == dial{"210 °C", "190 °C", "410 °F", "6"});
    CHECK(at(250, oven_scale::celsius) == dial{"250 °C", "230 °C", "480 °F", "9"});
    CHECK(at(130, oven_scale::celsius).gas == "½");
}

TEST_CASE("there is no gas mark beyond those of an oven") {
    CHECK(at(300, oven_scale::celsius) == dial{"300 °C", "280 °C", "570 °F", ""});
    CHECK(at(100, oven_scale::celsius) == dial{"100 °C", "80 °C", "210 °F", ""});
    CHECK(at(267, oven_scale::celsius).gas.empty());
    CHECK(at(266, oven_scale::celsius).gas == "10");
    CHECK(dial_settings(260, 290, oven_scale::celsius).gas.empty());
}

TEST_CASE("low temperatures are to the degree") {
    CHECK(at(66, oven_scale::celsius) == dial{"66 °C", "46 °C", "151 °F", ""});
    CHECK(at(170, oven_scale::fahrenheit) == dial{"77 °C", "57 °C", "170 °F", ""});
    CHECK(at(40, oven_scale::celsius).fan.empty());
}

TEST_CASE("a range shows both ends, or one where they agree") {
    CHECK(dial_settings(180, 190, oven_scale::celsius) ==
          dial{"180–190 °C", "160–170 °C", "350–375 °F", "4–5"});
    CHECK(dial_settings(160, 165, oven_scale::celsius) ==
          dial{"160–165 °C", "140–145 °C", "325 °F", "3"});
    CHECK(dial_settings(exact(1, 4), exact(1, 2), oven_scale::gas_mark) ==
          dial{"110–120 °C", "90–100 °C", "225–250 °F", "¼–½"});
}

// In steps of 5, as ovens are set: 139 °C is 280 °F, but 140 °C is by convention 275 °F.
TEST_CASE("a hotter oven never shows less on any dial") {
    const auto figure = [](const std::string& text) { return std::stoi(text); };
    for (int degrees = 110; degrees < 300; degrees += 5) {
        const dial a = at(degrees, oven_scale::celsius), b = at(degrees + 5, oven_scale::celsius);
        INFO(degrees);
        CHECK(figure(a.fahrenheit) <= figure(b.fahrenheit));
    }
    for (int degrees = 225; degrees < 550; degrees += 5) {
        const dial a = at(degrees, oven_scale::fahrenheit),
                   b = at(degrees + 5, oven_scale::fahrenheit);
        INFO(degrees);
        CHECK(figure(a.celsius) <= figure(b.celsius));
    }
}

TEST_CASE("a thermometer is read to the degree and no dial comes into it") {
    CHECK(thermometer(118, 118, oven_scale::celsius) == thermometer_reading{"118 °C", "244 °F"});
    CHECK(thermometer(180, 180, oven_scale::celsius) == thermometer_reading{"180 °C", "356 °F"});
    CHECK(thermometer(350, 350, oven_scale::fahrenheit) == thermometer_reading{"177 °C", "350 °F"});
    CHECK(thermometer(31, 32, oven_scale::celsius) == thermometer_reading{"31–32 °C", "88–90 °F"});
    CHECK(thermometer(exact(2365, 10), exact(2365, 10), oven_scale::fahrenheit) ==
          thermometer_reading{"114 °C", "236.5 °F"});
    CHECK(thermometer(0, 5, oven_scale::fahrenheit) ==
          thermometer_reading{"−18 – −15 °C", "0–5 °F"});
}

} // namespace benchcard::measures
