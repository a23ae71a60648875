#include "proportions.hpp"

#include "compiler/batch/batch.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/cards/weigh_table.hpp"

/// `accept:` and what it takes away.
namespace benchcard::testing {

namespace {

const std::string loaf = "500 g strong white flour\n330 g water\n10 g fresh yeast\n";

kinds accepting(const std::string& line) {
    return kinds_of(*compiled("recipe: Loaf\n" + line + loaf));
}

} // namespace

TEST_CASE("accept takes its kind away, and no other") {
    CHECK(accepting("") == kinds{"salt-low"});
    CHECK(accepting("accept: salt-low, it is for the ward\n").empty());
    CHECK(accepting("accept: salt-low, it is for the ward\n1 g unheard-of thing\n") ==
          kinds{"unknown-ingredient"});
}

TEST_CASE("warnings, and hints of reading, are accepted too") {
    const std::string salt = "3 heaped tsp fine salt\n- 200 g plain flour\n";
    CHECK(kinds_of(*compiled("recipe: Salt\n" + salt)) ==
          kinds{"not-a-measure", "unused-ingredient", "dash-before-amount"});
    CHECK(kinds_of(*compiled("recipe: Salt\naccept: not-a-measure, we like it so\naccept: "
                             "dash-before-amount, it is a step\naccept: unused-ingredient, the tin "
                             "is salted\n" +
                             salt))
              .empty());
}

TEST_CASE("accept holds for its own block; in the head for the whole file") {
    const auto two = [](const std::string& head, const std::string& first) {
        return kinds_of(*compiled("recipe: Loaves\n" + head + "component: One\n" + first + loaf +
                                  "component: Two\n" + loaf));
    };
    const std::string line = "accept: salt-low, it is for the ward\n";
    CHECK(two("", "") == kinds{"salt-low", "salt-low"});
    CHECK(two("", line) == kinds{"salt-low"});
    CHECK(two(line, "").empty());
}

TEST_CASE("a used file's own messages are accepted where they stand, not from afar") {
    const auto use = [](const std::string& head, const std::string& there) {
        return kinds_of(
            *compiled("recipe: Loaves\nuse: house.recipe\n" + head + "component: Loaf\nall Dough\n",
                      {{"house.recipe", "recipe: House\ncomponent: Dough\n" + there + loaf +
                                            "component: Spare\n" + there + "1 g water\n"}}));
    };
    const std::string line = "accept: salt-low, it is for the ward\n";
    CHECK(use("", "") == kinds{"salt-low"});
    CHECK(use("", line).empty()); // and Spare, which is not used, is not asked about
    CHECK(use(line, "") == kinds{"accept-unneeded", "salt-low"});
}

TEST_CASE("an error cannot be accepted") {
    const auto c = compiled("recipe: Loaf\nmakes: 12 rolls of 100 g\naccept: mix-too-small, we "
                            "scale them short\n500 g plain flour\n");
    CHECK(kinds_of(*c) == kinds{"mix-too-small", "accept-error"});
    CHECK(message(*c, "accept-error").message ==
          "`mix-too-small` is an error, and only hints and warnings can be accepted");
    CHECK(message(*c, "accept-error").level == grammar::severity::error);
}

TEST_CASE("an unknown kind gets the nearest, with the edit") {
    const auto c = compiled("recipe: Loaf\naccept: salt-lo, it is for the ward\n" + loaf);
    REQUIRE(kinds_of(*c) == kinds{"salt-low", "accept-unknown"});
    const auto& m = message(*c, "accept-unknown");
    CHECK(m.message == "there is no kind of message called `salt-lo`");
    REQUIRE(m.helps.size() == 1);
    CHECK(m.helps.front().text == "the nearest is `salt-low`");
    REQUIRE(m.helps.front().edits.size() == 1);
    CHECK(c->files.sources[0].text_of(m.helps.front().edits.front().where) == "salt-lo");
    CHECK(accepting("accept: , because\n") == kinds{"salt-low", "accept-unknown"});
}

TEST_CASE("a reason must be given") {
    const auto c = compiled("recipe: Loaf\naccept: salt-low\n" + loaf);
    CHECK(kinds_of(*c) == kinds{"salt-low", "accept-without-reason"});
    CHECK(message(*c, "accept-without-reason").message == "why `salt-low` is accepted is not said");
    CHECK(accepting("accept: salt-low,\n") == kinds{"salt-low", "accept-without-reason"});
}

TEST_CASE("what catches nothing is noticed, unless an error hides what it would have caught") {
    CHECK(accepting("accept: salt-low, it is for the ward\n10 g fine salt\n") ==
          kinds{"accept-unneeded"});
    CHECK(accepting("accept: salt-low, it is for the ward\n10 g fine salt\n5 g\n") ==
          kinds{"missing-name"});
}

TEST_CASE("the card's foot counts what is accepted, and weigh gives the reason") {
    const auto c =
        compiled("recipe: Loaf\nrevision: 2\naccept: salt-low, it is for the ward\n" + loaf);
    const auto b = batch::scale(c->meaning, 1);
    const auto cards = cards::deal(b);
    REQUIRE(cards.size() == 1);
    CHECK(cards.front().revision == "rev 2 · 1 check accepted");
    CHECK_THAT(cards::weigh_table(b),
               Catch::Contains("  accepted: salt-low, it is for the ward\n"));
    const auto plain = compiled("recipe: Loaf\nrevision: 2\n" + loaf);
    const auto other = cards::deal(batch::scale(plain->meaning, 1));
    CHECK(other.front().revision == "rev 2");
    CHECK(other.front().fingerprint != cards.front().fingerprint);
}

TEST_CASE("what the head accepts is counted on the product's card") {
    const auto c = compiled("recipe: Loaves\naccept: salt-low, it is for the ward\ncomponent: "
                            "Dough\n" +
                            loaf + "assembly: Loaves\nall Dough\n");
    const auto cards = cards::deal(batch::scale(c->meaning, 1));
    REQUIRE(cards.size() == 2);
    CHECK(cards.front().revision == "");
    CHECK(cards.back().revision == "1 check accepted");
}

} // namespace benchcard::testing
