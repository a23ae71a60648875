#include "../recipe/reading.hpp"

#include <catch2/catch.hpp>

#include <string>

/// Ingredients that a house defines, beside those of the table.
namespace benchcard::testing {

namespace {

std::string defined(const std::string& name, const std::string& weighs) {
    return "ingredient: " + name + "\nweighs: " + weighs +
           "\nsource: weighed here\ncontains: wheat\n";
}

kinds said_of(const std::string& name, const std::string& weighs) {
    return kinds_of(*compiled(with_lines("1 cup " + name, "measures: us") + defined(name, weighs)));
}

const kinds silent, differs{"differs-from-table"};

} // namespace

TEST_CASE("an own ingredient is compared with the range that the table gives") {
    // A US cup of plain flour: 113.4 g sifted to 141.7 g scooped.
    CHECK(said_of("plain flour", "114 g per cup") == silent);
    CHECK(said_of("plain flour", "141 g per cup") == silent);
    CHECK(said_of("plain flour", "112 g per cup") == differs);
    CHECK(said_of("plain flour", "143 g per cup") == differs);
    // By another of its names too, but not by a name that only ends in it.
    CHECK(said_of("all-purpose flour", "143 g per cup") == differs);
    CHECK(said_of("Plain Flours", "143 g per cup") == differs);
    CHECK(said_of("teff flour of ours", "143 g per cup") == silent);
    CHECK(said_of("our plain flour", "170 g per cup") == silent);
    // Where the table has one figure, that is the range.
    CHECK(said_of("polenta", "157 g per cup") == silent);
    CHECK(said_of("polenta", "160 g per cup") == differs);
    // The size of the measure does not matter.
    CHECK(said_of("polenta", "79 g per 1/2 cup") == differs);
    // What the table has no figure for cannot differ.
    CHECK(said_of("potato starch", "160 g per cup") == silent);
}

TEST_CASE("the note names the table's range, its source, and what counts") {
    const auto c = compiled(with_lines("1 cup plain flour", "measures: us") +
                            defined("plain flour", "170 g per cup"));
    const auto& m = message(*c, "differs-from-table");
    CHECK(m.level == grammar::severity::hint);
    CHECK(m.message.find("71.9 g for 100 ml") != std::string::npos);
    CHECK(remarks_of(m).find("47.9 to 59.9 g") != std::string::npos);
    CHECK(remarks_of(m).find("NDB 20081") != std::string::npos);
    // The own figure counts all the same.
    CHECK(component_of(*c, "Mix").lines.front().grams->used == 170);
    CHECK_FALSE(component_of(*c, "Mix").lines.front().what->built_in);
}

TEST_CASE("an own ingredient of a used file is compared too, and pointed at in that file") {
    const std::string house =
        "recipe: House\nmeasures: us\n" + defined("plain flour", "170 g per cup");
    const auto text = "recipe: R\nmeasures: us\nuse: house.recipe\ncomponent: Mix\n"
                      "1 cup plain flour\n";
    const auto c = compiled(text, {{"house.recipe", house}});
    REQUIRE(kinds_of(*c) == differs);
    const auto& m = message(*c, "differs-from-table");
    REQUIRE(m.where.file < c->files.sources.size());
    CHECK(c->files.sources[m.where.file].name() == "house.recipe");
    CHECK(component_of(*c, "Mix").lines.front().grams->used == 170);

    const auto within =
        compiled(text, {{"house.recipe", "recipe: House\nmeasures: us\n" +
                                             defined("plain flour", "130 g per cup")}});
    CHECK(kinds_of(*within) == silent);
    CHECK(component_of(*within, "Mix").lines.front().grams->used == 130);
}

} // namespace benchcard::testing
