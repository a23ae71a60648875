#include "program.hpp"

#include <catch2/catch.hpp>

/// What weigh and convert say.
namespace benchcard::program {

namespace {

outcome weigh(const std::vector<std::string>& order) {
    std::vector<std::string> line = {"weigh", "-"};
    line.insert(line.end(), order.begin(), order.end());
    return run(line, {.input = tart});
}

const std::string usda =
    "USDA National Nutrient Database for Standard Reference, Release 28 (2015), NDB ";

} // namespace

TEST_CASE("orders change the figures", "[commands]") {
    const auto once = weigh({});
    CHECK(once.code == 0);
    CHECK(once.err == "");
    CHECK_THAT(once.out, Catch::Contains(" 200 g") && Catch::Contains(" 100 g") &&
                             Catch::Contains("2 tarts of 150 g"));
    CHECK(weigh({"--make", "2 tarts"}).out == once.out);
    const auto half = weigh({"--scale", "1/2"});
    CHECK_THAT(half.out, Catch::Contains(" 100 g") && Catch::Contains(" 50 g") &&
                             Catch::Contains("1 tart of 150 g"));
    CHECK(weigh({"--make", "a tart"}).out == half.out);
    CHECK(weigh({"--scale", " ½ "}).out == half.out);
    const auto five = weigh({"--make", "5 tarts"});
    CHECK_THAT(five.out, Catch::Contains(" 500 g") && Catch::Contains(" 250 g") &&
                             Catch::Contains("5 tarts of 150 g"));
    CHECK(weigh({"--make", "750 g"}).out == five.out);
    CHECK(weigh({"--scale", "5/2"}).out == five.out);
}

TEST_CASE("weigh keeps warnings out of its table", "[commands]") {
    const auto r =
        run({"weigh", "-"}, {.input = "recipe: Tart\n200 g moonflour\n- Take [moonflour].\n"});
    CHECK(r.code == 0);
    CHECK_THAT(r.err, Catch::Contains("hint: `moonflour` is not in the ingredient table"));
    CHECK_THAT(r.out, !Catch::Contains("hint") && Catch::Contains("200 g"));
    const auto none = run({"weigh", "-"}, {.input = "recipe: Tart\n0 g flour\n"});
    CHECK(none.code == 1);
    CHECK(none.out == "");
}

TEST_CASE("--measures stands in for what the recipe says", "[commands]") {
    const std::string recipe = "recipe: Tart\nmeasures: metric\n1 cup water\n- Boil [water].\n";
    CHECK_THAT(run({"weigh", "-"}, {.input = recipe}).out, Catch::Contains(" 250 g"));
    CHECK_THAT(run({"weigh", "-", "--measures", "us-label"}, {.input = recipe}).out,
               Catch::Contains(" 240 g"));
    const auto unsaid =
        run({"check", "-"}, {.input = "recipe: Tart\n1 cup water\n- Boil [water].\n"});
    CHECK(unsaid.code == 1);
    CHECK(run({"check", "-", "--measures", "us"},
              {.input = "recipe: Tart\n1 cup water\n- Boil [water].\n"})
              .code == 0);
}

TEST_CASE("convert says grams, the range and the source in one line", "[commands]") {
    const auto flour = run({"convert", "2 1/4 cups plain flour", "--measures", "us"});
    CHECK(flour.code == 0);
    CHECK(flour.err == "");
    CHECK(flour.out == "2 1/4 cups plain flour = 281 g (255 g to 319 g by how the cup is filled), "
                       "10 oz; source: " +
                           usda + "20081\n");
    CHECK(run({"convert", "2", "1/4", "cups", "plain", "flour", "--measures", "us"}).out ==
          flour.out);
    CHECK(run({"convert", "250 g plain flour", "--measures", "us"}).out ==
          "250 g plain flour = 250 g, 8¾ oz, 2 cups; source: " + usda + "20081\n");
    CHECK(run({"convert", "250 g plain flour"}).out == "250 g plain flour = 250 g, 8¾ oz\n");
    CHECK_THAT(run({"convert", "100 ml water"}).out,
               Catch::StartsWith("100 ml water = 100 g, 3½ oz; source: "));
    CHECK_THAT(run({"convert", "1-2 cups plain flour", "--measures", "us"}).out,
               Catch::Contains("(113 g to 283 g by how much is meant and how the cup is filled)"));
}

TEST_CASE("convert's messages are about the amount and the command line", "[commands]") {
    const auto whose = run({"convert", "2 1/4 cups plain flour"});
    CHECK(whose.code == 1);
    CHECK(whose.out == "");
    CHECK_THAT(whose.err,
               Catch::StartsWith("amount:1:1: error: ") &&
                   Catch::Contains("   1 | 2 1/4 cups plain flour\n     | ^^^^^^^^^^\n") &&
                   Catch::Contains("     = help: say whose: benchcard convert '2 1/4 cups plain "
                                   "flour' --measures us\n"));
    const auto slip = run({"convert", "2 cpus flour", "--measures", "us"});
    CHECK(slip.code == 1);
    CHECK(slip.err == "amount:1:3: error: there is no measure `cpus` [unknown-measure]\n"
                      "   1 | 2 cpus flour\n"
                      "     |   ^^^^\n"
                      "     = help: the nearest is `cups`\n"
                      "1 error\n");
    for (const auto* text : {"", "flour", "use: /etc/passwd", "- Mix.", "# x", "component: X"}) {
        const auto r = run({"convert", "--", text});
        CHECK(r.code == 2);
        CHECK(r.out == "");
        CHECK(r.err == std::string("benchcard: `") + text +
                           "` is not an amount of an ingredient\n"
                           "     = help: the amount comes first, then the ingredient: benchcard "
                           "convert '2 1/4 cups plain flour'\n");
    }
    CHECK_THAT(run({"convert", "2 cups"}).err,
               Catch::StartsWith(
                   "amount:1:7: error: expected the name of an ingredient after the amount"));
    CHECK_THAT(run({"convert", "1 g \xff"}).err,
               Catch::StartsWith("benchcard: the amount is not UTF-8 text\n"));
    CHECK_THAT(run({"convert", "1 g salt\n2 g salt"}).err,
               Catch::StartsWith("benchcard: convert takes one amount, on one line\n"));
    const auto some = run({"convert", "some flour"});
    CHECK(some.code == 1);
    CHECK(some.err == "benchcard: what `some flour` weighs is not known\n");
}

TEST_CASE("convert - weighs the lines of standard input, and says which it cannot", "[commands]") {
    const auto r = run({"convert", "-", "--measures", "us"},
                       {.input = "2 cups plain flour\n\nflour\r\n1 cup unicorn\n"});
    CHECK(r.code == 1);
    CHECK(r.err == "");
    CHECK(r.out ==
          "2 cups plain flour = 250 g (227 g to 283 g by how the cup is filled), 8¾ oz; source: " +
              usda +
              "20081\n"
              "flour: not weighed: it has no amount and ingredient to weigh\n"
              "1 cup unicorn: not weighed: `unicorn` is not in the ingredient table, so what a cup "
              "of it weighs is not known\n");
    CHECK(run({"convert", "-"}, {.input = "100 g salt\n"}).code == 0);
    CHECK(run({"convert", "-"}, {.input = "100 g salt\n", .out_to = "/dev/full"}).code == 2);
}

TEST_CASE("convert reads lines as people write them", "[commands]") {
    const auto says = [](const std::string& amount, const std::string& begin) {
        CHECK_THAT(run({"convert", "--measures", "us", "--", amount}).out,
                   Catch::StartsWith(amount + " = " + begin));
    };
    says("pinch of fine salt", "0.4 g (0.3 g to 0.8 g by how the pinch is filled)");
    says("2 1/4 cups (280g) all-purpose flour, spooned & levelled", "280 g, as stated, 10 oz");
    says("1 (14-ounce) can condensed milk", "397 g, 14 oz");
    says("250 g/2 cups plain flour", "250 g, as stated");
    CHECK_THAT(run({"convert", "1 cup (500 g) plain flour", "--measures", "us"}).err,
               Catch::Contains("500 g is stated, and this much plain flour weighs"));
}

TEST_CASE("convert --why can be redone with a pocket calculator", "[commands]") {
    const auto r = run({"convert", "2 cups plain flour", "--measures", "us", "--why"});
    CHECK(r.code == 0);
    CHECK_THAT(r.out, Catch::Contains("2 cup × 236.5882365 ml = 473.176473 ml (measures: us)") &&
                          Catch::Contains("473.176473 ml × 125 g ÷ 236.5882365 ml = 250 g"));
}

TEST_CASE("convert --list and print --chart give what measures weigh", "[commands]") {
    const auto list = run({"convert", "--list", "rye", "flour", "--measures", "us"});
    CHECK(list.code == 0);
    CHECK(list.err == "");
    CHECK_THAT(list.out, Catch::Contains("rye flour") && !Catch::Contains("plain flour"));
    CHECK(run({"convert", "--list"}).code == 2);
    CHECK_THAT(run({"convert", "--list"}).err,
               Catch::StartsWith("benchcard: whose cups and spoons are meant is not said\n"));
    const auto none = run({"convert", "--list", "moonflour", "--measures", "us"});
    CHECK(none.code == 1);
    CHECK(none.err == "benchcard: no ingredient in the table is called `moonflour`\n");

    const folder at;
    const auto house = at.file("house.recipe", "recipe: House list\nmeasures: metric\n"
                                               "ingredient: teff flour\nweighs: 160 g per cup\n"
                                               "source: weighed here\n");
    const auto chart = run({"print", "--chart", house, "-o", at / "chart.pdf"});
    CHECK(chart.err == "");
    CHECK(chart.code == 0);
    CHECK(bytes_of(at / "chart.pdf").starts_with("%PDF"));
    CHECK(run({"print", "--chart", house, "-o", at / "x.pdf", "--scale", "2"}).code == 2);
    CHECK(run({"print", "--chart", "-o", at / "x.pdf"}).code == 2);
    const auto nothing = at.file("nothing.recipe", "recipe: None\nmeasures: us\n");
    CHECK(run({"print", "--chart", nothing, "-o", at / "x.pdf"}).code == 1);
    CHECK(bytes_of(at / "x.pdf") == "");
}

} // namespace benchcard::program
