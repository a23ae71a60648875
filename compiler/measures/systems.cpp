#include "compiler/measures/systems.hpp"

namespace benchcard::measures {
namespace {

/// The measures of one system in ml; 0 where it has no such measure, or none of one size.
struct measuring_set {
    exact teaspoon, tablespoon, cup, fluid_ounce, gill, pint;
};

exact ratio(long long numerator, long long denominator) { return exact(numerator, denominator); }

/// 231 cubic inches of 25.4 mm.
exact us_gallon() { return 231 * ratio(254, 100) * ratio(254, 100) * ratio(254, 100); }
exact imperial_gallon() { return ratio(454609, 100); }

measuring_set imperial_pints_with(const exact& teaspoon, const exact& tablespoon,
                                  const exact& cup) {
    const exact gallon = imperial_gallon();
    return {teaspoon, tablespoon, cup, gallon / 160, gallon / 32, gallon / 8};
}

measuring_set us_set() {
    const exact gallon = us_gallon();
    return {gallon / 768, gallon / 256, gallon / 16, gallon / 128, gallon / 32, gallon / 8};
}

measuring_set imperial_set() {
    const exact tablespoon = imperial_gallon() / 160 * ratio(5, 8);
    return imperial_pints_with(tablespoon / 3, tablespoon, imperial_gallon() / 16);
}

measuring_set set_of(system s) {
    switch (s) {
    case system::unstated:
        return {5, 15, 0, 0, 0, 0};
    case system::us:
        return us_set();
    case system::metric:
        return {5, 15, 250, 0, 0, 0};
    case system::uk:
        return imperial_pints_with(5, 15, 0);
    case system::imperial:
        return imperial_set();
    case system::australian:
        return imperial_pints_with(5, 20, 250);
    case system::canadian:
        return imperial_pints_with(5, 15, 250);
    case system::us_label:
        return {5, 15, 240, 30, 0, 0};
    }
    return {};
}

/// In ml; 0 where there is none.
exact size_of(unit u, system s) {
    const measuring_set set = set_of(s);
    switch (u) {
    case unit::millilitre:
        return 1;
    case unit::centilitre:
        return 10;
    case unit::decilitre:
        return 100;
    case unit::litre:
        return 1000;
    case unit::drop:
        return ratio(1, 20);
    case unit::dash:
        return set.teaspoon / 8;
    case unit::pinch:
        return set.teaspoon / 16;
    case unit::teaspoon:
        return set.teaspoon;
    case unit::dessertspoon:
        return 10;
    case unit::tablespoon:
        return set.tablespoon;
    case unit::fluid_ounce:
        return set.fluid_ounce;
    case unit::gill:
        return set.gill;
    case unit::cup:
        return set.cup;
    case unit::pint:
        return set.pint;
    case unit::quart:
        return set.pint * 2;
    case unit::gallon:
        return set.pint * 8;
    case unit::milligram:
    case unit::gram:
    case unit::kilogram:
    case unit::ounce:
    case unit::pound:
    case unit::stick:
        return 0;
    }
    return 0;
}

} // namespace

std::string_view name_of(system s) {
    switch (s) {
    case system::unstated:
        return "";
    case system::us:
        return "us";
    case system::metric:
        return "metric";
    case system::uk:
        return "uk";
    case system::imperial:
        return "imperial";
    case system::australian:
        return "australian";
    case system::canadian:
        return "canadian";
    case system::us_label:
        return "us-label";
    }
    return "";
}

std::optional<system> system_named(std::string_view word) {
    for (const system s : all_systems)
        if (name_of(s) == word) return s;
    return std::nullopt;
}

std::optional<grams> weight_of(unit u) {
    const exact pound = ratio(45359237, 100000);
    switch (u) {
    case unit::milligram:
        return grams{ratio(1, 1000)};
    case unit::gram:
        return grams{1};
    case unit::kilogram:
        return grams{1000};
    case unit::ounce:
        return grams{pound / 16};
    case unit::pound:
        return grams{pound};
    case unit::stick:
        return grams{pound / 4};
    default:
        return std::nullopt;
    }
}

std::optional<millilitres> volume_of(unit u, system s) {
    exact size = size_of(u, s);
    if (size == 0) return std::nullopt;
    return millilitres{std::move(size)};
}

std::pair<exact, exact> vagueness_of(unit u) {
    if (u == unit::dash) return {exact(8, 23), 1};
    if (u == unit::pinch) return {exact(3, 4), 2};
    return {1, 1};
}

std::vector<std::pair<system, millilitres>> readings_of(unit u) {
    std::vector<std::pair<system, millilitres>> readings;
    for (const system s : all_systems) {
        const auto volume = volume_of(u, s);
        if (!volume) continue;
        bool known = false;
        for (const auto& reading : readings) known = known || reading.second == *volume;
        if (!known) readings.emplace_back(s, *volume);
    }
    return readings;
}

bool is_volume(unit u) { return !weight_of(u); }

} // namespace benchcard::measures
