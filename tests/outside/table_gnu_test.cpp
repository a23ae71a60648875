#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"
#include "gnu_units.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

/// The built-in table against the densities of ingredients in GNU units (Debian package `units`,
/// its database 3.15), which is asked while the test runs.
namespace benchcard::ingredients {
namespace {

using testing::gnu_units;

const entry& gnu_known(std::string_view name) {
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
        const auto& what = gnu_known(d.name);
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
            const auto& figures = gnu_known(name).figures;
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
        const auto& figures = gnu_known(p.name).figures;
        const auto large = std::find_if(figures.begin(), figures.end(), [](const figure& f) {
            return !f.volume && f.where == country::us && f.state == "large";
        });
        INFO(p.identifier);
        REQUIRE(large != figures.end());
        CHECK(std::abs(approximately(large->low.value) / theirs - 1) * 100 <= p.percent);
    }
}

/// `GNU units 3.15 (2022), cocoa_sifted, cocoa_spooned`: the identifiers.
std::vector<std::string> identifiers_in(const std::string& source) {
    std::vector<std::string> found;
    const std::regex identifier(", ([a-z_]+)");
    for (std::sregex_iterator i(source.begin(), source.end(), identifier), end; i != end; ++i)
        found.push_back((*i)[1]);
    return found;
}

TEST_CASE("Every figure that the table has from GNU units is one that it has") {
    std::size_t checked = 0, by_maker = 0;
    for (const auto* e : built_in_table().entries())
        for (const auto& f : e->figures) {
            if (!f.source.starts_with("GNU units")) continue;
            // The second kosher salt is there by its maker's name, which we do not print.
            if (f.source.find("the second identifier") != std::string::npos) {
                ++by_maker;
                continue;
            }
            const double ours = f.volume ? approximately(f.density()) : approximately(f.low.value);
            bool is_there = false;
            for (const auto& name : identifiers_in(f.source))
                is_there |= gnu_units(name, f.volume ? "g/ml" : "g") == Approx(ours).epsilon(1e-5);
            INFO(e->name << ": " << f.source);
            CHECK(is_there);
            ++checked;
        }
    CHECK(checked > 35);
    CHECK(by_maker == 1);
}

} // namespace benchcard::ingredients
