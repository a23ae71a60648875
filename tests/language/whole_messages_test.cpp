#include "compiler/diagnostics/render.hpp"
#include "examples.hpp"

#include <catch2/catch.hpp>

using namespace benchcard;
using namespace benchcard::language;

namespace {

std::string rendered(const std::string& recipe,
                     const std::map<std::string, std::string>& files = {}) {
    const auto o = compile(recipe, files);
    return diagnostics::render_all(o.messages, o.files.sources, diagnostics::colour::no);
}

} // namespace

TEST_CASE("a message shows its line, the whole range, the numbers and what to do") {
    CHECK(
        rendered("recipe: Buns\n"
                 "makes: 40 rounds of 22 g   # small ones\n"
                 "loss: 2% in the bowl\n"
                 "857 g plain flour\n") ==
        R"(example.recipe:2:8: error: 40 rounds of 22 g need 880 g, and the mix gives 840 g [mix-too-small]
   2 | makes: 40 rounds of 22 g   # small ones
     |        ^^^^^^^^^^^^^^^^^
     = note: the ingredients weigh 857 g, less 2 % in the bowl
     = note: 840 g make 38 rounds of 22 g, or 40 of 20 g
1 error
)");
}

TEST_CASE("a note with a place of its own shows that line, in whatever file it is") {
    CHECK(
        rendered(
            "recipe: Tart\nuse: house.recipe\n3 sheets Pastry\n",
            {{"house.recipe",
              "recipe: House\ncomponent: Pastry\nmakes: 2 cases of 200 g\n400 g plain flour\n"}}) ==
        R"(example.recipe:3:3: error: Pastry makes cases, not sheets [unknown-piece]
   3 | 3 sheets Pastry
     |   ^^^^^^^^^^^^^
house.recipe:3:8: note: this is what it makes
   3 | makes: 2 cases of 200 g
     |        ^^^^^^^^^^^^^^^^
1 error
)");
}

TEST_CASE("messages of all levels stand in the order of the text, and are counted") {
    CHECK(
        rendered("recipe: Brioche\n"
                 "100 g wholly unknown thing\n"
                 "2 heaped tsp fine salt\n"
                 "flour 200 g\n") ==
        R"(example.recipe:2:7: hint: `wholly unknown thing` is not in the ingredient table: its allergens are not known [unknown-ingredient]
   2 | 100 g wholly unknown thing
     |       ^^^^^^^^^^^^^^^^^^^^
example.recipe:3:1: warning: heaped, rounded and scant are not measures: one cook's is another's and a half [not-a-measure]
   3 | 2 heaped tsp fine salt
     | ^^^^^^^^^^^^
     = note: heaped may mean from 1¼ to 2 level ones (common practice)
     = help: give level measures, or the weight as well
example.recipe:4:1: error: a line is a setting (`makes: 2 tarts`), an ingredient (`200 g plain flour`) or a step (`- Mix.`), and this is none of them [unreadable-line]
   4 | flour 200 g
     | ^^^^^^^^^^^
     = help: an ingredient line begins with its amount: `200 g   flour`
1 error, 1 warning, 1 hint
)");
}
