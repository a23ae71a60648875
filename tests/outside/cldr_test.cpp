#include "compiler/measures/systems.hpp"
#include "compiler/measures/temperatures.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <string>
#include <string_view>

/// Our measures against Unicode CLDR 48 (npm package cldr-core, supplemental/units.json), exactly.
/// The test `cldr_data` fetches it; without it these tests fail.
namespace benchcard::measures {
namespace {

const nlohmann::json& cldr() {
    static const auto data = [] {
        std::ifstream file(BENCHCARD_BINARY_DIR
                           "/cldr/node_modules/cldr-core/supplemental/units.json");
        INFO("tests/fetch-npm puts it there; ctest runs that first");
        REQUIRE(file);
        return nlohmann::json::parse(file).at("supplemental");
    }();
    return data;
}

/// `0.00454609` as a fraction.
exact decimal(const std::string& text) {
    REQUIRE(text.find_first_not_of("0123456789.") == text.npos);
    exact value = 0, place = 1;
    bool behind_point = false;
    for (const char c : text) {
        if (c == '.') {
            behind_point = true;
            continue;
        }
        value = value * 10 + (c - '0');
        if (behind_point) place *= 10;
    }
    return value / place;
}

/// `231*in3_to_m3`, `gal_to_m3/16*48`: factors, of which all behind the one `/` are below the line.
exact product(const std::string& text) {
    exact above = 1, below = 1;
    exact* side = &above;
    std::string factor;
    const auto take = [&] {
        const auto& constants = cldr().at("unitConstants");
        *side *= constants.contains(factor)
                     ? product(constants.at(factor).at("_value").get<std::string>())
                     : decimal(factor);
        factor.clear();
    };
    for (const char c : text) {
        if (c != '*' && c != '/') {
            factor += c;
            continue;
        }
        take();
        if (c == '/') {
            REQUIRE(side == &above);
            side = &below;
        }
    }
    take();
    return above / below;
}

/// A unit in the base unit of its kind: cubic metres, kilograms, kelvin.
exact size_of(std::string_view id) {
    INFO(id);
    const auto& units = cldr().at("convertUnits");
    REQUIRE(units.contains(std::string(id)));
    const auto& unit = units.at(std::string(id));
    return unit.contains("_factor") ? product(unit.at("_factor").get<std::string>()) : exact(1);
}

exact millilitres_of(std::string_view id) { return size_of(id) * 1000000; }

struct compared {
    unit of;
    system in;
    std::string_view id;
};
constexpr compared volumes[] = {
    {unit::teaspoon, system::us, "teaspoon"},
    {unit::tablespoon, system::us, "tablespoon"},
    {unit::fluid_ounce, system::us, "fluid-ounce"},
    {unit::cup, system::us, "cup"},
    {unit::pint, system::us, "pint"},
    {unit::quart, system::us, "quart"},
    {unit::gallon, system::us, "gallon"},
    {unit::cup, system::metric, "cup-metric"},
    {unit::cup, system::australian, "cup-metric"},
    {unit::cup, system::canadian, "cup-metric"},
    {unit::cup, system::imperial, "cup-imperial"},
    {unit::fluid_ounce, system::us_label, "fluid-ounce-metric"},
};
constexpr system with_imperial_pints[] = {system::uk, system::imperial, system::australian,
                                          system::canadian};
constexpr compared imperial[] = {
    {unit::fluid_ounce, system::imperial, "fluid-ounce-imperial"},
    {unit::pint, system::imperial, "pint-imperial"},
    {unit::quart, system::imperial, "quart-imperial"},
    {unit::gallon, system::imperial, "gallon-imperial"},
};

bool is_metric_spoon(unit u, system s) {
    return (u == unit::teaspoon || u == unit::tablespoon) && s != system::us;
}

/// What CLDR does not have: spoons of 5, 15, 17.8 and 20 ml, the gill, the dash, and the cup of
/// American labels.
bool is_missing_there(unit u, system s) {
    return is_metric_spoon(u, s) || u == unit::gill || u == unit::dash ||
           (u == unit::cup && s == system::us_label);
}

/// The four units that CLDR has other sizes of. Its dessertspoons are a cup over 128, 1.8 and 2.2
/// ml, which is less than its own teaspoon; its pinch is 3/64 and its drop 1/96 of its teaspoon.
/// GNU units has the dessertspoon of 10 ml and the drop of 0.05 ml that we use; a pinch of 1/16
/// tsp is common practice. (Its Japanese cup, too, is another than GNU's: we have none.)
constexpr std::string_view other_sizes[] = {"dessert-spoon", "dessert-spoon-imperial", "pinch",
                                            "drop"};
bool has_other_size_there(unit u) {
    return u == unit::dessertspoon || u == unit::pinch || u == unit::drop;
}

bool is_compared(unit u, system s) {
    const auto same = [&](const compared& c) { return c.of == u && c.in == s; };
    const bool has_imperial_pint =
        std::find(std::begin(with_imperial_pints), std::end(with_imperial_pints), s) !=
        std::end(with_imperial_pints);
    return std::any_of(std::begin(volumes), std::end(volumes), same) ||
           (has_imperial_pint && std::any_of(std::begin(imperial), std::end(imperial),
                                             [&](const compared& c) { return c.of == u; }));
}

constexpr unit units_of_volume[] = {
    unit::drop,         unit::dash,       unit::pinch,       unit::teaspoon,
    unit::dessertspoon, unit::tablespoon, unit::fluid_ounce, unit::gill,
    unit::cup,          unit::pint,       unit::quart,       unit::gallon,
    unit::litre,        unit::decilitre,  unit::centilitre,  unit::millilitre,
};

} // namespace

TEST_CASE("Volumes are those of Unicode CLDR, exactly") {
    for (const auto& c : volumes) {
        INFO(name_of(c.in) << " " << c.id);
        CHECK(volume_of(c.of, c.in)->value == millilitres_of(c.id));
    }
    for (const auto& c : imperial)
        for (const system s : with_imperial_pints) {
            INFO(name_of(s) << " " << c.id);
            CHECK(volume_of(c.of, s)->value == millilitres_of(c.id));
        }
    const exact litre = millilitres_of("liter");
    CHECK(volume_of(unit::litre, system::metric)->value == litre);
    CHECK(volume_of(unit::decilitre, system::metric)->value * 10 == litre);
    CHECK(volume_of(unit::centilitre, system::metric)->value * 100 == litre);
    CHECK(volume_of(unit::millilitre, system::metric)->value * 1000 == litre);
}

TEST_CASE("No volume is left out of the comparison with CLDR but those it does not have") {
    for (const unit u : units_of_volume)
        for (const system s : all_systems) {
            if (!volume_of(u, s)) continue;
            INFO(name_of(s) << " " << grammar::short_name(u));
            const bool is_metric = u == unit::litre || u == unit::decilitre ||
                                   u == unit::centilitre || u == unit::millilitre;
            CHECK(is_metric + is_compared(u, s) + is_missing_there(u, s) +
                      has_other_size_there(u) ==
                  1);
        }
}

TEST_CASE("Where CLDR has another size, it still has") {
    const exact teaspoon = millilitres_of("teaspoon");
    for (const auto id : other_sizes) {
        INFO(id);
        const auto ours = id == "pinch"  ? volume_of(unit::pinch, system::us)
                          : id == "drop" ? volume_of(unit::drop, system::us)
                                         : volume_of(unit::dessertspoon, system::us);
        CHECK(millilitres_of(id) != ours->value);
        CHECK(millilitres_of(id) < teaspoon);
    }
}

TEST_CASE("Weights are those of Unicode CLDR, exactly") {
    const exact gram = size_of("gram");
    CHECK(weight_of(unit::gram)->value * gram == size_of("gram"));
    CHECK(weight_of(unit::kilogram)->value * gram == size_of("kilogram"));
    CHECK(weight_of(unit::milligram)->value * gram * 1000 == size_of("gram"));
    CHECK(weight_of(unit::ounce)->value * gram == size_of("ounce"));
    CHECK(weight_of(unit::pound)->value * gram == size_of("pound"));
    CHECK(weight_of(unit::stick)->value * 4 == weight_of(unit::pound)->value);
}

TEST_CASE("Celsius and Fahrenheit are those of Unicode CLDR, exactly") {
    const auto offset = [](const char* id) {
        return product(cldr().at("convertUnits").at(id).at("_offset").get<std::string>());
    };
    const exact degree = size_of("fahrenheit");
    for (const int fahrenheit : {-40, 0, 32, 212, 350, 500}) {
        INFO(fahrenheit);
        const exact kelvin = fahrenheit * degree + offset("fahrenheit");
        CHECK(exactly(fahrenheit, oven_scale::fahrenheit).value == kelvin - offset("celsius"));
    }
}

} // namespace benchcard::measures
