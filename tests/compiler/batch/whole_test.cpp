#include "compiler/batch/whole.hpp"

#include "../recipe/reading.hpp"

#include <rapidcheck/catch.h>

/// Counted things of which an order asks for part of one.
namespace benchcard::testing {

namespace {

batch::parting parted(const std::string& line, const std::string& definition = "") {
    const auto c = compiled(with_lines(line) + definition);
    return batch::parting_of(c->meaning.components.back().lines.front());
}

/// Buns of which this many need so many eggs.
std::string buns(int number, const std::string& eggs) {
    return "recipe: Buns\nmeasures: us\nmakes: " + std::to_string(number) + " buns\n" + eggs +
           " large eggs\n500 g plain flour\n";
}

bool has_whole_eggs(const recipe::recipe& r, const exact& factor) {
    for (const auto& c : batch::scale(r, factor).components)
        for (const auto& l : c.lines)
            if (l.count && denominator(l.count->used) != 1) return false;
    return true;
}

} // namespace

TEST_CASE("eggs, leaves and tins stay whole, sachets are weighed, the rest is cut") {
    using batch::parting;
    CHECK(parted("2 large eggs") == parting::whole);
    CHECK(parted("2 egg yolks") == parting::whole);
    CHECK(parted("3 gold leaf gelatine") == parting::whole);
    CHECK(parted("6 leaves = 10 g leaf gelatine") == parting::whole);
    CHECK(parted("2 tins = 800 g tomatoes") == parting::whole);
    CHECK(parted("2 sachets active dry yeast") == parting::weighed);
    CHECK(parted("2 lemons") == parting::cut);
    CHECK(parted("2 onions") == parting::cut);
    CHECK(parted("1 bay leaf") == parting::cut);
}

TEST_CASE("the file says what is whole") {
    using batch::parting;
    const std::string quinces = "\ningredient: quince\nweighs: 250 g each\nsource: weighed here\n";
    CHECK(parted("2 quinces", quinces) == parting::cut);
    CHECK(parted("2 quinces", quinces + "whole: yes\n") == parting::whole);
    CHECK(parted("2 tins = 500 g quinces", quinces + "whole: no\n") == parting::cut);
}

TEST_CASE("whole ones and what the rest weighs") {
    const auto c = compiled(buns(24, "3"));
    const auto b = batch::scale(c->meaning, exact(11, 24)); // 11 buns: 1.375 eggs of 50 g
    const auto parts = batch::whole_and_rest_of(b.components.back().lines.front());
    REQUIRE(parts);
    CHECK(parts->whole == 1);
    CHECK(parts->rest_grams == exact(75, 4));
    CHECK_FALSE(batch::whole_and_rest_of(batch::scale(c->meaning, 1).components[0].lines[0]));
    CHECK_FALSE(batch::whole_and_rest_of(b.components.back().lines.back()));
}

TEST_CASE("the nearest orders that need whole eggs") {
    const auto numbers = [](const std::string& text, const exact& factor) {
        const auto c = compiled(text);
        const auto found = batch::whole_orders_of(batch::scale(c->meaning, factor));
        return found.empty() ? std::vector<exact>{} : found.front().numbers;
    };
    using list = std::vector<exact>;
    CHECK(numbers(buns(24, "1"), exact(37, 24)) == list{24, 48, 72});
    CHECK(numbers(buns(24, "1"), exact(5, 24)) == list{24, 48, 72});
    CHECK(numbers(buns(24, "3"), exact(37, 24)) == list{32, 40, 48}); // 8 buns an egg
    CHECK(numbers(buns(24, "1"), 2).empty());
    // 10 eggs for 4 buns: an even number of buns, since two and a half go into one.
    CHECK(numbers(buns(4, "10"), exact(3, 4)) == list{2, 4, 6});
    // Without pieces the order is said as a factor.
    CHECK(numbers("recipe: Cream\n3 eggs\n", exact(1, 2)) == list{exact(1, 3), exact(2, 3), 1});
    // A dough with 2 eggs and a glaze with 1 for the same 12 buns: each is whole at 12.
    CHECK(numbers("recipe: Buns\nmakes: 12 buns\ncomponent: Dough\n2 eggs\n500 g plain flour\n"
                  "component: Glaze\n1 egg\nassembly: Buns\nall Dough\nall Glaze\n",
                  exact(1, 2)) == list{12, 24, 36});
}

TEST_CASE("orders that are said to need whole eggs do") {
    rc::prop("and none between them does", [] {
        const int pieces = *rc::gen::inRange(1, 60), eggs = *rc::gen::inRange(1, 20);
        const int order = *rc::gen::inRange(1, 200);
        const auto c = compiled(buns(pieces, std::to_string(eggs)));
        const auto& r = c->meaning;
        const auto found = batch::whole_orders_of(batch::scale(r, exact(order, pieces)));
        RC_ASSERT(found.empty() == has_whole_eggs(r, exact(order, pieces)));
        if (found.empty()) return;
        const auto& numbers = found.front().numbers;
        RC_ASSERT(numbers.size() == 3u);
        for (const auto& n : numbers) RC_ASSERT(has_whole_eggs(r, n / pieces));
        for (exact n = numbers[0] + 1; n < numbers[1]; n += 1)
            RC_ASSERT_FALSE(has_whole_eggs(r, n / pieces));
        RC_ASSERT(numbers[1] > order);
    });
}

} // namespace benchcard::testing
