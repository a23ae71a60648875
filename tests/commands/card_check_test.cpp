#include "program.hpp"

#include <catch2/catch.hpp>
#include <cstdio>
#include <regex>

/// Whether a printed card is today's.
namespace benchcard::program {

namespace {

std::string scones(const std::string& flour) {
    return "recipe: Scones\nmakes: 8 scones\n" + flour +
           " g plain flour\n200 g milk\n- Mix [flour] with [milk].\n";
}

/// The first fingerprint in a text.
std::string fingerprint_in(const std::string& text) {
    std::smatch found;
    return std::regex_search(text, found, std::regex("[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{2}"))
               ? found.str()
               : "";
}

/// Prints with a record, and gives the fingerprint that was recorded first.
std::string printed(const folder& at, std::vector<std::string> order) {
    std::vector<std::string> line = {"print", "scones.recipe", "-o", "scones.pdf", "--record"};
    line.insert(line.end(), order.begin(), order.end());
    const auto r = run(line, {.folder = at.path()});
    REQUIRE(r.err == "");
    REQUIRE(r.code == 0);
    return fingerprint_in(bytes_of(at / "scones.cards"));
}

} // namespace

TEST_CASE("a card is current until the recipe changes, and then it is said what has",
          "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    const auto sign = printed(at, {"--make", "16 scones"});
    REQUIRE(sign != "");
    auto r = run({"check", "scones.recipe", "--card", sign}, here);
    CHECK(r.out == sign + " is current: Scones, card 1 of 1 of scones.recipe\n");
    CHECK(r.code == 0);

    at.file("scones.recipe", scones("420"));
    r = run({"check", "scones.recipe", "--card", sign}, here);
    CHECK(r.code == 1);
    CHECK(r.err == "");
    CHECK(r.out.starts_with(sign + " is not today's card: Scones has changed since it was printed\n"
                                   "  was  batch: × 2 16 scones of 75 g\n"
                                   "  was  weigh: 800 g plain flour 1 lb 12¼ oz\n"
                                   "  was  total: 1200 g mix: 16 scones of 75 g\n"
                                   "  was  step: Mix **flour 800 g** with **milk 400 g**.\n"
                                   "  is   batch: × 2 16 scones of 78 g\n"
                                   "  is   weigh: 840 g plain flour 1 lb 13¾ oz\n"
                                   "  is   total: 1240 g mix: 16 scones of 78 g\n"
                                   "  is   step: Mix **flour 840 g** with **milk 400 g**.\n"
                                   "today's card is "));
    // What it is printed for now is another card beside the old one.
    printed(at, {"--make", "16 scones"});
    CHECK(run({"check", "scones.recipe", "--card", sign}, here).code == 1);
    at.file("scones.recipe", scones("400"));
    CHECK(run({"check", "scones.recipe", "--card", sign}, here).code == 0);
}

TEST_CASE("without a record a card is held against the order that is given", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    const auto none = run({"check", "scones.recipe", "--card", "2222-22"}, here);
    CHECK(none.code == 1);
    CHECK(none.out.starts_with("2222-22 is not today's card of scones.recipe\n"
                               "today's cards, as the recipe is written:\n  "));
    const auto written = fingerprint_in(none.out.substr(10));
    REQUIRE(written != "");
    CHECK(run({"check", "scones.recipe", "--card", written}, here).code == 0);
    CHECK(run({"check", "scones.recipe", "--card", written, "--scale", "2"}, here).code == 1);
    std::string in_small = written;
    in_small.erase(4, 1);
    for (auto& c : in_small) c = static_cast<char>(std::tolower(c));
    CHECK(run({"check", "scones.recipe", "--card", in_small}, here).code == 0);
    CHECK(at.names() == std::vector<std::string>{"scones.recipe"});
}

TEST_CASE("a card of several batches is held against the same batches", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    const auto sign = printed(at, {"--batch", "1, 2"});
    CHECK(run({"check", "scones.recipe", "--card", sign}, here).code == 0);
    CHECK(std::remove((at / "scones.cards").c_str()) == 0);
    CHECK(run({"check", "scones.recipe", "--card", sign}, here).code == 1);
    CHECK(run({"check", "scones.recipe", "--card", sign, "--batch", "1, 2"}, here).code == 0);
    CHECK(run({"check", "scones.recipe", "--card", sign, "--batch", "1, 3"}, here).code == 1);
}

TEST_CASE("a whole recipe on one card is known by its fingerprint too", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    const auto parts = [](const std::string& flour) {
        return "recipe: Tart\nmakes: 1 tart\ncomponent: Pastry\nmakes: 600 g\n" + flour +
               " g plain flour\n200 g butter\n- Rub [butter] into [flour].\nassembly: Tart\n"
               "all Pastry\n- Bake [Pastry] at [180 C] for [20 min].\n";
    };
    at.file("scones.recipe", parts("400"));
    const auto sign = printed(at, {"--style", "hand"});
    CHECK(run({"check", "scones.recipe", "--card", sign}, here).out ==
          sign + " is current: Tart, the whole of scones.recipe\n");
    at.file("scones.recipe", parts("405"));
    const auto changed = run({"check", "scones.recipe", "--card", sign}, here);
    CHECK(changed.code == 1);
    CHECK(changed.out.find("was  weigh: 400 g plain flour") != std::string::npos);
}

TEST_CASE("a card of a component that is gone, and a recipe with errors", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    const auto sign = printed(at, {});
    at.file("scones.recipe", "recipe: Buns\nmakes: 8 buns\n400 g plain flour\n");
    auto r = run({"check", "scones.recipe", "--card", sign}, here);
    CHECK(r.out == sign + " is not today's card: Scones is no longer made in scones.recipe\n");
    CHECK(r.code == 1);
    at.file("scones.recipe", "recipe: Scones\n0 g plain flour\n");
    r = run({"check", "scones.recipe", "--card", sign}, here);
    CHECK(r.out == "");
    CHECK(r.err.find("zero-amount") != r.err.npos);
    CHECK(r.code == 1);
}

TEST_CASE("a file that is no record is left as it is", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    at.file("scones.cards", "my own list\n");
    const auto r = run({"print", "scones.recipe", "-o", "scones.pdf", "--record"}, here);
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: scones.cards is no record of cards, or of another version\n");
    CHECK(bytes_of(at / "scones.cards") == "my own list\n");
    CHECK(run({"check", "scones.recipe", "--card", "2222-22"}, here).code == 2);
}

TEST_CASE("what --card does not go with is refused", "[commands]") {
    const folder at;
    const surroundings here = {.folder = at.path()};
    at.file("scones.recipe", scones("400"));
    const auto refusal = [&](std::vector<std::string> line) {
        const auto r = run(line, here);
        CHECK(r.code == 2);
        CHECK(r.out == "");
        return r.err.substr(0, r.err.find('\n'));
    };
    CHECK(refusal({"check", "scones.recipe", "--card", "7K4Q"}) ==
          "benchcard: --card takes the fingerprint in the foot of a card, four letters or digits "
          "and two, and not `7K4Q`");
    CHECK(refusal({"check", "-", "--card", "7K4Q-92"}) ==
          "benchcard: --card holds a card against one recipe, in a file");
    CHECK(refusal({"check", "scones.recipe", "--fix", "--card", "7K4Q-92"}) ==
          "benchcard: --card says something else than --fix: give one of them");
    CHECK(refusal({"check", "scones.recipe", "--scale", "2"}) ==
          "benchcard: an order is checked with --card alone");
    CHECK(refusal({"print", "-", "-o", "a.pdf", "--record"}) ==
          "benchcard: --record writes beside the recipe's file, and standard input is none");
}

} // namespace benchcard::program
