#include "program.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

/// `check` for other programs, and its mending.
namespace benchcard::program {

namespace {

const std::string slips = "recipe: Seed bread\r\n"
                          "revison: 3\r\n"
                          "makes: 1 loaf\r\n"
                          "500 g   plain flour\r\n"
                          "5-3 g   caraway seeds\r\n"
                          "320 g   water\r\n"
                          "1. Mix [flour] and [water].\r\n"
                          "- Knead in the seeds. Bake at [220 C] for [40 min].\r\n";
const std::string mended = "recipe: Seed bread\r\n"
                           "revision: 3\r\n"
                           "makes: 1 loaf\r\n"
                           "500 g   plain flour\r\n"
                           "3-5 g   caraway seeds\r\n"
                           "320 g   water\r\n"
                           "- Mix [flour] and [water].\r\n"
                           "- Knead in the [seeds]. Bake at [220 C] for [40 min].\r\n";

} // namespace

TEST_CASE("check gives its messages in each format, and its exit code", "[commands]") {
    const folder at;
    at.file("a.recipe", "recipe: A\n0 g plain flour\n");
    const surroundings here = {.folder = at.path()};
    const auto gcc = run({"check", "--format", "gcc", "a.recipe"}, here);
    CHECK(gcc.code == 1);
    CHECK(gcc.err == "");
    CHECK(gcc.out == "a.recipe:2:1: error: an amount must be more than nothing [zero-amount]\n");
    const auto json = run({"check", "--format", "json", "a.recipe"}, here);
    CHECK(json.code == 1);
    CHECK(nlohmann::json::parse(json.out).at("messages").at(0).at("kind") == "zero-amount");
    const auto sarif = run({"check", "a.recipe", "--format=sarif"}, here);
    CHECK(sarif.code == 1);
    CHECK(nlohmann::json::parse(sarif.out).at("runs").at(0).at("results").size() == 1);
    CHECK(run({"check", "--format", "text", "a.recipe"}, here).out ==
          run({"check", "a.recipe"}, here).out);
}

TEST_CASE("several recipes are one document, also when one cannot be read", "[commands]") {
    const folder at;
    at.file("a.recipe", "recipe: A\n0 g plain flour\n");
    at.file("b.recipe", tart);
    const surroundings here = {.folder = at.path()};
    const auto r = run(
        {"check", "--format", "sarif", "a.recipe", "gone.recipe", "b.recipe", "a.recipe"}, here);
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: gone.recipe cannot be read: there is no such file\n");
    const auto log = nlohmann::json::parse(r.out).at("runs").at(0);
    CHECK(log.at("results").size() == 2);
    CHECK(log.at("invocations").at(0).at("executionSuccessful") == false);
    const auto good = run({"check", "--format", "json", "b.recipe"}, here);
    CHECK(good.code == 0);
    CHECK(nlohmann::json::parse(good.out).at("messages").empty());
}

TEST_CASE("a format that does not exist is a wrong command line", "[commands]") {
    const auto r = run({"check", "--format", "xml", "a.recipe"});
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: there is no format `xml`; there are: text, gcc, json, sarif\n"
                   "     = help: for example: --format json\n");
}

TEST_CASE("check --fix mends in the file what leaves no doubt, and says so", "[commands]") {
    const folder at;
    at.file("a.recipe", slips);
    const surroundings here = {.folder = at.path()};
    const auto r = run({"check", "--fix", "a.recipe"}, here);
    CHECK(r.code == 0);
    CHECK(r.err == "");
    CHECK(r.out ==
          "a.recipe:2:1: mended: `revison` is now `revision` [unknown-setting]\n"
          "a.recipe:5:1: mended: `5-3` is now `3-5` [range-upside-down]\n"
          "a.recipe:7:1: mended: `1. Mix [flour] and [water].` is now `- Mix [flour] and [water].` "
          "[numbered-step]\n"
          "a.recipe:8:16: mended: `seeds` is now `[seeds]` [plain-mention]\n");
    CHECK(bytes_of(at / "a.recipe") == mended);
    CHECK(at.names() == std::vector<std::string>{"a.recipe"});
    const auto again = run({"check", "--fix", "a.recipe"}, here);
    CHECK(again.code == 0);
    CHECK(again.out == "");
    CHECK(bytes_of(at / "a.recipe") == mended);
}

