#include "examples.hpp"
#include "grammar/tidy.hpp"
#include "tidy_fault.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <rapidcheck.h>

using namespace benchcard;
using namespace benchcard::language;

namespace {

/// The files beside a recipe, as it names them.
std::map<std::string, std::string> files_beside(const std::filesystem::path& folder) {
    std::map<std::string, std::string> result;
    for (const auto& e : std::filesystem::recursive_directory_iterator(folder))
        if (e.path().extension() == ".recipe")
            result[e.path().lexically_relative(folder).string()] = text_of(e.path().string());
    return result;
}

rc::Gen<std::string> line_of_recipe() {
    return rc::gen::elementOf(std::vector<std::string>{
        "component: Dough",
        "  component:  Cream # c",
        "assembly: Buns",
        "ingredient: teff",
        "makes: 4 buns",
        "makes:4  rounds of 20 g",
        "serves : 4",
        "measures: us",
        "measures:metric",
        "loss:2% in the bowl,3% on the bench",
        "keeps: 3 days chilled , 2 months frozen   # cold",
        "station: oven",
        "tin: 20 x 30 cm",
        "note: Well\n   kept. # c\n # d",
        "caution:  Hot \\# [x]",
        "accept: salt-low, it is meant",
        "weighs: 160 g per cup sifted,58 g each",
        "source: weighed here",
        "contains: wheat",
        "2 cups=250 g plain flour",
        " 1 1/2 tsp  salt, fine ,dry",
        "3-4 large   eggs",
        "1 case   Dough",
        "half Cream",
        "1 lb 4 oz plain flour or rye flour # c",
        "some  caster sugar,for dusting",
        "about 5g yeast",
        "- Mix  [flour] \n   with [salt: half].#1",
        "  - Bake at [180 C] # hot\n    for [3 min].",
        "-",
        " # alone",
        "",
        "   ",
        "   ??? what",
        "???",
        "makes:",
        " 0 g x",
    });
}

} // namespace

TEST_CASE("examples are in order", "[tidy]") {
    for (const auto& [name, text] : files_beside(BENCHCARD_SOURCE_DIR "/examples")) {
        INFO(name);
        CHECK(grammar::tidied(text) == text);
    }
}

TEST_CASE("no example changes its meaning when it is put in order", "[tidy]") {
    for (const auto* folder : {"/examples", "/tests/recipes", "/compiler/ingredients"}) {
        const auto files = files_beside(BENCHCARD_SOURCE_DIR + std::string(folder));
        REQUIRE_FALSE(files.empty());
        for (const auto& [name, text] : files) {
            INFO(name);
            CHECK(fault_of_tidying(text, files) == "");
        }
    }
    for (const auto& e : all_examples()) {
        if (e.is_style) continue;
        INFO(e.line << ": " << e.recipe);
        CHECK(fault_of_tidying(e.recipe, e.files) == "");
    }
}

TEST_CASE("no made-up recipe changes its meaning when it is put in order", "[tidy]") {
    CHECK(rc::check([] {
        auto text = std::string("recipe: A\n");
        for (const auto& line : *rc::gen::container<std::vector<std::string>>(line_of_recipe()))
            text += line + *rc::gen::element<std::string>("\n", "\n", "\r\n");
        RC_ASSERT(fault_of_tidying(text, {}) == "");
    }));
}

TEST_CASE("a block may be put in order where the one below it was", "[tidy]") {
    // While `component:` is indented it would go on with a step moved to the left above it.
    CHECK(fault_of_tidying("recipe: A\n  - Bake at [180 C] # hot\n    for [3 min].\n"
                           "  component:  Cream # c\n  component:  Cream # c\r\nnote: Well\n"
                           "   kept. # c\n # d\nmakes: 4 buns\r\n 0 g x\n",
                           {}) == "");
}
