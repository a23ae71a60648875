#include "compiler/ingredients/table.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

namespace benchcard::ingredients {

namespace {

entry named(const std::string& name, std::vector<std::string> also = {}) {
    entry e;
    e.name = name;
    e.also = std::move(also);
    return e;
}

std::string found(const table& in, std::string_view name, country from = country::any) {
    const auto result = in.find(name, from);
    return result.match ? result.match->name : "";
}

std::string built_in(std::string_view name, country from = country::any) {
    return found(built_in_table(), name, from);
}

} // namespace

TEST_CASE("the longest name that the words end in is meant") {
    table t;
    for (const auto* name : {"flour", "rye flour", "dark rye flour", "rye"}) t.add(named(name));
    CHECK(found(t, "flour") == "flour");
    CHECK(found(t, "rye flour") == "rye flour");
    CHECK(found(t, "sifted dark rye flour") == "dark rye flour");
    CHECK(found(t, "coarse rye flour") == "rye flour");
    CHECK(t.find("sifted dark rye flour", country::any).description == "sifted");
    CHECK(t.find("Very  Coarse rye-flour", country::any).description == "Very  Coarse");
    CHECK(t.find("dark rye flour", country::any).description.empty());
    CHECK(found(t, "flour bread").empty());
    CHECK(found(t, "").empty());
}

TEST_CASE("number, case, accents and a remark in brackets do not matter") {
    CHECK(built_in("eggs") == built_in("egg"));
    CHECK(built_in("Large Eggs") == "egg");
    CHECK(built_in("CAROTS").empty());
    CHECK(built_in("CARROTS") == "carrot");
    CHECK(built_in("creme fraiche") == built_in("crème fraîche"));
    CHECK_FALSE(built_in("creme fraiche").empty());
    CHECK(built_in("dark chocolate (70 %)") == built_in("dark chocolate"));
    CHECK_FALSE(built_in("dark chocolate").empty());
    CHECK(built_in("(70 %)").empty());
}

TEST_CASE("British and American names lead to one entry") {
    CHECK(built_in("all-purpose flour") == built_in("plain flour"));
    CHECK(built_in("confectioners' sugar") == built_in("icing sugar"));
    CHECK(built_in("baking soda") == built_in("bicarbonate of soda"));
    CHECK(built_in("superfine sugar") == built_in("caster sugar"));
}

TEST_CASE("a name that means two things is read by the country of the measures") {
    const auto uk = built_in("oatmeal", country::uk), us = built_in("oatmeal", country::us);
    CHECK(uk == "medium oatmeal");
    CHECK(us == "rolled oats");
    const auto open = built_in_table().find("oatmeal", country::any);
    CHECK(open.match == nullptr);
    CHECK(open.readings.size() == 2);
}

TEST_CASE("own entries hide built-in ones, and only under their own names") {
    table own(&built_in_table());
    own.add(named("plain flour", {"house flour"}));
    const auto hidden = own.find("plain flour", country::any);
    REQUIRE(hidden.match);
    CHECK_FALSE(hidden.match->built_in);
    CHECK(own.find("house flours", country::any).match == hidden.match);
    CHECK(own.find("all-purpose flour", country::any).match->built_in);
    CHECK(own.find("sifted plain flour", country::any).match == hidden.match);
    // A longer built-in name is still the longest match.
    own.add(named("flour"));
    CHECK(own.find("dark rye flour", country::any).match->built_in);
}

TEST_CASE("of two own entries of one name the later counts") {
    table t;
    t.add(named("teff flour", {"first"}));
    t.add(named("teff flour", {"second"}));
    REQUIRE(t.find("teff flour", country::any).match);
    CHECK(t.find("teff flour", country::any).match->also.front() == "second");
    CHECK(t.entries().size() == 2);
}

TEST_CASE("an unknown name is answered with the nearest known ones") {
    const auto near = [](std::string_view name) { return built_in_table().near(name); };
    REQUIRE_FALSE(near("plian flour").empty());
    CHECK(near("plian flour").front() == "plain flour");
    REQUIRE_FALSE(near("cinamon").empty());
    CHECK(near("cinamon").front().find("cinnamon") != std::string::npos);
    CHECK(near("caster sugr").size() <= 3);
    CHECK(near("xqzw").empty());
    const auto two = built_in_table().near("plian flour", 1);
    CHECK(two.size() == 1);
}

TEST_CASE("every name of the table leads to its own entry, in its own country") {
    for (const auto* e : built_in_table().entries()) {
        auto names = e->also;
        names.push_back(e->name);
        for (const auto& written : names) {
            const bool uk = written.ends_with(" (uk)"), us = written.ends_with(" (us)");
            const auto name = uk || us ? written.substr(0, written.size() - 5) : written;
            const auto result = built_in_table().find(name, uk   ? country::uk
                                                            : us ? country::us
                                                                 : country::any);
            INFO(written);
            const bool ambiguous = !result.match && result.readings.size() > 1;
            CHECK((ambiguous || result.match == e));
        }
    }
}

} // namespace benchcard::ingredients
