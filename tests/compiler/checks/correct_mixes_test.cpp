#include "proportions.hpp"

/// Mixes as kitchens make them, of many cuisines and at the edges of what is usual: none of them
/// may draw a hint on proportions.
namespace benchcard::testing {

namespace {

struct sound_mix {
    std::string title, lines, steps;
};

const sound_mix sound_mixes[] = {
    {"Baguettes", "1 kg strong white flour\n650 g water\n18 g fine salt\n10 g fresh yeast", ""},
    {"Ciabatta", "500 g strong white flour\n450 g water\n10 g fine salt\n2 g instant yeast", ""},
    {"Overnight loaf", "500 g strong white flour\n400 g water\n10 g fine salt\n0.5 g instant yeast",
     "- Mix [rest]; leave [overnight]; bake at [230 C] for [45 min].\n"},
    {"Sheet pizza",
     "500 g strong white flour\n325 g water\n10 g fine salt\n42 g fresh yeast\n20 g "
     "olive oil",
     "- Mix [rest]; rise for [30 min]; bake at [250 C] for [15 min].\n"},
    {"Pizza dough", "1.7 kg Italian soft wheat flour\n1 l water\n55 g fine salt\n1 g fresh yeast",
     "- Mix [rest]; rise for [24 h]; bake at [400 C] for [2 min].\n"},
    {"Focaccia",
     "500 g strong white flour\n400 g water\n40 g olive oil\n10 g fine salt\n5 g "
     "instant yeast\n6 g flaked sea salt, for the top",
     ""},
    {"Dark rye", "1 kg dark rye flour\n850 g water\n500 g rye sourdough starter\n22 g fine salt",
     ""},
    {"Seeded rye",
     "500 g medium rye flour\n150 g sunflower seeds\n100 g linseed\n650 g water\n14 g "
     "fine salt\n300 g rye sourdough starter",
     ""},
    {"Challah",
     "1 kg strong white flour\n400 g water\n150 g eggs\n100 g honey\n90 g sunflower oil\n"
     "15 g fine salt\n12 g instant yeast",
     ""},
    {"Stollen",
     "500 g plain flour\n150 g whole milk\n200 g unsalted butter\n60 g caster sugar\n50 g "
     "fresh yeast\n3 g fine salt\n300 g raisins",
     ""},
    {"Brioche",
     "500 g strong white flour\n350 g eggs\n400 g unsalted butter\n60 g caster sugar\n12 g "
     "fine salt\n20 g fresh yeast",
     ""},
    {"Plaited sweet loaf",
     "500 g plain flour\n250 g whole milk\n80 g caster sugar\n80 g unsalted "
     "butter\n1 pinch salt\n42 g fresh yeast",
     ""},
    {"Doughnuts",
     "500 g plain flour\n200 g whole milk\n2 eggs\n60 g caster sugar\n60 g unsalted "
     "butter\n5 g fine salt\n30 g fresh yeast",
     ""},
    {"Steamed buns", "500 g plain flour\n250 g water\n5 g instant yeast\n30 g caster sugar", ""},
    {"Naan",
     "500 g strong white flour\n150 g plain yogurt\n180 g water\n8 g fine salt\n7 g active "
     "dry yeast\n5 g baking powder",
     ""},
    {"Bagels",
     "1 kg strong white flour\n550 g water\n20 g fine salt\n10 g fresh yeast\n20 g malt "
     "extract\n3 l water, for boiling\n30 g bicarbonate of soda, for the water",
     ""},
    {"Soda bread", "450 g plain flour\n350 g buttermilk\n6 g bicarbonate of soda\n6 g fine salt",
     ""},
    {"Tortillas", "500 g plain flour\n280 g water\n60 g lard\n8 g fine salt", ""},
    {"Egg yolk pasta", "400 g plain flour\n260 g egg yolks", ""},
    {"Semolina pasta", "400 g semolina\n180 g water", ""},
    {"Noodles", "500 g bread flour\n160 g water\n5 g fine salt\n5 g bicarbonate of soda", ""},
    {"Croissant dough",
     "1 kg strong white flour\n300 g water\n200 g whole milk\n100 g unsalted "
     "butter\n100 g caster sugar\n20 g fine salt\n40 g fresh yeast\n500 g "
     "laminating butter",
     ""},
    {"Blini", "250 g buckwheat flour\n400 g whole milk\n2 eggs\n8 g fresh yeast", ""},
    {"American pancakes",
     "190 g plain flour\n16 g baking powder\n300 g whole milk\n50 g egg\n40 g "
     "unsalted butter\n3 g fine salt",
     ""},
    {"Chocolate cake",
     "220 g plain flour\n60 g cocoa powder\n400 g caster sugar\n9 g bicarbonate of "
     "soda\n5 g baking powder\n5 g fine salt\n2 eggs\n240 g whole milk\n110 g "
     "vegetable oil\n8 g vanilla extract",
     ""},
    {"Pound cake", "250 g plain flour\n250 g unsalted butter\n250 g caster sugar\n250 g eggs", ""},
    {"Angel cake", "400 g egg whites\n300 g caster sugar\n120 g cake flour\n4 g cream of tartar",
     ""},
    {"Swiss roll", "4 eggs\n100 g caster sugar\n100 g plain flour", ""},
    {"Walnut sponge", "6 eggs\n180 g caster sugar\n180 g ground walnuts\n20 g fresh breadcrumbs",
     ""},
    {"Almond stars",
     "300 g ground almonds\n300 g icing sugar\n80 g egg whites\n15 g ground cinnamon", ""},
    {"Gingerbread",
     "500 g plain flour\n250 g honey\n150 g dark brown sugar\n100 g unsalted butter\n"
     "1 egg\n15 g ground ginger\n10 g ground cinnamon\n4 g ground cloves\n6 g "
     "bicarbonate of soda",
     ""},
    {"Shortbread", "300 g plain flour\n300 g unsalted butter\n100 g caster sugar\n4 g fine salt",
     ""},
    {"Hot-water pastry", "500 g plain flour\n150 g lard\n200 g water\n8 g fine salt", ""},
    {"Empanada pastry", "500 g plain flour\n90 g lard\n170 g water\n10 g fine salt", ""},
    {"Meringues", "200 g egg whites\n400 g caster sugar\n1 g fine salt", ""},
    {"Pavlova", "4 egg whites\n220 g caster sugar\n5 g cornstarch\n5 g cider vinegar", ""},
    {"Royal pie topping", "100 g egg whites\n90 g caster sugar", ""},
    {"Crème anglaise", "500 g whole milk\n120 g egg yolks\n100 g caster sugar\n1 vanilla pod", ""},
    {"Crème brûlée", "500 g double cream\n6 egg yolks\n75 g caster sugar", ""},
    {"Custard with cornflour", "1 l whole milk\n4 egg yolks\n40 g cornstarch\n80 g caster sugar",
     ""},
    {"Panna cotta", "500 g double cream\n100 g whole milk\n60 g caster sugar\n5 g leaf gelatine",
     ""},
    {"Aspic", "1 l chicken stock\n25 g gelatine powder", ""},
    {"Ganache for truffles", "400 g dark chocolate\n200 g double cream\n40 g unsalted butter", ""},
    {"Whipped ganache", "150 g white chocolate\n450 g double cream", ""},
    {"Apricot jam", "1 kg apricots\n500 g granulated sugar\n30 g lemon juice", ""},
    {"Salted caramel",
     "400 g caster sugar\n200 g double cream\n160 g unsalted butter\n10 g flaked "
     "sea salt",
     ""},
    {"Chicken curry",
     "1 kg chicken\n400 g coconut milk\n200 g onions\n10 g turmeric\n15 g ground "
     "coriander\n14 g fine salt",
     ""},
    {"Chilli beans",
     "1 kg minced beef\n800 g tinned chopped tomatoes\n480 g tinned beans\n25 g "
     "chilli powder\n3 g cayenne pepper\n18 g fine salt",
     ""},
    {"Vinaigrette", "300 g olive oil\n100 g wine vinegar\n10 g fine salt\n15 g Dijon mustard", ""},
    {"Kimchi", "2 kg cabbage\n60 g coarse salt\n60 g chilli flakes\n40 g fish sauce", ""},
    {"Tomato sauce",
     "2 kg tinned chopped tomatoes\n100 g olive oil\n20 g fine salt\n4 g dried "
     "oregano",
     ""},
    {"Frosting",
     "250 g unsalted butter\n500 g icing sugar\n30 g whole milk\n10 g vanilla extract\n"
     "1 g fine salt",
     ""},
    {"Peanut biscuits",
     "250 g peanut butter\n200 g caster sugar\n1 egg\n5 g fine salt\n4 g "
     "bicarbonate of soda",
     ""},
    {"Gluten-free loaf",
     "300 g white rice flour\n150 g tapioca starch\n50 g potato starch\n480 g "
     "water\n10 g psyllium husk\n9 g fine salt\n7 g instant yeast\n30 g olive "
     "oil",
     ""},
    {"Eggnog",
     "1 l whole milk\n500 g double cream\n8 egg yolks\n200 g caster sugar\n3 g ground "
     "nutmeg",
     ""},
    {"Rice pudding",
     "150 g short-grain rice\n1 l whole milk\n80 g caster sugar\n2 g ground "
     "cinnamon",
     ""},
};

} // namespace

TEST_CASE("mixes of many cuisines draw no hint on proportions") {
    for (const auto& m : sound_mixes) {
        INFO(m.title);
        const auto c = compiled("recipe: " + m.title + "\n" + m.lines + "\n" + m.steps);
        for (const auto& message : c->messages) {
            INFO(message.message);
            for (const auto& note : message.notes)
                CHECK_FALSE(note.text.starts_with("common practice"));
            CHECK_FALSE(message.kind.starts_with("flour-"));
        }
    }
}

} // namespace benchcard::testing
