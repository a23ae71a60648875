#include "compiler/cards/deal.hpp"
#include "compiler/cards/fingerprint.hpp"

#include "../recipe/reading.hpp"

#include <functional>
#include <set>

/// The sign by which two prints of a card are known to say the same.
namespace benchcard::testing {

namespace {

using styles::card;

card sample() {
    card c;
    c.title = "Sweet pastry", c.recipe = "Tart", c.station = "bench", c.batch = "× 2",
    c.yield = "2 cases";
    c.imperial_heading = "oz", c.spoons_heading = "US cups", c.percent_heading = "% of flour";
    c.weigh_out = {{"250", "g", "flour", "sifted", "9 oz", "2 cups", "100 %"},
                   {"1", "", "egg", "", "", "", ""}};
    c.totals = {{"300", "g", "mix"}, {"20", "g", "over"}};
    c.method = {{{"Rub ", false}, {"butter", true}}, {{"Chill", false}}};
    c.oven = {{"180 °C", "160 °C", "350 °F", "4", "20 min"}};
    c.allergens = {{"Contains ", false}, {"wheat", true}};
    c.cautions = {{{"Raw flour", false}}};
    c.notes = {{{"Best fresh", false}}};
    c.keeping = {{"Keeps ", false}, {"3 days", true}};
    c.made_label = "made", c.revision = "rev 3", c.footnote = "check", c.number = "card 1 of 3",
    c.language = "en";
    return c;
}

void add_runs(std::vector<std::function<void(card&)>>& all,
              const std::function<styles::paragraph&(card&)>& of, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
        all.push_back([=](card& c) { of(c)[i].text += "x"; });
        all.push_back([=](card& c) { of(c)[i].strong = !of(c)[i].strong; });
    }
    all.push_back([=](card& c) { of(c).push_back({"more", false}); });
    all.push_back([=](card& c) { of(c).pop_back(); });
}

/// Every change of one thing that a card says.
std::vector<std::function<void(card&)>> all_changes() {
    std::vector<std::function<void(card&)>> all;
    for (auto field : {&card::title, &card::recipe, &card::station, &card::batch, &card::yield,
                       &card::imperial_heading, &card::spoons_heading, &card::percent_heading,
                       &card::made_label, &card::revision, &card::footnote, &card::language}) {
        all.push_back([=](card& c) { c.*field += "x"; });
        all.push_back([=](card& c) { (c.*field).clear(); });
    }
    using styles::weigh_row;
    for (auto field :
         {&weigh_row::amount, &weigh_row::unit, &weigh_row::name, &weigh_row::preparation,
          &weigh_row::imperial, &weigh_row::spoons, &weigh_row::percent})
        for (std::size_t row : {0u, 1u})
            all.push_back([=](card& c) { c.weigh_out[row].*field += "x"; });
    using styles::total_row;
    for (auto field : {&total_row::amount, &total_row::unit, &total_row::text})
        for (std::size_t row : {0u, 1u})
            all.push_back([=](card& c) { c.totals[row].*field += "x"; });
    using styles::oven_row;
    for (auto field : {&oven_row::celsius, &oven_row::fan, &oven_row::fahrenheit, &oven_row::gas,
                       &oven_row::time})
        all.push_back([=](card& c) { c.oven[0].*field += "x"; });
    add_runs(
        all, [](card& c) -> styles::paragraph& { return c.allergens; }, 2);
    add_runs(
        all, [](card& c) -> styles::paragraph& { return c.keeping; }, 2);
    add_runs(
        all, [](card& c) -> styles::paragraph& { return c.method[0]; }, 2);
    add_runs(
        all, [](card& c) -> styles::paragraph& { return c.cautions[0]; }, 1);
    add_runs(
        all, [](card& c) -> styles::paragraph& { return c.notes[0]; }, 1);
    // Lines moved, left out, split, and words that move from one place to the next.
    all.push_back([](card& c) { std::swap(c.weigh_out[0], c.weigh_out[1]); });
    all.push_back([](card& c) { c.weigh_out.pop_back(); });
    all.push_back([](card& c) { c.totals.pop_back(); });
    all.push_back([](card& c) { c.method.pop_back(); });
    all.push_back([](card& c) { std::swap(c.method[0], c.method[1]); });
    all.push_back([](card& c) { c.method = {c.method[0], {}, c.method[1]}; });
    all.push_back([](card& c) { c.method[0].push_back(c.method[1][0]), c.method.pop_back(); });
    all.push_back([](card& c) { c.notes = c.cautions, c.cautions = {}; });
    all.push_back([](card& c) { c.cautions.push_back(c.notes[0]), c.notes = {}; });
    all.push_back([](card& c) { c.oven.clear(); });
    all.push_back([](card& c) { std::swap(c.allergens, c.keeping); });
    all.push_back([](card& c) { std::swap(c.title, c.recipe); });
    all.push_back([](card& c) { c.title += c.recipe, c.recipe.clear(); });
    all.push_back([](card& c) { std::swap(c.weigh_out[0].amount, c.weigh_out[0].unit); });
    all.push_back([](card& c) { c.weigh_out[1].preparation = "egg", c.weigh_out[1].name.clear(); });
    // The last line of one table read as the first of the next.
    all.push_back([](card& c) {
        c.weigh_out.pop_back(), c.totals.insert(c.totals.begin(), {"1", "", "egg"});
    });
    return all;
}

} // namespace

TEST_CASE("a card that says the same has the same sign, whatever its number") {
    auto c = sample();
    const auto sign = cards::fingerprint_of(c);
    CHECK(sign == cards::fingerprint_of(sample()));
    c.number = "card 2 of 7", c.fingerprint = "ABCD-EF";
    CHECK(cards::fingerprint_of(c) == sign);
}

TEST_CASE("every change of what a card says changes its sign") {
    std::set<std::string> signs{cards::fingerprint_of(sample())};
    std::size_t number = 0;
    for (const auto& change : all_changes()) {
        auto c = sample();
        change(c);
        INFO("change " << number++);
        REQUIRE_FALSE(c == sample());
        CHECK(signs.insert(cards::fingerprint_of(c)).second);
    }
}

TEST_CASE("a sign can be read across a kitchen") {
    const auto sign = cards::fingerprint_of(sample());
    REQUIRE(sign.size() == 7);
    CHECK(sign[4] == '-');
    for (const char c : sign) CHECK(std::string("01IO").find(c) == std::string::npos);
}

TEST_CASE("another batch of a recipe has another sign, the same batch the same") {
    const auto c = compiled("recipe: Dough\n1 kg plain flour\n600 g water\n");
    const auto sign = [&](const exact& factor) {
        return cards::deal(batch::scale(c->meaning, factor)).front().fingerprint;
    };
    CHECK(sign(1) == sign(1));
    CHECK(sign(1) != sign(2));
}

} // namespace benchcard::testing
