#include "compiler/cards/deal.hpp"
#include "compiler/cards/fingerprint.hpp"
#include "compiler/cards/record.hpp"

#include "../recipe/reading.hpp"

/// What is kept of printed cards.
namespace benchcard::testing {

namespace {

using strings = std::vector<std::string>;

styles::card scones(const std::string& amount) {
    const auto c =
        compiled("recipe: Scones\nmakes: 8 scones\nkeeps: 1 day in a tin\n" + amount +
                 " plain flour\n250 g milk\n- Bake [flour] with [milk] at [200 C] for [10 min].\n");
    return cards::deal(batch::scale(c->meaning, 1)).front();
}

} // namespace

TEST_CASE("a card says what stands on it, a line each") {
    CHECK(cards::said_on(scones("400 g")) ==
          strings{"title:\tScones", "batch:\t× 1\t8 scones of 81 g", "columns:\toz\tspoons",
                  "weigh:\t400\tg\tplain flour\t\t14 oz", "weigh:\t250\tg\tmilk\t\t8¾ oz",
                  "total:\t650\tg\tmix: 8 scones of 81 g",
                  "step:\tBake **flour 400 g** with **milk 250 g** at **200 °C** for **10 min**.",
                  "oven:\t200 °C\t180 °C\t400 °F\t6\t10 min",
                  "allergens:\tContains **milk** · **wheat**",
                  "caution:\tRaw flour until cooked: do not taste, wash hands and bench after.",
                  "keeping:\tKeeps **1 day** in a tin",
                  "foot:\tmade\t\tcheck every packet for allergens; local rules come first\ten"});
}

TEST_CASE("what changed is told apart from what stayed") {
    const auto before = cards::said_on(scones("400 g")), now = cards::said_on(scones("420 g"));
    const auto change = cards::change_between(before, now);
    const std::string rest = " with **milk 250 g** at **200 °C** for **10 min**.";
    CHECK(change.was ==
          strings{"batch:\t× 1\t8 scones of 81 g", "weigh:\t400\tg\tplain flour\t\t14 oz",
                  "total:\t650\tg\tmix: 8 scones of 81 g", "step:\tBake **flour 400 g**" + rest});
    CHECK(change.is ==
          strings{"batch:\t× 1\t8 scones of 84 g", "weigh:\t420\tg\tplain flour\t\t14¾ oz",
                  "total:\t670\tg\tmix: 8 scones of 84 g", "step:\tBake **flour 420 g**" + rest});
    CHECK(cards::change_between(now, now).was.empty());
    // A line that stands twice and then once has changed.
    CHECK(cards::change_between({"a", "a", "b"}, {"b", "a"}).was == strings{"a"});
    CHECK(cards::change_between({"a", "b"}, {"b", "a"}).is.empty());
}

TEST_CASE("a record is read as it was written") {
    const std::vector<cards::recorded> record = {
        cards::record_of(scones("400 g"), {"--make", "37 \"scones\""}),
        cards::record_of(scones("420 g"), {})};
    CHECK(cards::read_record(cards::written(record)) == record);
    CHECK(cards::read_record(cards::written({})) == std::vector<cards::recorded>{});
}

TEST_CASE("what is no record is not taken for one") {
    for (const auto* text :
         {"", "{", "[]", "7", "{\"cards\": []}", "{\"benchcard record\": 2, \"cards\": []}",
          "{\"benchcard record\": 1, \"cards\": [{\"fingerprint\": 7}]}",
          "{\"benchcard record\": 1, \"cards\": [{\"fingerprint\": \"A\"}]}"}) {
        INFO(text);
        CHECK_FALSE(cards::read_record(text));
    }
}

TEST_CASE("a card that is recorded already stays as it was") {
    const cards::recorded first{"AAAA-AA", "Scones", {"--scale", "2"}, {"title:\tScones"}};
    auto again = first;
    again.order = {"--make", "16 scones"};
    const cards::recorded other{"BBBB-BB", "Jam", {}, {}};
    std::vector record{first};
    cards::add_to(record, {again, other, other});
    CHECK(record == std::vector{first, other});
}

TEST_CASE("a fingerprint is read as it may be typed") {
    CHECK(cards::fingerprint_in("7K4Q-92") == "7K4Q-92");
    CHECK(cards::fingerprint_in("7k4q92") == "7K4Q-92");
    CHECK(cards::fingerprint_in("7K4Q-9") == "");
    CHECK(cards::fingerprint_in("7K4Q-923") == "");
    CHECK(cards::fingerprint_in("7K-4Q92") == "");
    CHECK(cards::fingerprint_in("7K4Q-0I") == ""); // never printed: they look like others
    CHECK(cards::fingerprint_in("") == "");
}

} // namespace benchcard::testing
