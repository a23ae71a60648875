#include "compiler/measures/systems.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>

namespace benchcard::measures {
namespace {

exact ml_or_none(unit u, system s) {
    const auto volume = volume_of(u, s);
    return volume ? volume->value : exact(-1);
}

} // namespace

TEST_CASE("every unit has a short name of its own") {
    std::set<std::string_view> names;
    for (const unit u : grammar::all_units) {
        CHECK_FALSE(grammar::short_name(u).empty());
        names.insert(grammar::short_name(u));
    }
    CHECK(names.size() == std::size(grammar::all_units));
    CHECK(grammar::short_name(unit::fluid_ounce) == "fl oz");
    CHECK(grammar::short_name(unit::tablespoon) == "tbsp");
    CHECK(grammar::short_name(unit::milligram) == "mg");
}

TEST_CASE("a unit is either a weight or a volume") {
    for (const unit u : grammar::all_units) {
        INFO(grammar::short_name(u));
        CHECK(is_volume(u) != weight_of(u).has_value());
        for (const system s : all_systems)
            if (!is_volume(u)) CHECK_FALSE(volume_of(u, s));
        CHECK(readings_of(u).empty() != is_volume(u));
    }
}

TEST_CASE("a system is found by its name and nothing else") {
    for (const system s : all_systems) CHECK(system_named(name_of(s)) == s);
    CHECK(name_of(system::us_label) == "us-label");
    CHECK_FALSE(system_named(""));
    CHECK_FALSE(system_named("US"));
    CHECK_FALSE(system_named("us_label"));
}

TEST_CASE("weights are exact") {
    CHECK(weight_of(unit::pound)->value == exact(45359237, 100000));
    CHECK(weight_of(unit::ounce)->value * 16 == weight_of(unit::pound)->value);
    CHECK(weight_of(unit::stick)->value * 4 == weight_of(unit::pound)->value);
    CHECK(weight_of(unit::milligram)->value * 1000000 == weight_of(unit::kilogram)->value);
    CHECK_FALSE(weight_of(unit::fluid_ounce));
}

TEST_CASE("the measures of one system divide one another") {
    for (const system s :
         {system::us, system::uk, system::imperial, system::australian, system::canadian}) {
        INFO(name_of(s));
        CHECK(ml_or_none(unit::gallon, s) == 4 * ml_or_none(unit::quart, s));
        CHECK(ml_or_none(unit::quart, s) == 2 * ml_or_none(unit::pint, s));
        CHECK(ml_or_none(unit::pint, s) == 4 * ml_or_none(unit::gill, s));
        CHECK(ml_or_none(unit::gill, s) ==
              (s == system::us ? 4 : 5) * ml_or_none(unit::fluid_ounce, s));
    }
    CHECK(ml_or_none(unit::cup, system::us) == 16 * ml_or_none(unit::tablespoon, system::us));
    CHECK(ml_or_none(unit::cup, system::imperial) * 2 == ml_or_none(unit::pint, system::imperial));
    CHECK(ml_or_none(unit::cup, system::imperial) ==
          16 * ml_or_none(unit::tablespoon, system::imperial));
    for (const system s : {system::us, system::metric, system::uk, system::imperial,
                           system::canadian, system::us_label, system::unstated})
        CHECK(ml_or_none(unit::tablespoon, s) == 3 * ml_or_none(unit::teaspoon, s));
    CHECK(ml_or_none(unit::tablespoon, system::australian) ==
          4 * ml_or_none(unit::teaspoon, system::australian));
}

TEST_CASE("a measure that a system does not have is nothing") {
    for (const unit u : {unit::fluid_ounce, unit::gill, unit::pint, unit::quart, unit::gallon}) {
        INFO(grammar::short_name(u));
        CHECK_FALSE(volume_of(u, system::unstated));
        CHECK_FALSE(volume_of(u, system::metric));
        CHECK(volume_of(u, system::us_label).has_value() == (u == unit::fluid_ounce));
    }
    CHECK_FALSE(volume_of(unit::cup, system::unstated));
    CHECK_FALSE(volume_of(unit::cup, system::uk));
}

TEST_CASE("what a recipe that names no system may still use") {
    CHECK(ml_or_none(unit::teaspoon, system::unstated) == 5);
    CHECK(ml_or_none(unit::tablespoon, system::unstated) == 15);
    CHECK(ml_or_none(unit::dessertspoon, system::unstated) == 10);
    CHECK(ml_or_none(unit::litre, system::unstated) == 1000);
    CHECK(ml_or_none(unit::decilitre, system::unstated) == 100);
    CHECK(ml_or_none(unit::centilitre, system::unstated) == 10);
    CHECK(ml_or_none(unit::dash, system::unstated) == exact(5, 8));
    CHECK(ml_or_none(unit::pinch, system::unstated) == exact(5, 16));
    CHECK(ml_or_none(unit::drop, system::unstated) == exact(1, 20));
}

TEST_CASE("readings that agree are listed once, under the first's name") {
    const auto cups = readings_of(unit::cup);
    REQUIRE(cups.size() == 4);
    CHECK(cups[0] == std::pair{system::us, millilitres{exact(2365882365, 10000000)}});
    CHECK(cups[1] == std::pair{system::metric, millilitres{250}});
    CHECK(cups[2] == std::pair{system::imperial, millilitres{exact(284130625, 1000000)}});
    CHECK(cups[3] == std::pair{system::us_label, millilitres{240}});
    CHECK(readings_of(unit::pint).size() == 2);
    CHECK(readings_of(unit::litre).size() == 1);
}

TEST_CASE("weights and volumes compare by value") {
    CHECK(grams{exact(1, 3)} < grams{exact(334, 1000)});
    CHECK(grams{exact(2, 6)} == grams{exact(1, 3)});
    CHECK(millilitres{5} > millilitres{exact(4999, 1000)});
    CHECK(millilitres{5} != millilitres{6});
}

TEST_CASE("a third of a cup, three times, is a cup") {
    const exact cup = ml_or_none(unit::cup, system::us);
    CHECK(cup / 3 + cup / 3 + cup / 3 == cup);
}

} // namespace benchcard::measures
