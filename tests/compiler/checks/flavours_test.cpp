#include "proportions.hpp"

/// What is strong in small amounts.
namespace benchcard::testing {

namespace {

kinds biscuits(const std::string& line) {
    return said_of("Biscuits",
                   "250 g plain flour\n125 g unsalted butter\n125 g caster sugar\n" + line);
}

} // namespace

TEST_CASE("a point left out of a strong spice is caught, a generous hand is not") {
    CHECK(biscuits("2 g ground nutmeg").empty());
    CHECK(biscuits("2.5 g ground nutmeg").empty());
    CHECK(biscuits("2.6 g ground nutmeg") == kinds{"flavour-high"}); // 5 in 1000
    CHECK(biscuits("15 g ground cinnamon").empty());
    CHECK(biscuits("30 g ground cinnamon") == kinds{"flavour-high"});
    CHECK(biscuits("2 tsp vanilla extract").empty());
    CHECK(biscuits("2 tbsp vanilla extract") == kinds{"flavour-high"});
    CHECK(biscuits("4 g almond extract").empty());
    CHECK(biscuits("14 g almond extract") == kinds{"flavour-high"});
}

TEST_CASE("a weight of a spice that nobody would taste is caught, spoons are not") {
    const auto stew = [](const std::string& line) {
        return said_of("Lentil stew", "2 kg tinned lentils\n20 g salt\n" + line);
    };
    CHECK(stew("1 g ground cumin").empty());
    CHECK(stew("0.6 g ground cumin") == kinds{"flavour-low"}); // under 3 in 10,000
    CHECK(stew("1/4 tsp ground cinnamon").empty());
    CHECK(stew("0.6 g ground black pepper").empty());
}

TEST_CASE("the message says how much of the mix it is") {
    const auto c = compiled("recipe: Biscuits\n250 g plain flour\n125 g unsalted butter\n125 g "
                            "caster sugar\n20 g ground nutmeg\n");
    REQUIRE(kinds_of(*c) == kinds{"flavour-high"});
    CHECK(c->messages.front().message == "20 g of ground nutmeg is 3.8 % of the mix in Biscuits");
    CHECK(remarks_of(c->messages.front()) == "common practice: 0.3 g to 2 g in 1 kg\n");
    CHECK(c->files.sources[0].text_of(c->messages.front().where) == "20 g ground nutmeg");
}

TEST_CASE("spice mixes, sugars and what goes into something larger are left alone") {
    CHECK(said_of("Five-nut rub", "20 g ground nutmeg\n30 g ground black pepper").empty());
    CHECK(said_of("Cinnamon filling", "100 g unsalted butter\n150 g light brown sugar\n20 g ground "
                                      "cinnamon")
              .empty());
    const auto c = compiled("recipe: Cake\ncomponent: Scent\n10 g ground nutmeg\n40 g whole milk\n"
                            "component: Batter\n1 kg plain flour\n1 kg whole milk\nall Scent\n");
    CHECK(kinds_of(*c).empty());
}

TEST_CASE("salt in what is eaten as it is: 3 % of the mix, 1.2 % of a sweet one") {
    const auto soup = [](const std::string& salt) {
        return said_of("Soup", "1 kg carrots\n1 kg vegetable stock\n" + salt);
    };
    CHECK(soup("30 g fine salt").empty());
    CHECK(soup("90 g fine salt") == kinds{"salt-high"});
    CHECK(biscuits("6 g fine salt").empty());
    CHECK(biscuits("7 g fine salt") == kinds{"salt-high"});
    CHECK(
        said_of("Salted caramel", "200 g caster sugar\n100 g double cream\n6 g fine salt").empty());
    CHECK(said_of("Ham brine", "1 l water\n120 g fine salt").empty());
    CHECK(said_of("Cabbage", "1 kg cabbage\n40 g fine salt",
                  "- Salt [cabbage] with [fine salt], and rinse after a while.\n")
              .empty());
}

TEST_CASE("nothing is said of a mix whose weight is not known") {
    CHECK(said_of("Stew", "4 wild boar sausages\n100 g carrots\n20 g fine salt") ==
          kinds{"no-piece-weight"});
}

TEST_CASE("gelatine and agar to all that is wet") {
    const auto jelly = [](const std::string& line) {
        return said_of("Jelly", "600 ml orange juice\n100 g caster sugar\n" + line);
    };
    CHECK(jelly("10 g leaf gelatine").empty());
    CHECK(jelly("1 g leaf gelatine") == kinds{"gelling-low"});
    CHECK(jelly("40 g leaf gelatine") == kinds{"gelling-high"});
    CHECK(jelly("4 g agar powder").empty());
    CHECK(jelly("40 g agar powder") == kinds{"gelling-high"});
    CHECK(said_of("Marshmallows", "200 g water\n400 g caster sugar\n25 g gelatine powder").empty());
}

TEST_CASE("what a used syrup holds counts with the jelly it goes into") {
    const auto c = compiled("recipe: Jelly\ncomponent: Syrup\n500 g water\n250 g caster sugar\n"
                            "component: Jelly\nall Syrup\n20 g water\n10 g leaf gelatine\n");
    CHECK(kinds_of(*c).empty());
}

} // namespace benchcard::testing
