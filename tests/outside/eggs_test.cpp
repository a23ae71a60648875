#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

/// Eggs against the grades of AMS 56 and of Regulation (EC) No 589/2008, less the shell as the USDA
/// National Nutrient Database for Standard Reference, Release 28 (2015), has it. The figures are
/// typed in here from those, not read from ours.
namespace benchcard::ingredients {
namespace {

// The US customary cup is a sixteenth of a gallon of 231 cubic inches.
constexpr double cup = 236.5882365;

/// Grams of a US measure of what a cook calls `name`: the first figure of its state.
double weight_of(std::string_view name, double millilitres) {
    const auto found = built_in_table().find(name, country::us);
    INFO(name);
    REQUIRE(found.match);
    const auto state = compared_name(found.description);
    for (const auto& f : found.match->figures)
        if (f.volume && f.state == state) return approximately(f.density()) * millilitres;
    FAIL("no figure for " << name);
    return 0;
}

/// Grams of one piece of a size in a country: the first figure for it.
double weight_of_one(std::string_view name, country where, std::string_view size) {
    const auto found = built_in_table().find(name, where);
    INFO(name << " " << size);
    REQUIRE(found.match);
    for (const auto& f : found.match->figures)
        if (!f.volume && !f.is_stick && f.piece.empty() && f.where == where && f.state == size)
            return approximately(f.low.value);
    FAIL("no weight for one " << size << " " << name);
    return 0;
}

} // namespace

TEST_CASE("US eggs weigh what the USDA published, and their class less the shell") {
    struct us_class {
        std::string_view size;
        double grams;            ///< edible, NDB 01123
        double ounces_per_dozen; ///< at least, in the shell: AMS 56
    };
    constexpr double ounce = 28.349523125, edible = 0.88; // NDB 01123: refuse 12 %, shell
    for (const auto& c : {us_class{"jumbo", 63, 30},
                          {"extra large", 56, 27},
                          {"large", 50, 24},
                          {"medium", 44, 21},
                          {"small", 38, 18},
                          {"peewee", 31.18, 15}}) { // not in the database: reckoned from AMS 56
        const double used = weight_of_one("egg", country::us, c.size);
        INFO(c.size);
        CHECK(used == Approx(c.grams));
        CHECK(used == Approx(c.ounces_per_dozen * ounce / 12 * edible).epsilon(0.02));
    }
    CHECK(weight_of_one("egg white", country::us, "large") == Approx(33)); // NDB 01124
    CHECK(weight_of_one("egg yolk", country::us, "large") == Approx(17));  // NDB 01125
    CHECK(weight_of_one("eggs", country::us, "") ==
          Approx(50));                                  // unstated is large: common practice
    CHECK(weight_of("beaten egg", cup) == Approx(243)); // NDB 01123, 4.86 large eggs
}

TEST_CASE("British and European eggs weigh the middle of their grade less the shell") {
    // Regulation (EC) No 589/2008: S under 53 g, M 53 to 63, L 63 to 73, XL 73 g and over.
    constexpr double edible = 0.88;
    CHECK(weight_of_one("egg", country::uk, "medium") == Approx((53 + 63) / 2.0 * edible));
    CHECK(weight_of_one("egg", country::uk, "large") == Approx((63 + 73) / 2.0 * edible));
    CHECK(weight_of_one("egg", country::uk, "small") == Approx(53 * edible));       // the bound
    CHECK(weight_of_one("egg", country::uk, "extra large") == Approx(73 * edible)); // the bound
    CHECK(weight_of_one("egg", country::uk, "very large") == Approx(73 * edible));  // its own name
    CHECK(weight_of_one("egg", country::uk, "") == Approx(58 * edible)); // medium: common practice
    CHECK(weight_of_one("egg", country::any, "") == Approx(58 * edible));
}

TEST_CASE("A white and a yolk make the egg they come from") {
    const auto check = [](country where, std::string_view size) {
        INFO(size);
        CHECK(weight_of_one("egg white", where, size) + weight_of_one("egg yolk", where, size) ==
              Approx(weight_of_one("egg", where, size)));
    };
    for (const auto where : {country::us, country::uk})
        for (const auto* size : {"small", "medium", "large", "extra large", ""}) check(where, size);
    for (const auto* size : {"peewee", "jumbo"}) check(country::us, size);
    check(country::uk, "very large");
}

} // namespace benchcard::ingredients
