#include "program.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <regex>

/// The draft of a label: as text, as JSON, and printed.
namespace benchcard::program {

namespace {

const std::string oats = "recipe: Oat slices\n"
                         "keeps: 10 days chilled\n"
                         "loss: 20% in the oven\n"
                         "200 g rolled oats\n"
                         "100 g water\n"
                         "60 g  ground almonds\n"
                         "4 g   fine salt\n"
                         "- Mix [rest]; bake at [180 C] for [30 min].\n";

const std::string caution =
    "A draft for the person responsible for the label: it lists what the recipe says, and not "
    "what\nwas used instead. Check it against every packet, the legal names, and local law. That "
    "an\nallergen is not named here does not mean that it is not there.\n";

/// 300 ingredients: far more than the smallest label holds in large type.
std::string long_recipe() {
    std::string text = "recipe: All of it\n";
    for (int i = 0; i < 150; ++i)
        text += std::to_string(1000 - i) + " g rare root " + std::string(1, char('a' + i % 26)) +
                std::to_string(i) + "\n";
    return text;
}

/// The smallest type of a PDF in points, as MuPDF reads it.
double least_type(const std::string& pdf) {
    const auto command = "mutool draw -q -F stext '" + pdf + "' 2>/dev/null";
    std::string text;
    std::array<char, 4096> buffer;
    auto* from = ::popen(command.c_str(), "r");
    REQUIRE(from);
    while (const auto count = std::fread(buffer.data(), 1, buffer.size(), from))
        text.append(buffer.data(), count);
    REQUIRE(::pclose(from) == 0);
    const std::regex size("<font [^>]*size=\"([0-9.]+)\"");
    double least = 1000;
    for (std::sregex_iterator i(text.begin(), text.end(), size), end; i != end; ++i)
        least = std::min(least, std::stod((*i)[1]));
    return least;
}

constexpr double points_per_mm = 72 / 25.4;
constexpr double noto_x_height = 0.536; // sxHeight in the OS/2 table of Noto Sans, of 1 em

} // namespace

TEST_CASE("a label is drafted by both laws unless the recipe says otherwise", "[commands]") {
    const folder at;
    const auto r = run({"label", at.file("a.recipe", oats)});
    CHECK(r.code == 0);
    CHECK(r.out == "Oat slices\n\n" + caution +
                       "\nEU and UK form (Reg. (EU) No 1169/2011)\n"
                       "  Ingredients: rolled OATS 69 %, ground ALMONDS, water, fine salt.\n"
                       "\nUS form (21 CFR 101.4)\n"
                       "  Ingredients: rolled oats, water, ground ALMONDS, contains 2% or less of "
                       "each of the following:\n  fine salt.\n"
                       "  Contains: ALMONDS.\n"
                       "\nTo settle\n"
                       "  Added water is 9.3 % of the finished product by weight: listed by what "
                       "is left of it after\n  baking and boiling (Annex VII, Part A, 1).\n");
    const auto one = run({"label", at.file("b.recipe", "labels: eu\n" + oats)});
    CHECK(one.code == 1); // a setting before `recipe:`
    const auto us = run({"label", "-"}, {.input = oats + "labels: us\n"});
    CHECK(us.out.find("EU and UK form") == us.out.npos);
}

TEST_CASE("a house's labels hold for the recipes that use its file", "[commands]") {
    const folder at;
    at.file("house.recipe", "recipe: House rules\nlabels: us\n");
    const auto recipe = at.file("a.recipe", oats + "use: house.recipe\n");
    const auto r = run({"label", recipe});
    CHECK(r.code == 0);
    CHECK(r.out.find("US form") != r.out.npos);
    CHECK(r.out.find("EU and UK form") == r.out.npos);
}

TEST_CASE("the use-by date is within the rule", "[commands]") {
    const folder at;
    const auto recipe = at.file("a.recipe", oats);
    // Southern Nevada Health District on the FDA Food Code, 3-501.17: made 1 April, discard after
    // 7 April.
    CHECK_THAT(run({"label", recipe, "--made", "2026-04-01"}).out,
               Catch::Contains("\nUse by 2026-04-07\n  day 7 of 7, the day it was made being the "
                               "first, by the FDA Food Code, 3-501.17"));
    // North Carolina on the same: made 1 October, frozen 3 October, thawed 10 October.
    CHECK_THAT(
        run({"label", recipe, "--made", "2026-10-01", "--frozen", "2026-10-03/2026-10-10"}).out,
        Catch::Contains("\nUse by 2026-10-14\n"));
    CHECK_THAT(
        run({"label", recipe, "--made", "2026-06-03", "--made", "2026-06-01", "--format", "json"})
            .out,
        Catch::Contains("\"day\": \"2026-06-07\""));
}

TEST_CASE("what is wrong with the days is said", "[commands]") {
    const auto refused = [](std::vector<std::string> arguments, const std::string& said) {
        arguments.insert(arguments.begin(), {"label", "a.recipe"});
        const auto r = run(arguments);
        CHECK(r.code == 2);
        CHECK(r.out == "");
        CHECK(r.err == said);
    };
    refused({"--made", "1 April"}, "benchcard: --made takes a day, and not `1 April`\n"
                                   "     = help: for example: --made 2026-04-01\n");
    refused({"--made", "2026-04-01", "--frozen", "2026-04-05/2026-04-03"},
            "benchcard: --frozen takes the day it was frozen and the day it was thawed, and not "
            "`2026-04-05/2026-04-03`\n     = help: for example: --frozen 2026-04-03/2026-04-10\n");
    refused({"--frozen", "2026-04-03/2026-04-05"},
            "benchcard: --frozen needs the day it was made\n     = help: for example: --made "
            "2026-04-01 --frozen 2026-04-03/2026-04-10\n");
    refused({"--made", "2026-04-04", "--frozen", "2026-04-03/2026-04-05"},
            "benchcard: on 2026-04-03, when it was frozen, it was not made yet\n     = help: for "
            "example: --made 2026-04-01 --frozen 2026-04-03/2026-04-10\n");
}

TEST_CASE("a label goes to a PDF, a page for each law", "[commands]") {
    const folder at;
    const auto recipe = at.file("a.recipe", oats), pdf = at / "label.pdf";
    const auto r = run({"label", recipe, "-o", pdf, "--made", "2026-04-01"});
    CHECK(r.code == 0);
    CHECK(r.out == "");
    const auto bytes = bytes_of(pdf);
    CHECK(bytes.starts_with("%PDF-"));
    CHECK(bytes.find("/Count 2") != bytes.npos);
    CHECK(run({"label", recipe, "-o", "-", "--made", "2026-04-01"}).out == bytes);
    CHECK(run({"label", recipe, "-o", "-"}).out != bytes);
    const auto bad = at.file("bad.recipe", "recipe: Bad\n0 g salt\n");
    CHECK(run({"label", bad, "-o", pdf}).code == 1);
    CHECK(bytes_of(pdf) == bytes);
}

TEST_CASE("small letters on a printed label are as high as the law asks", "[commands]") {
    // Reg. (EU) No 1169/2011, Art. 13(2) and (3): 1.2 mm, and 0.9 mm on the smallest packs.
    const folder at;
    const auto recipe = at.file("a.recipe", long_recipe());
    for (const auto& [paper, height] : {std::pair{"a6", 1.2}, {"3x5", 1.2}, {"a7", 0.9}}) {
        INFO(paper);
        REQUIRE(run({"label", recipe, "-o", at / "a.pdf", "--paper", paper}).code == 0);
        const auto type = least_type(at / "a.pdf");
        CHECK(type * noto_x_height / points_per_mm > height - 0.005);
        CHECK(type < 8);
    }
    // The style alone would go lower.
    CHECK(6 * noto_x_height / points_per_mm < 1.2);
}

TEST_CASE("what a printed label needs is said", "[commands]") {
    const folder at;
    const auto recipe = at.file("a.recipe", oats);
    const auto said = [&](std::vector<std::string> arguments) {
        arguments.insert(arguments.begin(), {"label", recipe});
        const auto r = run(arguments);
        CHECK(r.code == 2);
        return r.err;
    };
    CHECK(said({"--paper", "A7"}) == "benchcard: --paper is for a label that is printed: say where "
                                     "to\n     = help: for example: -o label.pdf\n");
    CHECK(said({"--style", "label"}) == "benchcard: --style is for a label that is printed: say "
                                        "where to\n     = help: for example: -o label.pdf\n");
    CHECK(said({"--format", "json", "-o", at / "a.pdf"}) ==
          "benchcard: a label is printed to a PDF, or given as json: not both at once\n     = "
          "help: for example: -o label.pdf\n");
    CHECK(said({"-o", at / "a.html"}) ==
          "benchcard: a label is printed to a PDF\n     = help: for example: -o label.pdf\n");
    CHECK_THAT(said({"-o", recipe}), Catch::Contains("the name of a recipe"));
    CHECK_THAT(said({"-o", at / "a.pdf", "--paper", "A9"}), Catch::Contains("no paper `A9`"));
    CHECK(bytes_of(recipe) == oats);
    CHECK(at.names() == std::vector<std::string>{"a.recipe"});
}

} // namespace benchcard::program
