#include "shown.hpp"

/// One message a cause: nothing is said that follows from a line that could not be read, or from a
/// weight that is not known.
namespace benchcard::testing {

namespace {

kinds kinds_in(const std::string& text) { return kinds_of(*compiled(text)); }

/// A dough of 1009 g; one of its lines as given.
std::string dough(const std::string& salt, const std::string& step = "- Mix [flour], [water] and "
                                                                     "[salt].") {
    return "recipe: Buns\ncomponent: Dough\nmakes: 20 pieces of 50 g\n600 g plain flour\n400 g "
           "water\n" +
           salt + "\n" + step + "\n";
}

} // namespace

TEST_CASE("a line that could not be read is the only message") {
    CHECK(kinds_in(dough("9 g fine salt")).empty());
    CHECK(kinds_in(dough("heaped tsp fine salt")) == kinds{"unreadable-line"});
    CHECK(kinds_in(dough("9 g fine salt", "- Mix [flour], [water] and [salt].\n- Dust with "
                                          "[sugar].")) == kinds{"unknown-reference"});
    // Neither that the mix is too small without it, nor that it is too large, nor the rest.
    CHECK(kinds_in("recipe: Buns\nmakes: 20 pieces of 50 g\nflour 600 g\n400 g water\n- Mix "
                   "[flour] and [water].\n") == kinds{"unreadable-line"});
    CHECK(kinds_in("recipe: Buns\nmakes: 20 pieces of 50 g\nloss: about a third\n1600 g "
                   "water\n") == kinds{"unreadable-value"});
    CHECK(kinds_in(dough("heaped tsp fine salt", "- Mix [flour] and [water].\n- Knead in "
                                                 "[rest].")) == kinds{"unreadable-line"});
}

TEST_CASE("another slip in the same block is shown all the same") {
    CHECK(kinds_in(dough("heaped tsp fine salt", "- Mix [flour], [water], [salt] and [sugar].")) ==
          kinds{"unreadable-line", "unknown-reference"});
}

TEST_CASE("a step that could not be read may have used what no other uses") {
    CHECK(kinds_in(dough("9 g fine salt", "- Mix [flour] and [water].\n- Add [salt: a bit].")) ==
          kinds{"unreadable-bracket"});
    CHECK(kinds_in(dough("9 g fine salt", "- Mix [flour], [water: half] and [salt].\n- Add "
                                          "[water: the rest of].")) == kinds{"unreadable-bracket"});
    // It does not make the mix unknown.
    CHECK(kinds_in("recipe: Buns\nmakes: 40 pieces of 50 g\n600 g plain flour\n1. Mix "
                   "[flour].\n") == kinds{"mix-too-small", "numbered-step"});
}

TEST_CASE("what a component makes may stand in a line that could not be read") {
    const auto tart = [](const std::string& makes, const std::string& per = "per: 1 tart") {
        return "recipe: Tart\n" + per + "\ncomponent: Base\n" + makes +
               "\n500 g plain flour\nassembly: Tarts\nmakes: 2 tarts\n2 cases Base\n";
    };
    CHECK(kinds_in(tart("makes: 2 cases", "serves: 8")).empty());
    CHECK(kinds_in(tart("makes 2 cases", "serves: 8")) == kinds{"unreadable-line"});
    CHECK(kinds_in(tart("makes: 2 cases of butter", "serves: 8")).size() == 1);
    CHECK(kinds_in(tart("keeps: for ever and ever", "serves: 8")) == kinds{"unknown-piece"});
    CHECK(kinds_in("recipe: Tarts\nmakes 12 tarts\nassembly: Tarts\nper: 1 tart\n100 g plain "
                   "flour\n") == kinds{"unreadable-line"});
}

TEST_CASE("a component may be used in a line that could not be read") {
    const std::string parts = "recipe: Tart\ncomponent: Base\n500 g plain flour\nassembly: Tarts\n";
    CHECK(kinds_in(parts + "case of Base\n100 g butter\n") == kinds{"unreadable-line"});
    CHECK(kinds_in(parts + "100 g butter\n") == kinds{"unused-component"});
}

TEST_CASE("a pair that disagrees leaves the weight open") {
    CHECK(kinds_in("recipe: Mix\nmeasures: us\nmakes: 250 g\n2 cups = 500 g plain flour\n") ==
          kinds{"pair-disagrees"});
}

TEST_CASE("an unknown weight is no cause of anything else") {
    CHECK(kinds_in("recipe: Tart\nmakes: 2 tarts\ncomponent: Pastry\nmakes: cases of 265 g\n500 g "
                   "plain flour\n1 cup butter\nassembly: Tarts\nper: 1 tart\n1 case Pastry\n") ==
          kinds{"unsettled-measure"});
}

TEST_CASE("a loaf larger than its mix is said once, and where it is used nothing more") {
    CHECK(kinds_in("recipe: Toast\ncomponent: Loaves\nmakes: loaves of 800 g\n500 g plain "
                   "flour\nassembly: Toast\n1 loaf Loaves\n") == kinds{"mix-too-small"});
    CHECK(kinds_in("recipe: Toast\ncomponent: Loaves\nmakes: loaves of 800 g\n500 g plain "
                   "flour\nassembly: Toast\n1 Loaves\n") == kinds{"mix-too-small"});
}

} // namespace benchcard::testing
