#include "../recipe/reading.hpp"
#include "compiler/batch/batch.hpp"
#include "compiler/ingredients/table.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/parse.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <vector>

/// For every ingredient, unit and system: amounts to weights and back.
namespace benchcard::ingredients {

namespace {

using measures::system;
using measures::unit;

constexpr unit units[] = {
    unit::drop,       unit::dash,        unit::pinch,      unit::teaspoon,  unit::dessertspoon,
    unit::tablespoon, unit::fluid_ounce, unit::gill,       unit::cup,       unit::pint,
    unit::quart,      unit::gallon,      unit::millilitre, unit::decilitre, unit::litre,
};

std::vector<system> every_system() {
    std::vector<system> all{system::unstated};
    all.insert(all.end(), std::begin(measures::all_systems), std::end(measures::all_systems));
    return all;
}

struct size {
    unit of;
    system in;
    exact ml;
};

/// Every unit of every system that has it; where systems share a size, once.
std::vector<size> every_size() {
    std::vector<size> sizes;
    const auto is_new = [&](unit u, const exact& ml) {
        return std::none_of(sizes.begin(), sizes.end(),
                            [&](const size& other) { return other.of == u && other.ml == ml; });
    };
    for (const system s : every_system())
        for (const unit u : units)
            if (const auto held = measures::volume_of(u, s); held && is_new(u, held->value))
                sizes.push_back({u, s, held->value});
    return sizes;
}

/// Systems whose cups and spoons are not those of one before.
std::vector<system> every_set_of_spoons() {
    std::vector<system> sets;
    const auto alike = [](system a, system b) {
        const auto same = [&](unit u) {
            return measures::volume_of(u, a) == measures::volume_of(u, b);
        };
        return same(unit::teaspoon) && same(unit::tablespoon) && same(unit::cup);
    };
    for (const system s : every_system())
        if (std::none_of(sets.begin(), sets.end(), [&](system other) { return alike(s, other); }))
            sets.push_back(s);
    return sets;
}

grammar::measure so_many(const exact& number, unit of) {
    grammar::measure m;
    m.quantity.low = m.quantity.high = number;
    m.in = of;
    return m;
}

/// The states that an ingredient has a density in; the unstated one is the empty word.
std::set<std::string> states_of(const entry& e) {
    std::set<std::string> states;
    for (const auto& f : e.figures)
        if (f.volume) states.insert(f.state);
    return states;
}

/// What printed measures hold, `1 cup + 2 tbsp`: read again by the grammar, and added up here.
exact read_again(const std::string& printed, system s) {
    const grammar::source text(0, "printed", printed + " of x");
    const auto read = grammar::parse_ingredient_line(text);
    INFO(printed);
    REQUIRE(read.line);
    exact ml = 0;
    for (const auto& m : read.line->amounts) {
        REQUIRE(m.in);
        REQUIRE(m.quantity.low == m.quantity.high);
        ml += m.quantity.low * measures::volume_of(*m.in, s)->value;
    }
    return ml;
}

/// Each density of the table, once.
std::vector<exact> densities() {
    std::set<exact> all;
    for (const auto* e : built_in_table().entries())
        for (const auto& f : e->figures)
            if (f.volume) all.insert(f.density());
    return {all.begin(), all.end()};
}

} // namespace

TEST_CASE("a volume of an ingredient turned into grams is the volume again, exactly") {
    const exact number(7, 3);
    const auto sizes = every_size();
    std::size_t turned = 0;
    for (const auto* e : built_in_table().entries())
        for (const auto& state : states_of(*e)) {
            const auto density = recipe::density_of(*e, state);
            REQUIRE(density);
            for (const auto& size : sizes) {
                const auto weighed =
                    recipe::weigh({so_many(number, size.of)}, e, state, size.in, e->name);
                const exact ml = number * size.ml;
                const bool is_back = weighed.grams && weighed.ml && weighed.ml->used == ml &&
                                     weighed.grams->used / density->used == ml;
                ++turned;
                if (is_back) continue;
                FAIL_CHECK(state << " " << e->name << ", " << measures::name_of(size.in) << " "
                                 << grammar::short_name(size.of));
            }
        }
    CHECK(turned > 12000);
}

TEST_CASE("a unit that a system has not is a problem, and weighs nothing") {
    const auto* flour = built_in_table().find("plain flour", country::any).match;
    REQUIRE(flour);
    for (const system s : every_system())
        for (const unit u : units) {
            if (measures::volume_of(u, s)) continue;
            INFO(measures::name_of(s) << " " << grammar::short_name(u));
            const auto weighed = recipe::weigh({so_many(1, u)}, flour, "", s, flour->name);
            CHECK(weighed.problem);
            CHECK_FALSE(weighed.grams);
        }
}

TEST_CASE("a volume lies in the range that its weight is shown with") {
    for (const auto* e : built_in_table().entries())
        for (const auto& state : states_of(*e)) {
            const auto d = recipe::density_of(*e, state);
            INFO(state << " " << e->name);
            REQUIRE(d);
            CHECK((d->low <= d->used && d->used <= d->high));
        }
}

TEST_CASE("cups and spoons for a weight hold what they say, for every density and system") {
    const std::array<exact, 4> weights{exact(3), exact(37), exact(250), exact(1180)};
    std::size_t printed = 0;
    const auto sets = every_set_of_spoons();
    for (const exact& density : densities())
        for (const system s : sets) {
            const exact& grams = weights[printed++ % weights.size()];
            const exact ml = grams / density;
            const auto spoons = measures::in_cups_and_spoons({ml}, s);
            if (spoons.text.empty()) {
                // Only what the measures cannot hold: too little, or too much without a cup.
                const bool too_little = ml < measures::volume_of(unit::teaspoon, s)->value / 8;
                CHECK((too_little || !measures::volume_of(unit::cup, s)));
                continue;
            }
            const exact held = read_again(spoons.text, s);
            const exact error = (held - ml) / ml;
            INFO(approximately(ml) << " ml as " << spoons.text << ", " << measures::name_of(s));
            CHECK(held == spoons.measured_ml);
            CHECK(error == spoons.relative_error);
            // Back to grams, it is off by that and no more.
            CHECK(held * density - grams == grams * spoons.relative_error);
            CHECK(abs(error) <= exact(1, 3));
            const bool from_a_spoon = ml >= measures::volume_of(unit::teaspoon, s)->value;
            if (from_a_spoon) CHECK(abs(error) <= exact(1, 10));
        }
    CHECK(printed > 1000);
}

TEST_CASE("counted ingredients turned into grams are the count again, exactly") {
    const exact number(5, 2);
    for (const auto* e : built_in_table().entries())
        for (const auto& f : e->figures) {
            if (f.volume || f.is_stick) continue;
            const auto s = f.where == country::us ? system::us : system::uk;
            grammar::measure m;
            m.quantity.low = m.quantity.high = number;
            const auto words = f.state + (f.piece.empty() ? "" : " " + f.piece);
            const auto weighed = recipe::weigh({m}, e, words, s, e->name);
            INFO(words << " " << e->name);
            REQUIRE(weighed.grams);
            REQUIRE(weighed.figure);
            CHECK(weighed.figure->piece == f.piece);
            CHECK(weighed.figure->state == f.state);
            CHECK(weighed.grams->low / weighed.figure->low.value == number);
            CHECK(weighed.grams->high / weighed.figure->high.value == number);
        }
}

/// A recipe with a line for every ingredient: by weight, and in each way its weight is known.
std::string recipe_of_everything() {
    std::string lines;
    for (const auto* e : built_in_table().entries()) {
        lines += "37 g " + e->name + "\n";
        if (recipe::density_of(*e, "")) lines += "2/3 cup " + e->name + "\n";
        for (const auto& f : e->figures)
            if (!f.volume && !f.is_stick && f.where != country::uk)
                lines += "3-4 " + f.state + " " + f.piece + " " + e->name + "\n";
    }
    return testing::with_lines(lines, "measures: us");
}

TEST_CASE("scaling every ingredient by a and by b is scaling by ab, and the lines make the mix") {
    const auto c = testing::compiled(recipe_of_everything());
    REQUIRE_FALSE(grammar::has_errors(c->messages));
    REQUIRE(c->meaning.product().lines.size() > 1000);
    const exact a(2, 3), b(9, 7);
    const auto once = batch::scale(c->meaning, a), both = batch::scale(c->meaning, a * b);
    const auto &of_once = once.components.front(), &of_both = both.components.front();
    exact sum = 0;
    for (std::size_t i = 0; i < of_once.lines.size(); ++i) {
        const auto &line = of_once.lines[i], &more = of_both.lines[i];
        INFO(line.of->name);
        REQUIRE(line.grams);
        sum += line.grams->used;
        CHECK(line.grams->low * b == more.grams->low);
        CHECK(line.grams->used * b == more.grams->used);
        CHECK(line.grams->high * b == more.grams->high);
        CHECK(line.grams->used == line.of->grams->used * a);
        if (line.count) CHECK(line.count->used * b == more.count->used);
        if (line.ml) CHECK(line.ml->used * b == more.ml->used);
    }
    CHECK(sum == *of_once.mix);
    CHECK(sum == c->meaning.product().mix->used * a);
}

} // namespace benchcard::ingredients
