#include "verdict.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

/// The engine itself: which slips it makes, and what it calls caught.
namespace benchcard::mutation {

namespace {

const std::string rolls = "recipe: Rolls\n"
                          "makes: 20 rolls of 50 g\n"
                          "600 g   plain flour\n"
                          "1/2 tsp   fine salt\n"
                          "400 g   water\n"
                          "- Mix [flour] with [salt] and [water]; bake at [220 C] for [20 min].\n";

/// The changed texts that slips of one kind come to, each by its one line that differs.
std::vector<std::string> lines_with(const correct_recipe& r, std::string_view slip) {
    std::vector<std::string> result;
    for (const auto& m : mutants_of(r)) {
        if (m.slip != slip) continue;
        const grammar::source now(0, "now", changed(r.text, m.change));
        result.emplace_back(now.line(now.at(m.change.where.begin).line));
    }
    return result;
}

mutant slip_to(const correct_recipe& r, const std::string& line) {
    for (const auto& m : mutants_of(r))
        if (changed(r.text, m.change).find("\n" + line + "\n") != std::string::npos) return m;
    throw std::logic_error("no slip makes the line " + line);
}

using lines = std::vector<std::string>;

} // namespace

TEST_CASE("every slip is made once at every place that it can be made", "[engine]") {
    const auto r = recipe_of("rolls.recipe", rolls);
    REQUIRE(r.compiled->messages.empty());
    CHECK(lines_with(r, "a digit dropped") == lines{"60 g   plain flour", "40 g   water"});
    CHECK(lines_with(r, "a digit doubled") == lines{"6600 g   plain flour", "6000 g   plain flour",
                                                    "11/2 tsp   fine salt", "1/22 tsp   fine salt",
                                                    "4400 g   water", "4000 g   water"});
    CHECK(lines_with(r, "a unit swapped") == lines{"600 kg   plain flour", "600 oz   plain flour",
                                                   "1/2 tbsp   fine salt", "400 kg   water",
                                                   "400 oz   water"});
    CHECK(lines_with(r, "a line removed").size() == 3);
    CHECK(lines_with(r, "a yield doubled") ==
          lines{"makes: 40 rolls of 50 g", "makes: 20 rolls of 100 g"});
    CHECK(lines_with(r, "a reference renamed").size() == 3);
    CHECK(lines_with(r, "a scale of heat swapped") ==
          lines{"- Mix [flour] with [salt] and [water]; bake at [220 F] for [20 min]."});
    CHECK(with_point_moved("1.5", 1) == "15");
    CHECK(with_point_moved("1.5", -1) == "0.15");
    CHECK(with_point_moved("250", -1) == "25");
}

TEST_CASE("a slip is caught by what is said at its own line", "[engine]") {
    const auto r = recipe_of("rolls.recipe", rolls);
    const auto flour = judge(r, slip_to(r, "60 g   plain flour"));
    CHECK(flour.is_caught);
    CHECK(flour.changes_weight());
    CHECK(*flour.before == 600);
    CHECK(*flour.after == 60);
    CHECK(judge(r, slip_to(r, "makes: 40 rolls of 50 g")).is_caught);
    // What is said at another line is not enough: this recipe has no line that would explain it.
    const auto salt = judge(r, slip_to(r, "1/2 tbsp   fine salt"));
    CHECK_FALSE(salt.is_caught);
    CHECK(salt.changes_weight());
    CHECK(salt.why_missed == "a small part of the mix, no rule for this ingredient");
}

TEST_CASE("a line that is gone is caught in its component, at the step that names it", "[engine]") {
    const auto r = recipe_of("rolls.recipe", rolls);
    for (const auto& m : mutants_of(r)) {
        if (m.is != mutant::sort::removal) continue;
        const auto v = judge(r, m);
        CHECK(v.is_caught);
        CHECK(*v.after == 0);
    }
    const auto unnamed = recipe_of("mix.recipe", "recipe: Mix\n600 g   plain flour\n20 g   salt\n");
    for (const auto& m : mutants_of(unnamed)) {
        if (m.is != mutant::sort::removal) continue;
        const auto v = judge(unnamed, m);
        CHECK_FALSE(v.is_caught);
        CHECK(v.why_missed == "what is made is not stated by weight");
    }
}

} // namespace benchcard::mutation
