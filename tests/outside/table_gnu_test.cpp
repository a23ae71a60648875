#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>
#include <string>
#include <string_view>

/// The built-in table against the densities of ingredients in GNU units (Debian package `units`,
/// its database 3.15), which is asked while the test runs.
namespace benchcard::ingredients {
namespace {

/// What `units` converts an expression to; throws where it is missing or does not know it.
double gnu_units(const std::string& from, const std::string& to) {
    const auto command = fmt::format("env -u UNITSFILE -u MYUNITSFILE LC_ALL=C UNITS_ENGLISH=US "
                                     "units -t -o %.16g '{}' '{}' 2>&1",
                                     from, to);
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) throw std::runtime_error("cannot run " + command);
    std::string text;
    char buffer[256];
    while (const std::size_t size = std::fread(buffer, 1, sizeof buffer, pipe))
        text.append(buffer, size);
    if (pclose(pipe) != 0) throw std::runtime_error(command + " failed: " + text);
    std::size_t used = 0;
    const double value = std::stod(text, &used);
    if (text.find_first_not_of(" \n", used) != std::string::npos)
        throw std::runtime_error("units said: " + text);
    return value;
}

const entry& known(std::string_view name) {
    const auto found = built_in_table().find(name, country::us);
    INFO(name);
    REQUIRE(found.match);
    return *found.match;
}

struct gnu_density {
    std::string_view identifier;
    std::string_view name;
    std::string_view state;
    double percent; ///< how far the figure in use may be from it, where the two sources differ
};

/// Every density in GNU units' table of ingredients but one: it names a second kosher salt by
/// its maker.
constexpr gnu_density densities[] = {
    {"butter", "butter", "", 0.1},
    {"butter_clarified", "clarified butter", "", 6.5},
    {"cocoa_butter", "cocoa butter", "", 15},
    {"shortening", "vegetable shortening", "", 7.2},
    {"oil", "vegetable oil", "", 2.6},
    {"cakeflour_sifted", "cake flour", "sifted", 0.01},
    {"cakeflour_spooned", "cake flour", "spooned", 0.01},
    {"cakeflour_scooped", "cake flour", "scooped", 0.01},
    {"flour_sifted", "plain flour", "sifted", 0.01},
    {"flour_spooned", "plain flour", "spooned", 0.01},
    {"flour_scooped", "plain flour", "scooped", 0.01},
    {"breadflour_sifted", "bread flour", "sifted", 0.01},
    {"breadflour_spooned", "bread flour", "spooned", 0.01},
    {"breadflour_scooped", "bread flour", "scooped", 0.01},
    {"cornstarch", "cornstarch", "", 6.7},
    {"dutchcocoa_sifted", "Dutch cocoa", "sifted", 0.01},
    {"dutchcocoa_spooned", "Dutch cocoa", "spooned", 0.01},
    {"dutchcocoa_scooped", "Dutch cocoa", "scooped", 0.01},
    {"cocoa_sifted", "cocoa", "sifted", 0.01},
    {"cocoa_spooned", "cocoa", "spooned", 0.01},
    {"cocoa_scooped", "cocoa", "scooped", 0.01},
    {"heavycream", "heavy cream", "", 2.6},
    {"milk", "milk", "", 0.9},
    {"sourcream", "sour cream", "", 5.0},
    {"molasses", "molasses", "", 5.7},
    {"cornsyrup", "light corn syrup", "", 4.6},
    {"cornsyrup", "dark corn syrup", "", 0.7},
    {"honey", "honey", "", 1.8},
    {"sugar", "sugar", "", 0.01},
    {"powdered_sugar", "powdered sugar", "", 5.9},
    {"brownsugar_light", "light brown sugar", "packed", 1.4},
    {"brownsugar_dark", "dark brown sugar", "packed", 8.0},
    {"baking_powder", "baking powder", "", 0.01},
    {"salt", "salt", "", 0.01},
    {"koshersalt", "kosher salt", "", 0.01},
    {"waterdensity", "water", "", 0.01},
};

} // namespace

TEST_CASE("The table publishes every density GNU units has, and uses one that is near it") {
    for (const auto& d : densities) {
        const double theirs = gnu_units(std::string(d.identifier), "g/ml");
        const auto& what = known(d.name);
        const figure* in_use = nullptr;
        double nearest = 100;
        for (const auto& f : what.figures) {
            if (!f.volume || f.state != d.state) continue;
            if (!in_use) in_use = &f;
            nearest = std::min(nearest, std::abs(approximately(f.density()) / theirs - 1) * 100);
        }
        INFO(d.identifier << " is " << theirs << " g/ml");
        REQUIRE(in_use);
        CHECK(nearest < 0.001);
        CHECK(std::abs(approximately(in_use->density()) / theirs - 1) * 100 <= d.percent);
    }
}

TEST_CASE("A cup of flour weighs more the harder it is filled, in GNU units and here") {
    CHECK(gnu_units("uscup flour_scooped", "g") == Approx(141.7476).epsilon(1e-6));
    for (const auto* name : {"plain flour", "bread flour", "cake flour", "cocoa", "Dutch cocoa"}) {
        double last = 0;
        for (const auto* state : {"sifted", "spooned", "scooped"}) {
            INFO(state << " " << name);
            const auto& figures = known(name).figures;
            const auto found = std::find_if(figures.begin(), figures.end(), [&](const figure& f) {
                return f.volume && f.state == state;
            });
            REQUIRE(found != figures.end());
            CHECK(approximately(found->density()) > last);
            last = approximately(found->density());
        }
    }
}

TEST_CASE("A US egg and its parts are near GNU units' egg") {
    struct part {
        std::string_view identifier, name;
        double percent;
    };
    // GNU's white and yolk make 48.6 g, not its egg of 50 g; the USDA's 33 and 17 g are in use.
    for (const auto& p :
         {part{"egg", "egg", 0.01}, {"eggwhite", "egg white", 10.1}, {"eggyolk", "egg yolk", 9}}) {
        const double theirs = gnu_units(std::string(p.identifier), "g");
        const auto& figures = known(p.name).figures;
        const auto large = std::find_if(figures.begin(), figures.end(), [](const figure& f) {
            return !f.volume && f.where == country::us && f.state == "large";
        });
        INFO(p.identifier);
        REQUIRE(large != figures.end());
        CHECK(std::abs(approximately(large->low.value) / theirs - 1) * 100 <= p.percent);
    }
}

} // namespace benchcard::ingredients
