#include "reading.hpp"

#include <catch2/catch.hpp>

using namespace benchcard::grammar;

namespace {

/// The text with the first help's edits made.
std::string mended(const std::string& text) {
    const reading r(text);
    REQUIRE_FALSE(r.result.messages.empty());
    REQUIRE_FALSE(r.result.messages[0].helps.empty());
    auto result = std::string(r.text.text());
    const auto& edits = r.result.messages[0].helps[0].edits;
    for (auto e = edits.rbegin(); e != edits.rend(); ++e)
        result.replace(e->where.begin, e->where.end - e->where.begin, e->text);
    return result;
}

std::string mended_line(const std::string& line, const std::string& head = "recipe: A\n") {
    const auto text = mended(head + line + "\n");
    return text.substr(head.size(), text.size() - head.size() - 1);
}

std::string first_help(const std::string& line) {
    const reading r("recipe: A\n" + line + "\n");
    REQUIRE_FALSE(r.result.messages.empty());
    return r.result.messages[0].helps.empty() ? "" : r.result.messages[0].helps[0].text;
}

} // namespace

TEST_CASE("the mending that is offered for a line is what was most likely meant") {
    const std::pair<std::string, std::string> cases[] = {
        // Amounts behind the name
        {"plain flour 200 g", "200 g   plain flour"},
        {"Plain flour: 200g", "200g   Plain flour"},
        {"flour: 200 g", "200 g   flour"},
        {"caster sugar ..... 100 g", "100 g   caster sugar"},
        {"tin of tomatoes 400 g", "400 g   tin of tomatoes"},
        {"raw honey 20 g", "20 g   raw honey"},
        {"pinch of salt", "1 pinch of salt"},
        {"cup water", "1 cup water"},
        // Settings without their colon, or in two words
        {"makes 12 rolls", "makes: 12 rolls"},
        {"serves 8", "serves: 8"},
        {"tin 23 cm round", "tin: 23 cm round"},
        {"at most 4 kg", "at-most: 4 kg"},
        {"at most: 4 kg", "at-most: 4 kg"},
        {"whole batch: yes", "whole-batch: yes"},
        {"loss 8% in the oven", "loss: 8% in the oven"},
        {"keeps 3 days chilled", "keeps: 3 days chilled"},
        // Settings by another word
        {"revison: 3", "revision: 3"},
        {"yield: 2 tarts", "makes: 2 tarts"},
        {"Servings: 8", "serves: 8"},
        {"storage: 3 days chilled", "keeps: 3 days chilled"},
        // Lists from elsewhere
        {"* Mix well.", "- Mix well."},
        {"• Mix well.", "- Mix well."},
        {"-Mix well.", "- Mix well."},
        {"– Mix well.", "- Mix well."},
        {"• 200 g flour", "200 g flour"},
        {"- 200 g plain flour", "200 g plain flour"},
        {"1. Mix well.", "- Mix well."},
        {"2) Mix well.", "- Mix well."},
        {"Mix everything until it is smooth.", "- Mix everything until it is smooth."},
        // Headings
        {"Filling:", "component: Filling"},
        {"For the filling:", "component: filling"},
        {"Method:", ""},
        // Brackets
        {"- Melt [50 g butter].", "- Melt [butter: 50 g]."},
        {"- Add [2 eggs].", "- Add [eggs: 2]."},
        {"- Bake at [180 C / 350 F].", "- Bake at [180 C]."},
    };
    for (const auto& [line, wanted] : cases) {
        INFO(line);
        CHECK(mended_line(line) == wanted);
    }
}

TEST_CASE("a mended line reads without a message") {
    for (const auto* line :
         {"plain flour 200 g", "makes 12 rolls", "* Mix well.", "Filling:", "revison: 3",
          "- Melt [50 g butter].", "at most: 4 kg", "pinch of salt", "- Bake at [180 C (350 F)].",
          "whole batch yes", "1) Mix.", "- 200 g plain flour"}) {
        INFO(line);
        CHECK(reading("recipe: A\n" + mended_line(line) + "\n").messages().empty());
    }
}

TEST_CASE("where two things may be meant, both are said and neither is done") {
    const reading r("recipe: A\nsalt and pepper\n");
    REQUIRE(r.result.messages.at(0).helps.size() == 2);
    CHECK(r.result.messages[0].helps[0].text ==
          "if it is an ingredient, how much of it comes first: `200 g salt and pepper`, or `some "
          "salt and pepper`");
    CHECK(r.result.messages[0].helps[1].text == "if it is a step: `- salt and pepper`");
    CHECK(r.result.messages[0].helps[0].edits.empty());
}

TEST_CASE("a word that begins like a setting is not taken for one whose value it cannot have") {
    CHECK(first_help("use the blender") !=
          "a setting is its word, a colon and its value: `use: the blender`");
    CHECK(first_help("per person, about a spoonful").find("per:") == std::string::npos);
    CHECK(first_help("makes a firm dough when kneaded well.").find("makes:") == std::string::npos);
}

TEST_CASE("a value that cannot be read is answered with the setting's own example") {
    CHECK(first_help("tin: large") == "for example `tin: 23 cm round`");
    CHECK(first_help("serves: many") == "for example `serves: 8`");
    CHECK(first_help("at-most: 4") == "for example `at-most: 4 kg`");
    CHECK(first_help("makes:") == "for example `makes: 40 rounds of 22 g`");
}

TEST_CASE("what is quoted back is short") {
    const std::string much(5000, 'x');
    for (const auto& line :
         {much, much + ": y", "x: " + much, "- [1 " + much + "]", much + " 200 g", "* " + much}) {
        const reading r("recipe: A\n" + line + "\n");
        for (const auto& m : r.result.messages) {
            CHECK(m.message.size() < 400);
            for (const auto& h : m.helps) CHECK(h.text.size() < 600);
        }
    }
}

TEST_CASE("a step that begins with a number is not taken for an ingredient") {
    CHECK(reading("recipe: A\n- 200 g of it go into each tin.\n").messages().empty());
    CHECK(reading("recipe: A\n- 3 hours later, fold.\n").messages().empty());
    CHECK(reading("recipe: A\n- 50 g [butter] first\n").messages().empty());
}
