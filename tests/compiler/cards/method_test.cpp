#include "compiler/cards/method.hpp"

#include "../recipe/reading.hpp"
#include "compiler/cards/deal.hpp"
#include "grammar/parse.hpp"

#include <rapidcheck/catch.h>

/// The steps with their amounts.
namespace benchcard::testing {

namespace {

std::string text_of(const styles::paragraph& p) {
    std::string result;
    for (const auto& run : p) result += run.text;
    return result;
}

/// The steps of a recipe's last component, a line each.
std::string method_of(const std::string& text, const exact& factor = 1) {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    const auto b = batch::scale(c->meaning, factor);
    std::string result;
    for (const auto& p : cards::method_of(b.components.back(), b)) result += text_of(p) + "\n";
    return result;
}

std::string step_of(const std::string& lines, const std::string& step, const exact& factor = 1) {
    return method_of(with_lines(lines + "\n- " + step), factor);
}

/// Every weight in grams that a text shows, added up.
exact grams_in(const std::string& text) {
    exact sum = 0;
    for (auto g = text.find(" g"); g != std::string::npos; g = text.find(" g", g + 1)) {
        auto begin = g;
        while (begin > 0 && (std::isdigit(static_cast<unsigned char>(text[begin - 1])) ||
                             text[begin - 1] == '.'))
            --begin;
        if (begin < g) sum += *grammar::parse_number(text.substr(begin, g - begin));
    }
    return sum;
}

} // namespace

TEST_CASE("a weight stands behind its name and a number before") {
    CHECK(step_of("180 g butter\n4 large eggs", "Beat [butter] with [eggs].") ==
          "Beat butter 180 g with 4 eggs.\n");
    CHECK(step_of("200 ml whole milk", "Heat [milk].") == "Heat milk 200 ml.\n");
    CHECK(step_of("some plain flour", "Dust with [flour].") == "Dust with flour.\n");
    CHECK(step_of("15-20 g natural yogurt", "Finish with [yogurt].") ==
          "Finish with yogurt 15–20 g.\n");
    CHECK(step_of("180 g butter", "Melt [butter], cool the [butter].") ==
          "Melt butter 180 g, cool the butter.\n");
}

TEST_CASE("what is counted is named in its number") {
    const std::string eggs = "1 large egg";
    CHECK(step_of(eggs, "Beat [egg].") == "Beat 1 egg.\n");
    CHECK(step_of(eggs, "Beat [egg].", 3) == "Beat 3 eggs.\n");
    CHECK(step_of("2 medium eggs", "Beat [eggs].", exact(1, 2)) == "Beat 1 egg.\n");
    CHECK(step_of("2 medium eggs", "Beat [eggs: half]; add [eggs: rest].") ==
          "Beat 1 egg; add the rest of the eggs, 1.\n");
    CHECK(step_of("20 cloves garlic", "Fry [garlic].") == "Fry 20 cloves garlic.\n");
    CHECK(step_of("20 cloves garlic", "Fry [garlic].", exact(1, 20)) == "Fry 1 clove garlic.\n");
    CHECK(step_of("1 small pear", "Peel [pear].", 8) == "Peel 8 pears.\n");
    // 1.36 US eggs of 50 g
    const std::string us_egg = "recipe: Egg\nmeasures: us\n1 large egg\n";
    CHECK(method_of(us_egg + "- Beat [egg].\n", exact(34, 25)) ==
          "Beat 1 egg + 18 g beaten egg.\n");
    // Half an egg is weighed.
    CHECK(step_of(eggs, "Beat [egg].", exact(1, 2)) ==
          "Beat egg 30 g.\n"); // 59.84 g without shell, EC 589/2008
}

TEST_CASE("parts add up to what a scale of coarse steps shows") {
    const std::string dough = "recipe: Dough\nscale-step: 5 g\n252 g butter\n"
                              "- Melt [butter: 1/3], then [butter: 1/3], then [butter: rest].\n";
    // The whole is shown as 250 g; a third of 252 g is 84 g, shown as 85 g, within 3 %.
    CHECK(method_of(dough) ==
          "Melt butter 85 g, then butter 85 g, then the rest of the butter, 80 g.\n");
    rc::prop("whatever the step and the batch", [&] {
        const exact factor(*rc::gen::inRange(1, 900), *rc::gen::inRange(1, 30));
        const auto step = *rc::gen::element<std::string>("0.1 g", "0.5 g", "1 g", "2 g", "5 g");
        const auto text = "recipe: Dough\nscale-step: " + step +
                          "\n25 g butter\n- Melt [butter: 1/3], then [butter: half], then "
                          "[butter: rest].\n";
        const auto c = compiled(text);
        const auto b = batch::scale(c->meaning, factor);
        const auto row = cards::deal(b).back().weigh_out.front();
        if (row.unit != "g" || *grammar::parse_number(row.amount) < 5) return;
        RC_ASSERT(grams_in(method_of(text, factor)) == *grammar::parse_number(row.amount));
    });
}

TEST_CASE("amounts per piece are those of one piece, whatever the batch") {
    const std::string buns = "recipe: Buns\nmakes: 24 buns\nassembly: Buns\nper: 1 bun\n5 g "
                             "butter\n- Brush with [butter].\n";
    CHECK(method_of(buns) == "For each bun: Brush with butter 5 g.\n");
    CHECK(method_of(buns, 7) == "For each bun: Brush with butter 5 g.\n");
}

TEST_CASE("pieces keep their weight, totals scale") {
    CHECK(step_of("1 kg water",
                  "Take [water]; scale at [22 g]; keep [480 g total] back for [20 min].",
                  2) == "Take water 2000 g; scale at 22 g; keep 960 g back for 20 min.\n");
}

TEST_CASE("a component named by its piece is counted by it") {
    const std::string text =
        "recipe: Tarts\nmakes: 6 tarts\ncomponent: Tart cases\nmakes: 6 cases\n600 g "
        "butter\nassembly: Tarts\nper: 1 tart\n1 case Tart cases\n- Fill [Tart cases].\n";
    CHECK(method_of(text) == "For each tart: Fill 1 Tart case.\n");
}

TEST_CASE("the parts of a line that the steps show add up to the weigh-out") {
    rc::prop("three parts in grams, the last the rest or as large as it", [] {
        const int weight = *rc::gen::inRange(2, 3000), below = *rc::gen::inRange(3, 12),
                  factor = *rc::gen::inRange(1, 30);
        const auto share = [&](int above) {
            return std::to_string(above) + "/" + std::to_string(below);
        };
        const auto last = *rc::gen::element(std::string("rest"), share(below - 2));
        const auto lines = std::to_string(weight) + " g butter\n- Melt [butter: " + share(1) +
                           "], add [butter: " + share(1) + "], then [butter: " + last + "].";
        const auto c = compiled(with_lines(lines));
        const auto b = batch::scale(c->meaning, exact(factor, 7));
        const auto shown = cards::deal(b).front().weigh_out.front();
        RC_PRE(shown.unit == "g");
        RC_ASSERT(grams_in(text_of(cards::method_of(b.components.front(), b).front())) ==
                  *grammar::parse_number(shown.amount));
    });
}

TEST_CASE("two halves of an odd weight are the weight, and no part is nothing") {
    CHECK(step_of("25 g butter", "Melt [butter: half], add [butter: half].") ==
          "Melt butter 13 g, add butter 12 g.\n");
    CHECK(step_of("19.7 g butter", "Melt [butter: 1/4], add [butter: rest].") ==
          "Melt butter 4.9 g, add the rest of the butter, 15.1 g.\n");
    CHECK(step_of("0.3 g fine salt", "Add [salt: 1/8], then [salt: rest].") ==
          "Add salt 0.04 g, then the rest of the salt, 0.26 g.\n");
    CHECK(step_of("1 kg butter", "Melt [butter: 1/3], add [butter: rest].", 20) ==
          "Melt butter 6667 g, add the rest of the butter, 13.333 kg.\n");
}

TEST_CASE("each oven has the time that follows it") {
    const auto rows = [](const std::string& steps) {
        const auto c = compiled(with_lines("100 g butter\n- Take [butter].\n" + steps));
        return cards::oven_of(c->meaning.components.front());
    };
    const auto two = rows("- Bake at [180 C] for [35-40 min], then at [160 C] for [5 min].");
    REQUIRE(two.size() == 2);
    CHECK(two[0].celsius == "180 °C");
    CHECK(two[0].time == "35–40 min");
    CHECK(two[1].time == "5 min");
    CHECK(rows("- Heat the oven to [180 C].\n- Bake at [180 C] for [20 min].").size() == 1);
    const auto time_of = [&](const std::string& steps) { return rows(steps).back().time; };
    CHECK(time_of("- Bake at [180 C] for [12 min]; brush and bake for [5-6 min] more.") ==
          "12 min + 5–6 min");
    CHECK(time_of("- Bake at [180 C] for [12 min].\n- Brush and bake for [5 min] more.") ==
          "12 min + 5 min");
    CHECK(time_of("- Bake at [180 C] for [12 min]. Cool in the tin for [30 min].") == "12 min");
    CHECK(rows("- Boil to [118 C].").empty());
}

} // namespace benchcard::testing
