#include "reading.hpp"

/// Components of one file and of those it uses.
namespace benchcard::testing {

namespace {

std::vector<std::string> titles(const commands::compiled& c) {
    std::vector<std::string> result;
    for (const auto& one : c.meaning.components) result.push_back(one.title);
    return result;
}

using names = std::vector<std::string>;

const std::string house = "recipe: House\nmeasures: uk\ningredient: house mix\nweighs: 300 g per "
                          "pint\ncontains: milk\nsource: weighed here\n"
                          "component: Cream\nmakes: 1 kg\n1 kg double cream\ncomponent: "
                          "Syrup\nmakes: 1 kg\n500 g water\n500 g caster sugar\n"
                          "component: Glaze\nmakes: 1 kg\n500 g Syrup\n500 g apricot jam\n";

} // namespace

TEST_CASE("only the components that are used come in from another file, with what they use") {
    const auto c = compiled("recipe: R\nuse: house.recipe\nassembly: End\n100 g Glaze\n",
                            {{"house.recipe", house}});
    CHECK(kinds_of(*c).empty());
    CHECK(titles(*c) == names{"Syrup", "Glaze", "End"});
}

TEST_CASE("a recipe's own component hides that of a file it uses") {
    const auto c = compiled("recipe: R\nuse: house.recipe\ncomponent: Cream\nmakes: 500 g\n500 g "
                            "whipping cream\nassembly: End\n450 g Cream\n",
                            {{"house.recipe", house}});
    CHECK(kinds_of(*c).empty());
    CHECK(titles(*c) == names{"Cream", "End"});
    CHECK(component_of(*c, "Cream").mix->used == 500);
}

TEST_CASE("a recipe's own ingredient hides that of a file it uses") {
    const auto own =
        "ingredient: house mix\nweighs: 100 g per pint\ncontains: none\nsource: weighed here\n";
    const auto text = [&](const std::string& more) {
        return "recipe: R\nmeasures: uk\nuse: house.recipe\n" + more +
               "component: End\n1 pint house mix\n";
    };
    CHECK(component_of(*compiled(text(""), {{"house.recipe", house}}), "End").mix->used == 300);
    CHECK(component_of(*compiled(text(own), {{"house.recipe", house}}), "End").mix->used == 100);
}

TEST_CASE("each file is measured by its own cups and spoons") {
    const std::string other = "recipe: O\nmeasures: metric\ncomponent: Base\n1 cup water\n";
    const auto c = compiled(
        "recipe: R\nmeasures: us-label\nuse: other.recipe\ncomponent: End\n1 cup water\nall Base\n",
        {{"other.recipe", other}});
    CHECK(kinds_of(*c).empty());
    CHECK(component_of(*c, "Base").mix->used == 250);
    CHECK(component_of(*c, "End").mix->used == 490);
}

TEST_CASE("the list of allergens is the recipe's own, or that of the files it uses") {
    const auto labels = [](const std::string& own, const std::string& first,
                           const std::string& second) {
        const auto line = [](const std::string& said) {
            return said.empty() ? "" : "labels: " + said + "\n";
        };
        const auto c = compiled("recipe: R\n" + line(own) +
                                    "use: a.recipe\nuse: b.recipe\ncomponent: End\n1 g water\n",
                                {{"a.recipe", "recipe: A\n" + line(first)},
                                 {"b.recipe", "recipe: B\n" + line(second)}});
        CHECK(kinds_of(*c).empty());
        return c->meaning.labels;
    };
    CHECK(labels("us", "eu", "eu") == "us");
    CHECK(labels("", "eu", "") == "eu");
    CHECK(labels("", "", "us") == "us");
    CHECK(labels("", "eu", "eu") == "eu");
    // Where two houses differ, both lists are followed.
    CHECK(labels("", "eu", "us") == "both");
    CHECK(labels("", "", "") == "");
}

TEST_CASE("a path is relative to the file that names it, and each file is read once") {
    const auto c = compiled(
        "recipe: R\nuse: house/a.recipe\nuse: house/b.recipe\nassembly: End\n1 g A\n1 g B\n",
        {{"house/a.recipe", "recipe: A\nuse: c.recipe\ncomponent: A\n1 g C\n"},
         {"house/b.recipe", "recipe: B\nuse: ../house/c.recipe\ncomponent: B\n1 g C\n"},
         {"house/c.recipe", "recipe: C\ncomponent: C\n2 g water\n"}});
    CHECK(kinds_of(*c).empty());
    CHECK(titles(*c) == names{"C", "A", "B", "End"});
    CHECK(c->files.sources.size() == 4);
}

TEST_CASE("files that use each other are shown as a circle, and one that is missing by its name") {
    const auto c = compiled(
        "recipe: R\nuse: a.recipe\ncomponent: End\n1 g water\n",
        {{"a.recipe", "recipe: A\nuse: b.recipe\n"}, {"b.recipe", "recipe: B\nuse: a.recipe\n"}});
    REQUIRE(kinds_of(*c) == kinds{"circular-use"});
    CHECK_THAT(remarks_of(c->messages.front()),
               Catch::Contains("a.recipe uses b.recipe uses a.recipe"));
    const auto missing = compiled("recipe: R\nuse: gone.recipe\ncomponent: End\n1 g water\n");
    REQUIRE(kinds_of(*missing) == kinds{"unreadable-file"});
    CHECK_THAT(missing->messages.front().message, Catch::Contains("gone.recipe"));
}

TEST_CASE("components made of each other are shown as a circle") {
    const auto c =
        compiled("recipe: R\ncomponent: A\n1 g B\ncomponent: B\n1 g C\ncomponent: C\n1 g A\n");
    REQUIRE(kinds_of(*c) == kinds{"circular-components"});
    CHECK_THAT(remarks_of(c->messages.front()), Catch::Contains("A uses B uses C uses A"));
    CHECK(kinds_of(*compiled("recipe: R\ncomponent: A\n1 g A\n")) == kinds{"circular-components"});
}

TEST_CASE("a component may be called by the ingredient it is made of") {
    const auto c = compiled("recipe: R\ncomponent: Rhubarb\n900 g rhubarb, cut\n100 g caster "
                            "sugar\nassembly: End\n900 g Rhubarb\n100 g caster sugar\n");
    CHECK(kinds_of(*c).empty());
    REQUIRE(c->meaning.components.size() == 2);
    const auto& rhubarb = c->meaning.components.front().lines.front();
    CHECK_FALSE(rhubarb.component);
    REQUIRE(rhubarb.what);
    CHECK(rhubarb.what->name == "rhubarb");
    CHECK(c->meaning.components.back().lines.front().component == 0u);
}

TEST_CASE("components stand after those they use, in the order of the file else") {
    const auto c = compiled("recipe: R\ncomponent: Top\n1 g Base\ncomponent: Base\n1 g "
                            "water\nassembly: End\n1 g Top\n");
    CHECK(kinds_of(*c) == kinds{"used-before-made"});
    CHECK(titles(*c) == names{"Base", "Top", "End"});
}

TEST_CASE("the assembly stands last, and there is one; a title is given once") {
    const std::string base = "recipe: R\ncomponent: Base\n1 g water\n";
    CHECK(kinds_of(*compiled(base + "assembly: End\n1 g Base\ncomponent: More\n1 g water\n")) ==
          kinds{"assembly-not-last"});
    const auto second = compiled(base + "assembly: End\n1 g Base\nassembly: Other\n1 g water\n");
    const auto found = kinds_of(*second);
    CHECK(std::count(found.begin(), found.end(), "second-assembly") == 1);
    CHECK(kinds_of(*compiled(base + "component: base\n2 g water\n")) ==
          kinds{"duplicate-component"});
}

TEST_CASE("a recipe of one part needs no component line") {
    const auto c = compiled("recipe: Syrup\nmakes: 200 g\n100 g water\n100 g caster sugar\n- Boil "
                            "[water] with [sugar].\n");
    CHECK(kinds_of(*c).empty());
    CHECK(c->meaning.product().title == "Syrup");
    CHECK(c->meaning.product().made.grams->used == 200);
}

} // namespace benchcard::testing
