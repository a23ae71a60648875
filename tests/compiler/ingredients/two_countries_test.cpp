#include "../recipe/reading.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

/// British and American names: those of one thing, and those that mean two.
namespace benchcard::ingredients {

namespace {

std::string entry_called(std::string_view name, country from) {
    const auto found = built_in_table().find(name, from);
    return found.match ? found.match->name : "";
}

struct pair_of_names {
    const char *british, *american;
};

constexpr pair_of_names one_thing[] = {
    {"plain flour", "all-purpose flour"},
    {"strong white flour", "bread flour"},
    {"self-raising flour", "self-rising flour"},
    {"wholemeal flour", "whole-wheat flour"},
    {"maize meal", "cornmeal"},
    {"gram flour", "garbanzo bean flour"},
    {"soya flour", "soy flour"},
    {"ground almonds", "almond meal"},
    {"flaked almonds", "sliced almonds"},
    {"caster sugar", "superfine sugar"},
    {"icing sugar", "powdered sugar"},
    {"icing sugar", "confectioners' sugar"},
    {"soft brown sugar", "brown sugar"},
    {"black treacle", "molasses"},
    {"bicarbonate of soda", "baking soda"},
    {"fast-action dried yeast", "rapid-rise yeast"},
    {"gelatine leaves", "gelatin sheets"},
    {"powdered gelatine", "unflavored gelatin"},
    {"full-fat milk", "whole milk"},
    {"semi-skimmed milk", "reduced-fat milk"},
    {"skimmed milk", "nonfat milk"},
    {"whipping cream", "heavy whipping cream"},
    {"soured cream", "sour cream"},
    {"natural yoghurt", "plain yogurt"},
    {"white vegetable fat", "shortening"},
    {"plain chocolate", "semisweet chocolate"},
    {"sultanas", "golden raisins"},
    {"vanilla pod", "vanilla bean"},
    {"vanilla essence", "vanilla extract"},
    {"courgettes", "zucchini"},
    {"aubergine", "eggplant"},
    {"swede", "rutabaga"},
    {"rocket", "arugula"},
    {"spring onions", "scallions"},
    {"beetroot", "beets"},
    {"sweetcorn", "corn kernels"},
    {"fresh coriander", "cilantro"},
    {"chilli flakes", "red pepper flakes"},
    {"tinned tomatoes", "canned tomatoes"},
    {"haricot beans", "navy beans"},
    {"butter beans", "lima beans"},
    {"broad beans", "fava beans"},
    {"chickpeas", "garbanzo beans"},
    {"porridge oats", "old-fashioned oats"},
    {"pudding rice", "short-grain rice"},
    {"sponge fingers", "ladyfingers"},
    {"filo pastry", "phyllo pastry"},
    {"prawns", "shrimp"},
    {"beef mince", "ground beef"},
    {"rapeseed oil", "canola oil"},
    {"groundnut oil", "peanut oil"},
    {"pine kernels", "pine nuts"},
    {"linseed", "flaxseed"},
    {"glace cherries", "candied cherries"},
    {"pasteurised egg whites", "pasteurized egg whites"},
};

struct two_things {
    const char *name, *british, *american;
};

/// What a name means in each country; empty where it is open there too.
constexpr two_things differing[] = {
    {"cornflour", "cornstarch", "maize flour"},
    {"corn flour", "cornstarch", "maize flour"},
    {"oatmeal", "medium oatmeal", "rolled oats"},
    {"tomato purée", "tomato paste", "passata"},
    {"biscuits", "sweet biscuit", "soft biscuit"},
    {"cider", "hard cider", "apple juice"},
    {"jelly", "table jelly", "fruit jelly"},
    {"pickle", "chutney", "gherkin"},
    {"baking chocolate", "dark chocolate", "unsweetened chocolate"},
    {"coriander", "", "ground coriander"},
    {"cream", "", ""},
    {"treacle", "", ""},
};

std::vector<std::string> said(const std::string& line, const std::string& head) {
    const auto c = testing::compiled(testing::with_lines(line, head));
    return testing::kinds_of(*c);
}

} // namespace

TEST_CASE("British and American names of one thing lead to one entry, in either country") {
    for (const auto& p : one_thing)
        for (const auto from : {country::any, country::uk, country::us}) {
            INFO(p.british << ", " << p.american);
            CHECK_FALSE(entry_called(p.british, from).empty());
            CHECK(entry_called(p.british, from) == entry_called(p.american, from));
        }
}

TEST_CASE("creams that differ in fat are entries of their own, and say how much") {
    for (const auto* name :
         {"double cream", "heavy cream", "single cream", "light cream", "clotted cream"}) {
        INFO(name);
        const auto* e = built_in_table().find(name, country::any).match;
        REQUIRE(e);
        CHECK(e->name == name);
        CHECK(std::any_of(e->notes.begin(), e->notes.end(),
                          [](const std::string& note) { return note.find("% fat") != note.npos; }));
    }
}

TEST_CASE("what a name means is decided by the country of the measures, or asked") {
    for (const auto& d : differing) {
        INFO(d.name);
        CHECK(entry_called(d.name, country::uk) == d.british);
        CHECK(entry_called(d.name, country::us) == d.american);
        CHECK(entry_called(d.name, country::any).empty());
        const auto line = std::string("100 g ") + d.name;
        using kinds = std::vector<std::string>;
        const kinds asked{"two-readings"}, settled;
        CHECK(said(line, "") == asked);
        CHECK(said(line, "measures: metric") == asked);
        CHECK(said(line, "measures: uk") == (*d.british ? settled : asked));
        CHECK(said(line, "measures: australian") == (*d.british ? settled : asked));
        CHECK(said(line, "measures: us") == (*d.american ? settled : asked));
        CHECK(said(line, "measures: canadian") == (*d.american ? settled : asked));
    }
}

TEST_CASE("a name that is open in one country lists what it may be there") {
    const auto readings = [](country from) {
        std::vector<std::string> names;
        for (const auto* e : built_in_table().find("cream", from).readings)
            names.push_back(e->name);
        return names;
    };
    using names = std::vector<std::string>;
    CHECK(readings(country::us) == names{"heavy cream", "light cream"});
    CHECK(readings(country::uk) == names{"double cream", "single cream"});
    CHECK(readings(country::any) ==
          names{"heavy cream", "double cream", "light cream", "single cream"});

    const auto c = testing::compiled(testing::with_lines("100 g cream", "measures: uk"));
    const auto& message = testing::message(*c, "two-readings");
    CHECK(message.message == "`cream` may be more than one thing");
    CHECK(testing::remarks_of(message) ==
          "it may be double cream\nit may be single cream\nname the one that is meant\n");
}

TEST_CASE("a house's own word for it settles what is meant") {
    const auto c = testing::compiled("recipe: R\n100 g cream\ningredient: cream\ncontains: milk\n");
    CHECK(testing::kinds_of(*c).empty());
}

} // namespace benchcard::ingredients
