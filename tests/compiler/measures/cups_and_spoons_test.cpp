#include "compiler/measures/kitchen.hpp"
#include "numbers.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

#include <map>

namespace benchcard::measures {
using testing::positive;

namespace {

exact ml(unit u, system s) { return volume_of(u, s)->value; }

std::string us_cups(const exact& cups) {
    return in_cups_and_spoons({cups * ml(unit::cup, system::us)}, system::us).text;
}
std::string us_spoons(const exact& teaspoons) {
    return in_cups_and_spoons({teaspoons * ml(unit::teaspoon, system::us)}, system::us).text;
}

struct read_term {
    exact times;
    unit of = unit::cup;
};

/// What a card's text says, read anew: the check does not take the measured volume's word for it.
std::vector<read_term> read(const std::string& text) {
    static const std::map<std::string, exact> glyphs = {{"½", exact(1, 2)}, {"⅓", exact(1, 3)},
                                                        {"⅔", exact(2, 3)}, {"¼", exact(1, 4)},
                                                        {"¾", exact(3, 4)}, {"⅛", exact(1, 8)}};
    std::vector<read_term> terms;
    for (std::size_t at = 0; at < text.size();) {
        read_term t;
        while (text[at] >= '0' && text[at] <= '9') t.times = t.times * 10 + (text[at++] - '0');
        for (const auto& [glyph, value] : glyphs)
            if (text.compare(at, glyph.size(), glyph) == 0) {
                t.times += value;
                at += glyph.size();
                break;
            }
        RC_ASSERT(text[at] == ' ');
        const auto end = std::min(text.find(" + ", at), text.size());
        const std::string name = text.substr(at + 1, end - at - 1);
        if (name == "cup" || name == "cups") {
            RC_ASSERT((name == "cups") == (t.times > 1));
            t.of = unit::cup;
        } else {
            RC_ASSERT((name == "tbsp" || name == "tsp"));
            t.of = name == "tbsp" ? unit::tablespoon : unit::teaspoon;
        }
        terms.push_back(t);
        at = end == text.size() ? end : end + 3;
    }
    return terms;
}

system any_system() {
    return *rc::gen::element(system::unstated, system::us, system::metric, system::uk,
                             system::imperial, system::australian, system::canadian,
                             system::us_label);
}

} // namespace

TEST_CASE("cups are one term with their fraction") {
    CHECK(us_cups(exact(7, 4)) == "1¾ cups");
    CHECK(us_cups(exact(8, 3)) == "2⅔ cups");
    CHECK(us_cups(1) == "1 cup");
    CHECK(us_cups(exact(1, 2)) == "½ cup");
    CHECK(us_cups(exact(1, 4)) == "¼ cup");
    CHECK(us_cups(20) == "20 cups");
    CHECK(us_cups(exact(1501, 4)) == "375¼ cups");
    CHECK(us_cups(999) == "999 cups");
    CHECK(us_cups(1100).empty());
}

TEST_CASE("a second measure makes up what the first leaves") {
    CHECK(us_cups(exact(9, 8)) == "1 cup + 2 tbsp");
    CHECK(us_cups(exact(9, 16)) == "½ cup + 1 tbsp");
    CHECK(us_spoons(7) == "2 tbsp + 1 tsp");
    CHECK(us_spoons(11) == "3 tbsp + 2 tsp");
}

TEST_CASE("small amounts are in spoons") {
    CHECK(us_spoons(exact(1, 4)) == "¼ tsp");
    CHECK(us_spoons(exact(1, 8)) == "⅛ tsp");
    CHECK(us_spoons(exact(3, 2)) == "1½ tsp");
    CHECK(us_spoons(exact(3, 8)) == "¼ tsp + ⅛ tsp");
    CHECK(us_spoons(3) == "1 tbsp");
    CHECK(us_spoons(9) == "3 tbsp");
    CHECK(us_spoons(12) == "¼ cup");
    CHECK(us_spoons(exact(9, 2)) == "1½ tbsp");
}

TEST_CASE("a single measure that is as good as right needs no second") {
    CHECK(in_cups_and_spoons({240}, system::us).text == "1 cup");
    CHECK(in_cups_and_spoons({30}, system::us).text == "2 tbsp");
    CHECK(in_cups_and_spoons({5}, system::us).text == "1 tsp");
    CHECK(in_cups_and_spoons({250}, system::us).text == "1 cup + 1 tbsp");
    CHECK(in_cups_and_spoons({250}, system::metric).text == "1 cup");
    CHECK(in_cups_and_spoons({248}, system::metric).text == "1 cup");
}

TEST_CASE("the measures are those of the system") {
    CHECK(in_cups_and_spoons({20}, system::australian).text == "1 tbsp");
    CHECK(in_cups_and_spoons({20}, system::metric).text == "1 tbsp + 1 tsp");
    CHECK(in_cups_and_spoons({15}, system::australian).text == "3 tsp");
    CHECK(in_cups_and_spoons({120}, system::us_label).text == "½ cup");
    CHECK(in_cups_and_spoons({ml(unit::cup, system::imperial)}, system::imperial).text == "1 cup");
}

TEST_CASE("without a cup there are spoons up to eight, and then nothing") {
    for (const system s : {system::unstated, system::uk}) {
        CHECK(in_cups_and_spoons({60}, s).text == "4 tbsp");
        CHECK(in_cups_and_spoons({120}, s).text == "8 tbsp");
        CHECK(in_cups_and_spoons({125}, s).text.empty());
        CHECK(in_cups_and_spoons({125}, s).measured_ml == 0);
        CHECK(in_cups_and_spoons({7}, s).text == "1½ tsp");
    }
}

TEST_CASE("what no spoon can measure is left out") {
    CHECK(us_spoons(exact(9, 100)).empty());
    CHECK(us_spoons(exact(1, 10)) == "⅛ tsp");
    CHECK(in_cups_and_spoons({0}, system::us).text.empty());
}

TEST_CASE("the text holds what it is said to hold") {
    rc::prop("its measures add up and the error is the true one", [] {
        const system s = any_system();
        const exact volume = positive(5000);
        const spooned result = in_cups_and_spoons({volume}, s);
        if (result.text.empty()) {
            RC_ASSERT(result.measured_ml == 0);
            return;
        }
        const auto terms = read(result.text);
        RC_ASSERT(!terms.empty());
        RC_ASSERT(terms.size() <= 2u);
        exact sum = 0;
        for (const read_term& t : terms) sum += t.times * ml(t.of, s);
        RC_ASSERT(sum == result.measured_ml);
        RC_ASSERT(result.relative_error == (sum - volume) / volume);
    });
}

TEST_CASE("no one has to count many spoons") {
    rc::prop("up to 3 tbsp where there is a cup, else 8; less than a tablespoon of tsp", [] {
        const system s = any_system();
        const bool has_cup = volume_of(unit::cup, s).has_value();
        for (const read_term& t : read(in_cups_and_spoons({positive(1500)}, s).text)) {
            if (t.of == unit::tablespoon) RC_ASSERT(t.times <= (has_cup ? 4 : 8));
            if (t.of == unit::teaspoon)
                RC_ASSERT(t.times * ml(unit::teaspoon, s) < ml(unit::tablespoon, s));
        }
    });
}

// The gaps between what two measures can make: a quarter teaspoon below a tablespoon, a teaspoon
// or half a tablespoon beside cups.
TEST_CASE("the error stays small wherever the measures allow it") {
    const auto error_within = [](int from_tsp, int to_cups, const exact& most) {
        const system s = *rc::gen::element(system::us, system::metric, system::imperial,
                                           system::australian, system::us_label);
        const exact cup = ml(unit::cup, s);
        const exact volume =
            ml(unit::teaspoon, s) * from_tsp + positive(to_cups * 1000) * cup / 1000;
        const spooned result = in_cups_and_spoons({volume}, s);
        RC_ASSERT(!result.text.empty());
        RC_ASSERT(abs(result.relative_error) <= most);
    };
    rc::prop("3 % from a cup to twenty", [&] { error_within(52, 19, exact(3, 100)); });
    rc::prop("1½ % from seven cups", [&] { error_within(364, 20, exact(15, 1000)); });
    rc::prop("5 % from 2½ teaspoons", [&] { error_within(3, 1, exact(5, 100)); });
}

TEST_CASE("what the measures can make exactly is made exactly") {
    rc::prop("whole and part cups", [] {
        const system s = *rc::gen::element(system::us, system::metric, system::australian);
        const exact cups =
            *rc::gen::inRange(0, 20) + *rc::gen::element(exact(1, 4), exact(1, 3), exact(1, 2),
                                                         exact(2, 3), exact(3, 4), exact(1));
        const spooned result = in_cups_and_spoons({cups * ml(unit::cup, s)}, s);
        RC_ASSERT(result.relative_error == 0);
        RC_ASSERT(read(result.text).size() == 1u);
    });
}

} // namespace benchcard::measures
