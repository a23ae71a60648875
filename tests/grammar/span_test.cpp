#include "grammar/show.hpp"
#include "reading.hpp"

#include <catch2/catch.hpp>

using namespace benchcard::grammar;

namespace {

/// The setting of a recipe that has one, behind the line that names it.
const setting& setting_in(const reading& r) { return r.only<setting>(); }

template <typename Value> const Value& value_in(const reading& r) {
    return std::get<Value>(setting_in(r).value);
}

} // namespace

TEST_CASE("an ingredient line's spans cover what was written") {
    const reading r("recipe: A\n  about 1½ heaped cups  +  2 tbsp. = 250 g   plain  flour or rye   "
                    "flour , sifted ,  cold  # c\n");
    const auto& l = r.only<ingredient_line>();
    CHECK(r.at(l.where) == "  about 1½ heaped cups  +  2 tbsp. = 250 g   plain  flour or rye   "
                           "flour , sifted ,  cold  # c");
    CHECK(r.at(l.amounts.at(0).where) == "about 1½ heaped cups");
    CHECK(r.at(l.amounts.at(0).quantity.where) == "about 1½");
    CHECK(r.at(l.amounts.at(1).where) == "2 tbsp.");
    CHECK(r.at(l.equals.at(0).where) == "250 g");
    CHECK(r.at(l.names.at(0).where) == "plain  flour");
    CHECK(l.names.at(0).text == "plain flour");
    CHECK(r.at(l.names.at(1).where) == "rye   flour");
    CHECK(r.at(l.preparations.at(0).where) == "sifted");
    CHECK(r.at(l.preparations.at(1).where) == "cold");
    const auto& c = r.result.tree.blocks.at(1).items.at(0).comments.at(0);
    CHECK(r.at(c.where) == "# c");
    CHECK(c.text == "# c");
}

TEST_CASE("a counted piece's span covers it") {
    const reading r("recipe: A\n6 leaves = 10 g gelatine\n");
    CHECK(r.at(r.only<ingredient_line>().piece->where) == "leaves");
    CHECK(r.at(r.only<ingredient_line>().amounts.at(0).where) == "6");
}

TEST_CASE("a step's spans cover what was written") {
    const reading r("recipe: A\n-  Beat [ caster sugar : 50 g ]  for\n   [3 min]  # c\n");
    const auto& s = r.only<step>();
    CHECK(r.at(s.where) == "-  Beat [ caster sugar : 50 g ]  for\n   [3 min]  # c");
    CHECK(r.at(std::get<words>(s.parts.at(0)).where) == "Beat ");
    const auto& b = std::get<bracket>(s.parts.at(1));
    CHECK(r.at(b.where) == "[ caster sugar : 50 g ]");
    const auto& name = std::get<reference>(b.holds);
    CHECK(r.at(name.name.where) == "caster sugar");
    CHECK(r.at(name.of->where) == "50 g");
    CHECK(r.at(name.of->of.quantity.where) == "50");
    CHECK(r.at(std::get<words>(s.parts.at(2)).where) == "  for");
    CHECK(r.at(std::get<bracket>(s.parts.back()).where) == "[3 min]");
}

TEST_CASE("every bracket's amounts have their places") {
    const reading r("recipe: A\n- [150-160 C fan = gas 3] [about 20 x 30 cm round] [22 g] [rest] "
                    "[x: rest] [x: 1/3]\n");
    const auto& parts = r.only<step>().parts;
    const auto holds = [&](std::size_t i) { return std::get<bracket>(parts.at(i)).holds; };
    const auto heat = std::get<temperature>(holds(0));
    CHECK(r.at(heat.degrees.where) == "150-160");
    CHECK(r.at(heat.equals->first.where) == "3");
    CHECK(r.at(std::get<length>(holds(2)).sides.at(0).where) == "about 20 x 30");
    CHECK(r.at(std::get<piece_measure>(holds(4)).of.where) == "22 g");
    CHECK(r.at(std::get<reference>(holds(8)).of->where) == "rest");
    CHECK(r.at(std::get<reference>(holds(10)).of->where) == "1/3");
}

TEST_CASE("a setting's spans cover it, its word and its value, and no comment") {
    const reading r("recipe: A\n  Makes :  40 small rounds of 20-22 g   # c\n");
    const auto& s = setting_in(r);
    CHECK(r.at(s.where) == "  Makes :  40 small rounds of 20-22 g   # c");
    CHECK(r.at(s.key_where) == "Makes");
    CHECK(r.at(s.value_where) == "40 small rounds of 20-22 g");
    const auto& y = value_in<yield>(r);
    CHECK(r.at(y.count->where) == "40");
    CHECK(r.at(y.piece->where) == "small rounds");
    CHECK(r.at(y.each->where) == "20-22 g");
}

