#include "../recipe/reading.hpp"

/// What is wanted of a component against what there is.
namespace benchcard::testing {

namespace {

std::string rounds(const std::string& makes, const std::string& use, int tarts) {
    return "recipe: Tarts\nmakes: " + std::to_string(tarts) +
           " tarts\ncomponent: Base\nmakes: " + makes +
           "\n1 kg plain flour\nassembly: Tarts\nper: 1 tart\n" + use + "\n";
}

} // namespace

TEST_CASE("36 made and 40 wanted is an error that shows the arithmetic") {
    const auto c = compiled(rounds("36 rounds of 27 g", "2 rounds Base", 20));
    REQUIRE(kinds_of(*c) == kinds{"demand-exceeds-yield"});
    const auto& m = c->messages.front();
    CHECK(m.level == grammar::severity::error);
    CHECK(m.message == "40 rounds of Base wanted, and 36 rounds are made");
    CHECK_THAT(remarks_of(m), Catch::Contains("Tarts uses 40 rounds (20 times 2 rounds)"));
    CHECK_THAT(remarks_of(m), Catch::Contains("Base makes 36 rounds"));
    CHECK_THAT(remarks_of(m), Catch::Contains("make 1.11 times as much Base"));
}

TEST_CASE("as many as are made may be used, and not one more") {
    CHECK(kinds_of(*compiled(rounds("40 rounds of 25 g", "2 rounds Base", 20))).empty());
    CHECK(kinds_of(*compiled(rounds("39 rounds of 25 g", "2 rounds Base", 20))) ==
          kinds{"demand-exceeds-yield"});
}

TEST_CASE("by weight there is 1 % for rounding") {
    CHECK(kinds_of(*compiled(rounds("1 kg", "101 g Base", 10))).empty());
    const auto c = compiled(rounds("1 kg", "102 g Base", 10));
    REQUIRE(kinds_of(*c) == kinds{"demand-exceeds-yield"});
    CHECK(c->messages.front().message == "1020 g of Base wanted, and 1000 g is made");
    CHECK_THAT(remarks_of(c->messages.front()),
               Catch::Contains("Tarts uses 1020 g (10 times 102 g)"));
}

TEST_CASE("more than all of it is an error, whatever the measure") {
    CHECK(kinds_of(*compiled(rounds("1 kg", "half Base", 2))).empty());
    CHECK(kinds_of(*compiled(rounds("1 kg", "half Base", 3))) == kinds{"demand-exceeds-yield"});
    CHECK(kinds_of(*compiled(rounds("1 l", "500 ml Base", 2))).empty());
    CHECK(kinds_of(*compiled(rounds("1 l", "500 ml Base", 3))) == kinds{"demand-exceeds-yield"});
}

TEST_CASE("two that use one component are added up, and both are shown") {
    const auto c =
        compiled("recipe: Two\ncomponent: Base\nmakes: 1 kg\n1 kg water\ncomponent: One\n600 g "
                 "Base\ncomponent: Other\n600 g Base\nassembly: End\nall One\nall Other\n");
    REQUIRE(kinds_of(*c) == kinds{"demand-exceeds-yield"});
    const auto remarks = remarks_of(c->messages.front());
    CHECK_THAT(remarks, Catch::Contains("One uses 600 g"));
    CHECK_THAT(remarks, Catch::Contains("Other uses 600 g"));
}

TEST_CASE("a component that nobody uses is shown, where there is an assembly") {
    const std::string two =
        "recipe: Two\ncomponent: Base\n1 kg water\ncomponent: Spare\n1 kg water\n";
    CHECK(kinds_of(*compiled(two)).empty());
    const auto c = compiled(two + "assembly: End\nall Base\n");
    REQUIRE(kinds_of(*c) == kinds{"unused-component"});
    CHECK(c->messages.front().message == "no other part uses Spare");
    CHECK(c->messages.front().level == grammar::severity::warning);
}

} // namespace benchcard::testing
