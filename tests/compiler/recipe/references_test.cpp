#include "reading.hpp"

/// What the brackets of steps mean.
namespace benchcard::testing {

namespace {

std::unique_ptr<commands::compiled> steps(const std::string& lines, const std::string& method) {
    return compiled(with_lines(lines + "\n" + method));
}

kinds kinds_in(const std::string& lines, const std::string& method) {
    return kinds_of(*steps(lines, method));
}

/// The uses of lines in all steps, in order.
std::vector<recipe::line_use> uses(const commands::compiled& c) {
    std::vector<recipe::line_use> result;
    for (const auto& s : c.meaning.components.front().steps)
        for (const auto& part : s.parts)
            if (const auto* u = std::get_if<recipe::use>(&part))
                if (const auto* l = std::get_if<recipe::line_use>(u)) result.push_back(*l);
    return result;
}

const std::string two = "100 g butter, soft\n150 g caster sugar";
const std::string sugars = "100 g caster sugar\n50 g icing sugar, sifted";

} // namespace

TEST_CASE("any words that single a line out name it") {
    for (const auto* said :
         {"caster sugar", "Caster Sugars", "caster", "castor sugar", "superfine sugar"}) {
        INFO(said);
        CHECK(kinds_in("100 g caster sugar\n50 g butter",
                       "- Beat [" + std::string(said) + "] with [butter].")
                  .empty());
    }
    CHECK(kinds_in(sugars, "- Beat [caster sugar]; dust with [sifted sugar].").empty());
    CHECK(kinds_in("100 g butter, soft\n50 g butter, cold",
                   "- Beat [soft butter], rub in [cold butter].")
              .empty());
}

TEST_CASE("of two spellings the one that the ingredient table has is taken for right") {
    const auto mended = [](const std::string& line, const std::string& said) {
        const auto c = steps(line + "\n100 g sugar", "- Beat [" + said + "] with [sugar].");
        const auto& help = message(*c, "unknown-reference").helps.front();
        if (help.edits.empty()) return help.text;
        std::string text(c->files.sources.front().text());
        const auto& e = help.edits.front();
        text.replace(e.where.begin, e.where.end - e.where.begin, e.text);
        const auto begin = text.find(" g ") + 3;
        return text.substr(begin, text.find('\n', begin) - begin) + " | " +
               text.substr(text.find('['), text.find(']') - text.find('[') + 1);
    };
    CHECK(mended("100 g buter", "butter") == "butter | [butter]");
    CHECK(mended("100 g cold buter, diced", "butter") == "cold butter, diced | [butter]");
    CHECK(mended("100 g butter", "buter") == "butter | [butter]");
    CHECK(mended("100 g moon sago", "moon saga") == "moon sago | [moon sago]"); // neither is known
}

TEST_CASE("of two lines of one name the weighed one is meant, and the other by its purpose") {
    const auto c = steps("500 g plain flour\nsome plain flour, for dusting\n300 g water",
                         "- Mix [flour] and [water]; dust with [dusting].");
    CHECK(kinds_of(*c).empty());
    const auto found = uses(*c);
    REQUIRE(found.size() == 3);
    CHECK(found[0].line == 0);
    CHECK(found[2].line == 1);
    CHECK(kinds_in("500 g plain flour\n20 g plain flour, for dusting",
                   "- Mix [flour]; [dusting].") == kinds{"ambiguous-reference"});
}

TEST_CASE("words of two lines are ambiguous, and both are named") {
    const auto c = steps(sugars, "- Beat [sugar].\n- Add [caster sugar] and [icing sugar].");
    REQUIRE(kinds_of(*c) == kinds{"ambiguous-reference"});
    CHECK_THAT(remarks_of(c->messages.front()),
               Catch::Contains("caster sugar") && Catch::Contains("icing sugar, sifted"));
    // A line so named exactly is meant before one that only has the word.
    CHECK(kinds_in("100 g sugar\n50 g icing sugar", "- Beat [sugar] and [icing sugar].").empty());
}

TEST_CASE("words of no line are an error that lists the lines") {
    const auto c = steps(two, "- Beat [butter] with [caster sugar] and [salt].");
    REQUIRE(kinds_of(*c) == kinds{"unknown-reference"});
    CHECK_THAT(remarks_of(c->messages.front()), Catch::Contains("butter, caster sugar"));
}

TEST_CASE("the parts of a line add up to it") {
    CHECK(kinds_in(two, "- Melt [butter: half] with [sugar].\n- Add [butter: rest].").empty());
    CHECK(kinds_in(two, "- Melt [butter: 1/3] with [sugar].\n- Add [butter: 2/3].").empty());
    CHECK(kinds_in(two, "- Melt [butter: 30 g] with [sugar].\n- Add [butter: 70 g].").empty());
    CHECK(kinds_in("6 large eggs", "- Beat [eggs: 2].\n- Add [eggs: 4].").empty());
    CHECK(kinds_in("600 ml water", "- Boil [water: 200 ml]; add [water: 400 ml].").empty());
    CHECK(kinds_in("1 kg water", "- Boil [water: 250 g]; add [water: 3/4].").empty());
    CHECK(kinds_in(two, "- Melt [butter: half] with [sugar].") == kinds{"parts-do-not-add-up"});
    CHECK(kinds_in(two, "- Melt [butter: 30 g] with [sugar].\n- Add [butter: 60 g].") ==
          kinds{"parts-do-not-add-up"});
}

TEST_CASE("more than the whole is an error") {
    const auto c = steps(two, "- Melt [butter: 60 g] with [sugar].\n- Add [butter: 60 g].");
    REQUIRE(kinds_of(*c) == kinds{"parts-exceed-whole"});
    CHECK(c->messages.front().message == "the steps use 120 % of the butter");
    CHECK(kinds_in(two, "- Melt [butter] with [sugar].\n- Add [butter: half].") ==
          kinds{"parts-exceed-whole"});
    CHECK(kinds_in(two, "- Melt [butter: 101 g] with [sugar].") == kinds{"parts-exceed-whole"});
}

TEST_CASE("the rest of nothing is an error") {
    CHECK(kinds_in(two, "- Melt [butter] with [sugar].\n- Add [butter: rest].") ==
          kinds{"nothing-left"});
    CHECK(
        kinds_in(two,
                 "- Melt [butter: half] and [butter: half] with [sugar].\n- Add [butter: rest].") ==
        kinds{"nothing-left"});
    CHECK(kinds_in(two, "- Melt [butter] with [sugar].\n- Add [rest].") == kinds{"nothing-left"});
    CHECK(kinds_in("some flour\n100 g butter", "- Dust with [flour: half]; add [butter].") ==
          kinds{"part-of-some"});
}

TEST_CASE("a part that is taken after the rest is an error that shows where the rest went") {
    const auto c = steps(two, "- Melt [butter: rest] with [sugar].\n- Add [butter: half].");
    REQUIRE(kinds_of(*c) == kinds{"rest-before-part"});
    const auto& m = c->messages.front();
    CHECK(m.message == "a part of the butter is taken after its rest was");
    REQUIRE(m.notes.size() == 1);
    CHECK(m.notes.front().text == "all that was left of it is used here");
    CHECK(c->files.sources.front().text_of(*m.notes.front().where) == "[butter: rest]");
    CHECK(c->files.sources.front().text_of(m.where) == "[butter: half]");
    CHECK(kinds_in(two, "- Melt [butter: half] with [sugar]; add [butter: rest], and no more "
                        "[butter].")
              .empty());
}

TEST_CASE("a part in another measure cannot be compared") {
    CHECK(kinds_in("6 wild boar sausages", "- Fry [sausages: 3 g]; add [sausages: rest].") ==
          kinds{"no-piece-weight", "part-cannot-be-compared"});
    CHECK(kinds_in("100 g butter", "- Melt [butter: 2].") == kinds{"part-cannot-be-compared"});
}

TEST_CASE("shares are exact, and a rest is what is left") {
    const auto c = steps(
        two, "- Melt [butter: 1/3] with [sugar].\n- Add [butter: 1/4].\n- Add [butter: rest].");
    const auto found = uses(*c);
    REQUIRE(found.size() == 4);
    CHECK(*found[0].share == exact(1, 3));
    CHECK(*found[1].share == 1);
    CHECK(*found[2].share == exact(1, 4));
    CHECK(*found[3].share == exact(5, 12));
    CHECK(found[3].is_rest);
    CHECK_FALSE(found[1].is_part);
}

TEST_CASE("a line named again is only spoken of") {
    const auto c = steps(two, "- Melt [butter] with [sugar].\n- Cool the [butter].");
    CHECK(kinds_of(*c).empty());
    const auto found = uses(*c);
    CHECK(found[0].share);
    CHECK_FALSE(found.back().share);
}

TEST_CASE("the rest of the block is every line not used before") {
    const auto c =
        steps("100 g butter\n150 g caster sugar\n3 g fine salt\n2 large eggs",
              "- Beat [butter] with [sugar: half].\n- Add [sugar: rest] and then [rest].");
    CHECK(kinds_of(*c).empty());
    for (const auto& part : c->meaning.components.front().steps.back().parts)
        if (const auto* u = std::get_if<recipe::use>(&part))
            if (const auto* r = std::get_if<recipe::rest_use>(u))
                CHECK(r->lines == std::vector<std::size_t>{2, 3});
}

TEST_CASE("an ingredient that no step uses is shown; some and optional ones are exempt") {
    const auto c = steps(two, "- Melt [butter].");
    REQUIRE(kinds_of(*c) == kinds{"unused-ingredient"});
    CHECK(c->messages.front().level == grammar::severity::warning);
    CHECK(kinds_in("100 g butter\nsome flour, for dusting", "- Melt [butter].").empty());
    CHECK(kinds_in("100 g butter\n10 g flaked almonds, optional", "- Melt [butter].").empty());
    // Without any step nothing is asked for.
    CHECK(kinds_in(two, "").empty());
}

TEST_CASE("a plain mention is a hint with the fix") {
    const auto c = steps(two, "- Melt the butter with [sugar].");
    REQUIRE(kinds_of(*c) == kinds{"plain-mention"});
    const auto& m = c->messages.front();
    CHECK(m.level == grammar::severity::hint);
    REQUIRE(m.helps.size() == 1);
    REQUIRE(m.helps.front().edits.size() == 1);
    CHECK(m.helps.front().edits.front().text == "[butter]");
    const auto& e = m.helps.front().edits.front().where;
    CHECK(c->files.sources.front().text().substr(e.begin, e.end - e.begin) == "butter");
}

TEST_CASE("what a step shows as heat is an oven's or a thermometer's") {
    const auto is_oven = [](const std::string& step) {
        const auto c = steps("100 g butter", "- Take [butter]. " + step);
        for (const auto& part : c->meaning.components.front().steps.front().parts)
            if (const auto* u = std::get_if<recipe::use>(&part))
                if (const auto* h = std::get_if<recipe::heat_use>(u)) return h->is_oven;
        FAIL("no heat in " << step);
        return false;
    };
    CHECK(is_oven("Bake at [180 C] for [20 min]."));
    CHECK(is_oven("Leave at [160 C fan] for [20 min]."));
    CHECK(is_oven("At [gas 4]."));
    CHECK_FALSE(is_oven("Boil the syrup to [118 C]."));
    CHECK_FALSE(is_oven("Keep below [5 C]."));
}

} // namespace benchcard::testing
