#include "grammar/tidy.hpp"

#include <catch2/catch.hpp>

using namespace benchcard::grammar;

namespace {

/// What comes of a recipe's lines, and of that again.
void comes_out(const std::string& before, const std::string& after) {
    CHECK(tidied(before) == after);
    CHECK(tidied(after) == after);
}

} // namespace

TEST_CASE("amounts, measures and names stand in three columns a block", "[tidy]") {
    comes_out("recipe: A\n"
              "2 cups=250 g plain flour,sifted\n"
              "  1/2   cup icing sugar\n"
              "35g ground almonds ,chopped\n"
              "1 large egg\n"
              "some flour, for dusting\n"
              "- Mix.\n"
              "100 g butter   or   lard\n",
              "recipe: A\n"
              "2   cups = 250 g   plain flour, sifted\n"
              "1/2 cup            icing sugar\n"
              "35  g              ground almonds, chopped\n"
              "1                  large egg\n"
              "some               flour, for dusting\n"
              "- Mix.\n"
              "100 g              butter or lard\n");
}

TEST_CASE("each block has columns of its own, and odd amounts fit in them", "[tidy]") {
    comes_out("recipe: A\ncomponent: B\n1 g x\ncomponent: C\n"
              "about 100 g  salt\n4 x 400 g  tomatoes\na pinch of salt\n1 lb 4 oz flour\n"
              "half a lemon\n1 cup+2 tbsp water\n½ tsp é\n",
              "recipe: A\ncomponent: B\n1 g   x\ncomponent: C\n"
              "about 100 g              salt\n"
              "4 x 400   g              tomatoes\n"
              "a         pinch of       salt\n"
              "1         lb 4 oz        flour\n"
              "half a                   lemon\n"
              "1         cup + 2 tbsp   water\n"
              "½         tsp            é\n");
}

TEST_CASE("a word with room behind it counts as a measure", "[tidy]") {
    comes_out("recipe: A\n1 case   Sweet pastry\n20 cloves  garlic,  chopped\n400 g Cream\n"
              "2 ripe pears\n",
              "recipe: A\n1   case     Sweet pastry\n20  cloves   garlic, chopped\n"
              "400 g        Cream\n2            ripe pears\n");
}

TEST_CASE("settings come in their order, each with the comments above it", "[tidy]") {
    comes_out("recipe: A\n"
              "note: Well\n"
              "  kept.  # c\n"
              "# who\n"
              "# wrote it\n"
              "by:   me\n"
              "MAKES :2 tarts# x\n"
              "# at the end\n"
              "\n"
              "keeps: 3 days chilled,2 months frozen\n"
              "loss: 2% on the bench\n"
              "loss: 1% in the bowl\n"
              "1 g x\n"
              "station: oven\n"
              "per: 1 tart\n",
              "recipe: A\n"
              "makes: 2 tarts# x\n"
              "# who\n"
              "# wrote it\n"
              "by: me\n"
              "note: Well\n"
              "  kept.   # c\n"
              "# at the end\n"
              "\n"
              "loss: 2% on the bench\n"
              "loss: 1% in the bowl\n"
              "keeps: 3 days chilled, 2 months frozen\n"
              "1 g   x\n"
              "station: oven\n"
              "per: 1 tart\n");
}

TEST_CASE("in the definition of an ingredient a source stays below its figures", "[tidy]") {
    const std::string text = "recipe: A\ningredient: teff\nweighs: 160 g per cup\n"
                             "source: weighed here\nweighs: 58 g each\nsource: the mill\n"
                             "also: tef\n";
    comes_out(text, text);
}

TEST_CASE("steps keep their words and line breaks, without blanks at the ends", "[tidy]") {
    comes_out("recipe: A\n"
              "1 g x\n"
              "-   Mix  [x]   \n"
              "      for [3 min].#1   # slowly\n"
              " # all of it\n"
              "   - Rest.\n"
              "     # a while\n",
              "recipe: A\n"
              "1 g   x\n"
              "- Mix  [x]\n"
              "  for [3 min].#1   # slowly\n"
              "  # all of it\n"
              "- Rest.\n"
              "  # a while\n");
}

TEST_CASE("lines with errors stay as they are, and keep what is around them in place", "[tidy]") {
    comes_out("recipe: A\n"
              "note: B\n"
              "  what  is this\n"
              "makes: \n"
              "by:  me\n"
              "   0 g   nothing\n"
              "2  g flour\n"
              " - Step\n"
              " ??? not  a line\n",
              "recipe: A\n"
              "note: B\n"
              "  what  is this\n"
              "makes: \n"
              "by: me\n"
              "   0 g   nothing\n"
              "2 g   flour\n"
              " - Step\n"
              " ??? not  a line\n");
}

TEST_CASE("line ends, the mark at the beginning and the last line are kept", "[tidy]") {
    comes_out("\xEF\xBB\xBFrecipe:  A\r\n1 g x\r\n\r\n \r\n",
              "\xEF\xBB\xBFrecipe: A\r\n1 g   x\r\n\r\n\r\n");
    comes_out("recipe: A\r\n1 g x", "recipe: A\r\n1 g   x\r\n");
    comes_out("recipe: A", "recipe: A\n");
    comes_out("", "");
    comes_out("\n\n", "\n\n");
}
