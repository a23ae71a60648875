#include "compiler/cards/deal.hpp"
#include "compiler/cards/fingerprint.hpp"

#include "../recipe/reading.hpp"

/// Cards for several batches side by side.
namespace benchcard::testing {

namespace {

using strings = std::vector<std::string>;

std::vector<styles::card> cards_for(const std::string& text, const std::vector<exact>& factors) {
    const auto c = compiled(text);
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    std::vector<batch::batch> batches;
    for (const auto& f : factors) batches.push_back(batch::scale(c->meaning, f));
    return cards::deal_columns(batches);
}

/// With no-break spaces (U+00A0).
strings unbroken(strings texts) {
    for (auto& t : texts)
        for (auto at = t.find(' '); at != t.npos; at = t.find(' ')) t.replace(at, 1, "\u00a0");
    return texts;
}

std::string plain(const styles::paragraph& p) {
    std::string result;
    for (const auto& r : p) result += r.text;
    return result;
}

const std::string rolls =
    "recipe: Rolls\nmakes: 20 rolls of 50 g\nat-most: 1500 g\n600 g plain flour, sifted\n"
    "12 g fine salt\n388 g water\n"
    "- Mix half of [flour: 1/2] with [water], [salt: 1/3] and [flour: rest].\n"
    "- Add [salt: rest]. Roll into [50 g] pieces; bake at [220 C] for [12 min].\n";

} // namespace

TEST_CASE("a column a batch, and the names once") {
    const auto card = cards_for(rolls, {exact(1, 2), 1, 2}).front();
    CHECK(card.table.headings == strings{"× ½", "× 1", "× 2"});
    REQUIRE(card.table.rows.size() == 5);
    CHECK(card.table.rows[0] ==
          styles::table_row{"plain flour", "sifted", unbroken({"300 g", "600 g", "1200 g"})});
    CHECK(card.table.rows[1] ==
          styles::table_row{"fine salt", "", unbroken({"6 g", "12 g", "24 g"})});
    CHECK(card.table.rows[3] ==
          styles::table_row{"mix", "", unbroken({"500 g", "1000 g", "2000 g"})});
    CHECK(card.table.rows[4] ==
          styles::table_row{"makes", "", unbroken({"10 rolls", "20 rolls", "40 rolls"})});
    CHECK(card.weigh_out.empty());
    CHECK(card.totals.empty());
    CHECK(card.batch == "");
    CHECK(card.title == "Rolls");
}

TEST_CASE("the method leaves out what differs, and keeps what does not") {
    const auto card = cards_for(rolls, {1, 2}).front();
    CHECK(plain(card.method[0]) ==
          "Mix half of half of the flour with water, ⅓ of the salt and the rest of the flour.");
    CHECK(plain(card.method[1]) ==
          "Add the rest of the salt. Roll into 50 g pieces; bake at 220 °C for 12 min.");
    const auto single = cards_for("recipe: Tart\nmakes: 2 tarts\nper: 1 tart\n"
                                  "400 g double cream\n- Pour in [cream].\n",
                                  {1, 2})
                            .front();
    CHECK(plain(single.method[0]) == "For each tart: Pour in cream 400 g.");
}

TEST_CASE("a caution of one batch says which, and one of all says so once") {
    const auto card = cards_for(rolls, {1, 3}).front(); // mixing times change above 2
    strings cautions;
    for (const auto& p : card.cautions) cautions.push_back(plain(p));
    CHECK(std::count_if(cautions.begin(), cautions.end(),
                        [](const auto& c) { return c.find("Raw flour") != c.npos; }) == 1);
    CHECK(std::any_of(cautions.begin(), cautions.end(),
                      [](const auto& c) { return c.starts_with("× 3: "); }));
    CHECK_FALSE(std::any_of(cautions.begin(), cautions.end(),
                            [](const auto& c) { return c.starts_with("× 1: "); }));
}

TEST_CASE("cards of other batches have another sign") {
    CHECK(cards_for(rolls, {1, 2}).front().fingerprint !=
          cards_for(rolls, {1, 3}).front().fingerprint);
}

} // namespace benchcard::testing
