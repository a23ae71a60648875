#include "proportions.hpp"

/// What a title promises of a mix.
namespace benchcard::testing {

TEST_CASE("meringue: sugar against egg white") {
    CHECK(said_of("Meringues", "120 g egg whites\n240 g caster sugar").empty());
    CHECK(said_of("Meringues", "120 g egg whites\n84 g caster sugar").empty());
    CHECK(said_of("Meringues", "120 g egg whites\n83 g caster sugar") == kinds{"meringue-sugar"});
    CHECK(said_of("Meringues", "120 g egg whites\n541 g caster sugar") == kinds{"meringue-sugar"});
    CHECK(said_of("Macarons", "110 g egg whites\n150 g ground almonds\n150 g icing sugar\n150 g "
                              "caster sugar")
              .empty());
    CHECK(said_of("Foam", "120 g egg whites\n20 g caster sugar").empty());
}

TEST_CASE("the message names both, each with its line") {
    const auto c = compiled("recipe: Meringues\n120 g egg whites\n24 g caster sugar\n");
    REQUIRE(kinds_of(*c) == kinds{"meringue-sugar"});
    const auto& m = c->messages.front();
    CHECK(m.level == grammar::severity::hint);
    CHECK(m.message == "24 g of caster sugar is 20 % of the egg white in Meringues");
    CHECK(c->files.sources[0].text_of(m.where) == "24 g caster sugar");
    REQUIRE(m.notes.size() == 2);
    CHECK(m.notes[0].text == "there is 120 g of egg white");
    CHECK(c->files.sources[0].text_of(*m.notes[0].where) == "120 g egg whites");
    CHECK(m.notes[1].text ==
          "common practice in meringue: 1 to 2 times the egg white, up to 4 times with almonds");
}

TEST_CASE("what is left out is said at the title") {
    const auto c = compiled("recipe: Choux paste\n250 g water\n100 g unsalted butter\n150 g plain "
                            "flour\n");
    REQUIRE(kinds_of(*c) == kinds{"choux-egg"});
    CHECK(c->messages.front().message == "there is no egg in Choux paste");
    CHECK(c->files.sources[0].text_of(c->messages.front().where) == "Choux paste");
    CHECK(said_of("Choux paste", "250 g water\n100 g unsalted butter\n150 g plain flour\n150 g "
                                 "house egg mix")
              .empty()); // what is not known may be it
}

TEST_CASE("short pastry: fat against flour, ground nuts with it") {
    CHECK(said_of("Shortcrust pastry", "300 g plain flour\n48 g lard\n60 g water").empty());
    CHECK(said_of("Shortcrust pastry", "300 g plain flour\n47 g lard\n60 g water") ==
          kinds{"pastry-fat"});
    CHECK(said_of("Shortbread", "300 g plain flour\n200 g unsalted butter\n100 g caster sugar")
              .empty());
    CHECK(said_of("Shortbread", "30 g plain flour\n200 g unsalted butter\n100 g caster sugar") ==
          kinds{"pastry-fat"});
    CHECK(said_of("Pastry cream", "500 g whole milk\n100 g egg yolks\n100 g caster sugar\n50 g "
                                  "plain flour")
              .empty());
}

TEST_CASE("choux, custard, sponge, jam and ganache") {
    const std::string choux = "250 g water\n100 g unsalted butter\n150 g plain flour\n";
    CHECK(said_of("Éclairs", choux + "250 g eggs").empty());
    CHECK(said_of("Éclairs", choux + "25 g eggs") == kinds{"choux-egg"});
    CHECK(said_of("Custard", "500 ml whole milk\n100 g egg yolks\n80 g caster sugar").empty());
    CHECK(said_of("Custard", "500 ml whole milk\n10 g egg yolks\n80 g caster sugar") ==
          kinds{"custard-egg"});
    CHECK(said_of("Custard", "500 ml whole milk\n40 g custard powder\n80 g caster sugar").empty());
    const std::string sponge = "200 g eggs\n120 g plain flour\n";
    CHECK(said_of("Genoise", sponge + "120 g caster sugar").empty());
    CHECK(said_of("Genoise", sponge + "12 g caster sugar") == kinds{"sponge-sugar"});
    CHECK(said_of("Genoise", sponge + "360 g caster sugar") == kinds{"sponge-sugar"});
    CHECK(said_of("Plum jam", "1 kg plums\n600 g granulated sugar").empty());
    CHECK(said_of("Plum jam", "1 kg plums\n60 g granulated sugar") == kinds{"jam-sugar"});
    CHECK(said_of("Plum jam", "1 kg plums").empty());
    CHECK(said_of("Ganache", "300 g dark chocolate\n300 g double cream").empty());
    CHECK(said_of("Ganache", "300 g dark chocolate\n30 g double cream") == kinds{"ganache-cream"});
}

TEST_CASE("biscuits: fat and sugar against flour, oats with it") {
    const auto oat = [](const std::string& butter, const std::string& sugar) {
        return said_of("Oat biscuits", "150 g rolled oats\n100 g plain flour\n" + butter +
                                           " unsalted butter\n" + sugar + " caster sugar");
    };
    CHECK(oat("125 g", "100 g").empty());
    CHECK(oat("25 g", "20 g").empty()); // 10 % and 8 % of 250 g
    CHECK(oat("24 g", "100 g") == kinds{"biscuit-fat"});
    CHECK(oat("400 g", "550 g").empty()); // 160 % and 220 %
    CHECK(oat("401 g", "100 g") == kinds{"biscuit-fat"});
    CHECK(oat("125 g", "551 g") == kinds{"biscuit-sugar"});
    CHECK(oat("125 g", "19 g") == kinds{"biscuit-sugar"});
    CHECK(said_of("Cheese biscuits", "150 g plain flour\n100 g unsalted butter\n1 g caster sugar")
              .empty());
    CHECK(said_of("Biscuit base", "300 g plain flour\n600 g unsalted butter").empty());
}

TEST_CASE("the bounds of each named mix, all common practice") {
    const auto is_fine = [](const std::string& title, const std::string& lines) {
        return said_of(title, lines).empty();
    };
    const auto is = [](const std::string& title, const std::string& lines,
                       const std::string& kind) { return said_of(title, lines) == kinds{kind}; };
    const std::string flour = "1000 g plain flour\n";
    CHECK(is_fine("Short pastry", flour + "1250 g lard"));
    CHECK(is("Short pastry", flour + "1251 g lard", "pastry-fat"));
    CHECK(is_fine("Short pastry", flour + "160 g lard"));
    CHECK(is("Short pastry", flour + "159 g lard", "pastry-fat"));
    CHECK(is("Choux paste", flour + "2000 g water\n790 g eggs", "choux-egg"));
    CHECK(is_fine("Choux paste", flour + "2000 g water\n800 g eggs"));
    CHECK(is("Custard", "1000 g whole milk\n29 g egg yolks", "custard-egg"));
    CHECK(is_fine("Custard", "1000 g whole milk\n30 g egg yolks"));
    CHECK(is("Custard", "1000 g whole milk\n1101 g egg yolks", "custard-egg"));
    CHECK(is("Jam", "1000 g strawberries\n199 g caster sugar", "jam-sugar"));
    CHECK(is_fine("Jam", "1000 g strawberries\n200 g caster sugar"));
    CHECK(is("Jam", "1000 g strawberries\n2001 g caster sugar", "jam-sugar"));
    CHECK(is("Ganache", "1000 g dark chocolate\n199 g double cream", "ganache-cream"));
    CHECK(is_fine("Ganache", "1000 g dark chocolate\n200 g double cream"));
    CHECK(is("Ganache", "1000 g dark chocolate\n4001 g double cream", "ganache-cream"));
    const std::string sponge = "1000 g plain flour\n1000 g eggs\n";
    CHECK(is("Sponge", sponge + "399 g caster sugar", "sponge-sugar"));
    CHECK(is_fine("Sponge", sponge + "400 g caster sugar"));
    CHECK(is("Sponge", sponge + "2601 g caster sugar", "sponge-sugar"));
    CHECK(is("Meringue", "1000 g egg whites\n699 g caster sugar", "meringue-sugar"));
    CHECK(is_fine("Meringue", "1000 g egg whites\n700 g caster sugar"));
    CHECK(is("Meringue", "1000 g egg whites\n4501 g caster sugar", "meringue-sugar"));
}

TEST_CASE("nothing is missed that may be a line with another name") {
    const auto shortbread = [](const std::string& line) {
        return kinds_of(*compiled("recipe: Shortbread\n2000 g plain flour\n" + line + "\n"));
    };
    CHECK(shortbread("200 g buter") == kinds{"unknown-ingredient"});
    CHECK(shortbread("200 g caster sugar") == kinds{"pastry-fat"});
}

} // namespace benchcard::testing