TEST_CASE("each form of a value has its places") {
    CHECK(reading("recipe: A\nmakes: 1.2 l # c\n").messages().empty());
    const reading whole("recipe: A\nmakes: 1.2 l # c\n");
    CHECK(whole.at(value_in<yield>(whole).whole->where) == "1.2 l");
    const reading by("recipe: A\nby:  the   bench # c\n");
    CHECK(by.at(value_in<words>(by).where) == "the   bench");
    CHECK(value_in<words>(by).text == "the bench");
    const reading note("recipe: A\nnote: One # c\n  two.  # d\n");
    CHECK(note.at(value_in<words>(note).where) == "One # c\n  two.");
    CHECK(note.at(setting_in(note).value_where) == "One # c\n  two.");
    CHECK(value_in<words>(note).text == "One two.");
    const reading list("recipe: A\nrequire: keeps ,  station # c\n");
    CHECK(list.at(value_in<std::vector<words>>(list).at(0).where) == "keeps");
    CHECK(list.at(value_in<std::vector<words>>(list).at(1).where) == "station");
    const reading lost("recipe: A\nloss: 8 % in the oven, 2% # c\n");
    CHECK(lost.at(value_in<std::vector<loss>>(lost).at(0).place.where) == "in the oven");
    CHECK(value_in<std::vector<loss>>(lost).at(1).place.text.empty());
    const reading kept("recipe: A\nkeeps: 3 days chilled, best fresh # c\n");
    CHECK(kept.at(value_in<std::vector<keeping>>(kept).at(0).text.where) == "3 days chilled");
    CHECK(kept.at(value_in<std::vector<keeping>>(kept).at(0).place.where) == "chilled");
    CHECK(kept.at(value_in<std::vector<keeping>>(kept).at(1).text.where) == "best fresh");
    const reading tinned("recipe: A\ntin: 20 x 30 cm deep # c\n");
    CHECK(tinned.at(std::get<length>(value_in<tin>(tinned).size).sides.at(1).where) == "20 x 30");
    CHECK(tinned.at(value_in<tin>(tinned).shape.where) == "deep");
    const reading loaf("recipe: A\ntin: 900 g loaf\n");
    CHECK(loaf.at(std::get<measure>(value_in<tin>(loaf).size).where) == "900 g");
    const reading figures("recipe: A\ningredient: x\nweighs: 160-165 g per 1/2 cup sifted, 3 g per "
                          "clove, 58 g each us large\n");
    const auto& f = value_in<std::vector<weight_figure>>(figures);
    CHECK(figures.at(f.at(0).where) == "160-165 g per 1/2 cup sifted");
    CHECK(figures.at(f.at(0).mass.where) == "160-165 g");
    CHECK(figures.at(std::get<measure>(f.at(0).per).where) == "1/2 cup");
    CHECK(figures.at(f.at(0).state.where) == "sifted");
    CHECK(figures.at(std::get<words>(f.at(1).per).where) == "clove");
    CHECK(figures.at(f.at(2).state.where) == "us large");
    const reading cost("recipe: A\ningredient: x\ncosts: 4.20 per 1 kg\n");
    CHECK(cost.at(value_in<price>(cost).per.where) == "1 kg");
    const reading most("recipe: A\nat-most: 4 kg # c\n");
    CHECK(most.at(value_in<measure>(most).where) == "4 kg");
}

TEST_CASE("blocks, comments, empty and unread lines have their places") {
    const reading r("recipe:  A  tart # c\n\n# d\n???\n");
    const auto& b = r.result.tree.blocks.at(1);
    CHECK(r.at(b.where) == "recipe:  A  tart # c");
    CHECK(r.at(b.title.where) == "A  tart");
    CHECK(r.at(r.only<comment>().where) == "# c");
    CHECK(r.at(r.only<empty_line>().where) == "");
    CHECK(r.at(r.only<unread>().where) == "???");
}

TEST_CASE("a tree can be shown with its places") {
    const reading r("recipe: Crème\n½ l  milk # c\n- Mix.\n  Stir.\n");
    CHECK(show(r.result.tree, r.text) == "recipe \"Crème\"  @1:1-1:14\n"
                                         "  line 1/2 l of \"milk\"  @2:1-2:14\n"
                                         "    # c  @2:11-2:14\n"
                                         "  step \"Mix. Stir.\"  @3:1-4:8\n");
}