TEST_CASE("check --fix keeps a byte order mark", "[commands]") {
    const folder at;
    at.file("a.recipe", "\xEF\xBB\xBF" + slips);
    CHECK(run({"check", "--fix", at / "a.recipe"}).code == 0);
    CHECK(bytes_of(at / "a.recipe") == "\xEF\xBB\xBF" + mended);
}

TEST_CASE("check --fix leaves what is in doubt, and shows it", "[commands]") {
    const folder at;
    const std::string doubtful = "recipe: A\n"
                                 "Total: 900 g\n"
                                 "0 g plain flour\n"
                                 "100 g caster sugar\n"
                                 "100 g icing sugar\n"
                                 "- 200 g butter\n"
                                 "- Whisk the sugar.\n";
    at.file("a.recipe", doubtful);
    const surroundings here = {.folder = at.path()};
    const auto before = run({"check", "a.recipe"}, here);
    const auto r = run({"check", "--fix", "a.recipe"}, here);
    CHECK(r.code == 1);
    CHECK(r.out == before.out);
    CHECK(bytes_of(at / "a.recipe") == doubtful);
}

TEST_CASE("a mended setting must be readable, or it stays", "[commands]") {
    const folder at;
    const std::string text = "recipe: A\nlos: a bit\n100 g plain flour\n";
    at.file("a.recipe", text);
    const auto r = run({"check", "--fix", at / "a.recipe"});
    CHECK(r.code == 1);
    CHECK_THAT(r.out, Catch::Contains("[unknown-setting]"));
    CHECK(bytes_of(at / "a.recipe") == text);
}

TEST_CASE("a recipe that compiled is not mended into one that does not", "[commands]") {
    const folder at;
    // Of two sugars, which one the word means cannot be known.
    const std::string text = "recipe: A\n100 g caster sugar\n100 g icing sugar\n"
                             "- Whisk [icing sugar]. Add the sugar.\n";
    at.file("a.recipe", text);
    CHECK(run({"check", "--fix", at / "a.recipe"}).code == 0);
    CHECK(bytes_of(at / "a.recipe") == text);
}

TEST_CASE("check --fix of a file that is not there makes none", "[commands]") {
    const folder at;
    const auto r = run({"check", "--fix", "gone.recipe"}, {.folder = at.path()});
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: gone.recipe cannot be read: there is no such file\n");
    CHECK(at.names().empty());
}

TEST_CASE("check --fix of standard input prints the mended recipe", "[commands]") {
    const auto r = run({"check", "--fix", "-"}, {.input = slips});
    CHECK(r.code == 0);
    CHECK(r.out == mended);
    CHECK_THAT(r.err, Catch::StartsWith("standard input:2:1: mended: `revison`"));
    const auto good = run({"check", "--fix", "-"}, {.input = tart});
    CHECK(good.code == 0);
    CHECK(good.out == tart);
    CHECK(good.err == "");
}

TEST_CASE("check --fix for other programs says on standard error what it mended", "[commands]") {
    const folder at;
    at.file("a.recipe", slips + "0 g salt\r\n");
    const auto r = run({"check", "--fix", "--format", "json", "a.recipe"}, {.folder = at.path()});
    CHECK(r.code == 1);
    CHECK_THAT(r.err, Catch::StartsWith("a.recipe:2:1: mended: "));
    const auto left = nlohmann::json::parse(r.out).at("messages");
    REQUIRE(left.size() == 1);
    CHECK(left.at(0).at("kind") == "zero-amount");
}

TEST_CASE("only the recipe that is named is mended, not the files it uses", "[commands]") {
    const folder at;
    const std::string house = "recipe: House\nrevison: 2\ncomponent: Pastry\n400 g plain flour\n";
    at.file("house.recipe", house);
    at.file("a.recipe", "recipe: A\nuse: house.recipe\n400 g Pastry\n");
    run({"check", "--fix", at / "a.recipe"});
    CHECK(bytes_of(at / "house.recipe") == house);
    run({"check", "--fix", at / "house.recipe"});
    CHECK_THAT(bytes_of(at / "house.recipe"), Catch::Contains("revision: 2"));
}

} // namespace benchcard::program
