#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

/// An audit of the built-in table: what it holds, where each figure is from, and whether it says
/// so where two publications differ.
namespace benchcard::ingredients {
namespace {

constexpr std::string_view database =
    "USDA National Nutrient Database for Standard Reference, Release 28 (2015), NDB ";

bool holds(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

enum class origin { usda, gnu_units, law, reckoned, common_practice, none };

/// What kind of source a source text names; none for one that is not known here.
origin origin_of(const std::string& source) {
    static const std::regex ndb("^[0-9]{5}.*");
    if (source.starts_with(database))
        return std::regex_match(source.substr(database.size()), ndb) ? origin::usda : origin::none;
    if (source.starts_with("GNU units 3.15 (2022), ")) return origin::gnu_units;
    if (source.starts_with("Regulation (EC) No 589/2008") || source.starts_with("AMS 56, "))
        return origin::law;
    if (source.starts_with("common practice")) return origin::common_practice;
    // The parts of an egg by their share of a whole one.
    if (holds(source, "share") && holds(source, database)) return origin::reckoned;
    return origin::none;
}

/// Grams of one piece, or a millilitre.
exact weight_in(const figure& f, const measures::grams& end) {
    return f.volume ? exact(end.value / f.volume->value) : end.value;
}

bool are_of_one_thing(const figure& a, const figure& b) {
    return a.volume.has_value() == b.volume.has_value() && a.is_stick == b.is_stick &&
           a.piece == b.piece && a.state == b.state && a.where == b.where;
}

/// How far two figures of one thing lie apart, as a part of the first.
exact gap(const figure& a, const figure& b) {
    const exact below = weight_in(b, b.low) - weight_in(a, a.high);
    const exact above = weight_in(a, a.low) - weight_in(b, b.high);
    const exact apart = std::max({exact(0), below, above});
    return apart / weight_in(a, a.low);
}

std::string all_notes(const entry& e) {
    std::string all;
    for (const auto& n : e.notes) all += n + "\n";
    return all;
}

bool is_known(std::string_view name) {
    for (const auto where : {country::uk, country::us})
        if (built_in_table().find(name, where).match) return true;
    return false;
}

} // namespace

TEST_CASE("Every figure names a publication, or is a range of common practice") {
    std::size_t counted[6] = {};
    for (const auto* e : built_in_table().entries())
        for (const auto& f : e->figures) {
            INFO(e->name << ": " << f.source);
            const auto from = origin_of(f.source);
            CHECK(from != origin::none);
            ++counted[static_cast<std::size_t>(from)];
            CHECK(compared_name(f.source).find("memory") == std::string::npos);
            CHECK((f.low < f.high) == (from == origin::common_practice));
        }
    for (const auto from :
         {origin::usda, origin::gnu_units, origin::law, origin::reckoned, origin::common_practice})
        CHECK(counted[static_cast<std::size_t>(from)] > 0);
}

TEST_CASE("Where two publications differ by more than 5 %, the entry says which is used") {
    std::size_t differing = 0;
    for (const auto* e : built_in_table().entries())
        for (std::size_t i = 0; i < e->figures.size(); ++i)
            for (std::size_t j = i + 1; j < e->figures.size(); ++j) {
                const auto &a = e->figures[i], &b = e->figures[j];
                if (a.source == b.source || !are_of_one_thing(a, b)) continue;
                if (gap(a, b) * 20 <= 1) continue;
                INFO(e->name << ": " << a.source << " and " << b.source);
                CHECK(holds(all_notes(*e), "used"));
                CHECK((holds(all_notes(*e), "differ") || holds(all_notes(*e), "published")));
                ++differing;
            }
    CHECK(differing >= 8);
}

TEST_CASE("The two weights of active dry yeast are both kept, and the note says that they differ") {
    // NDB 18375: a teaspoon 4.0 g, a packet 7.2 g.
    const auto* yeast = built_in_table().find("active dry yeast", country::us).match;
    REQUIRE(yeast);
    const auto weighs = [&](std::string_view piece) {
        for (const auto& f : yeast->figures)
            if (f.piece == piece && f.volume.has_value() == piece.empty()) return f.low.value;
        return exact(0);
    };
    CHECK(weighs("") == 4);
    for (const auto* packed : {"packet", "sachet", "envelope"}) {
        INFO(packed);
        CHECK(weighs(packed) == exact(72, 10));
    }
    for (const auto* said : {"4.0 g", "7.2 g", "1.8", "disagrees"}) {
        INFO(said);
        CHECK(holds(all_notes(*yeast), said));
    }
}

TEST_CASE("An ingredient without a publication has no weight but a range") {
    std::size_t without = 0;
    for (const auto* e : built_in_table().entries()) {
        const bool published =
            std::any_of(e->figures.begin(), e->figures.end(), [](const figure& f) {
                return origin_of(f.source) != origin::common_practice;
            });
        if (published) continue;
        ++without;
        INFO(e->name);
        for (const auto& f : e->figures) CHECK_FALSE(f.volume);
    }
    CHECK(without > 0);
}

TEST_CASE("The table holds what a bakery and a kitchen weigh") {
    CHECK(built_in_table().entries().size() >= 600);
    for (const auto* name :
         {// flours
          "plain flour", "strong flour", "cake flour", "self-raising flour", "wholemeal flour",
          "rye flour", "dark rye flour", "spelt flour", "rice flour", "ground almonds",
          "ground hazelnuts", "chickpea flour", "cornstarch", "potato starch", "arrowroot",
          // sugars and syrups
          "granulated sugar", "caster sugar", "icing sugar", "light brown sugar",
          "dark brown sugar", "demerara sugar", "honey", "golden syrup", "maple syrup",
          "corn syrup", "glucose syrup", "molasses", "malt extract",
          // fats and oils
          "butter", "clarified butter", "lard", "shortening", "margarine", "olive oil",
          "sunflower oil", "coconut oil", "cocoa butter", "suet",
          // dairy
          "whole milk", "skimmed milk", "buttermilk", "double cream", "single cream", "heavy cream",
          "soured cream", "yogurt", "cream cheese", "milk powder", "condensed milk",
          "evaporated milk", "ricotta", "cheddar", "parmesan",
          // eggs
          "eggs", "egg whites", "egg yolks", "dried egg white", "duck eggs",
          // leaveners, yeasts, salts
          "baking powder", "bicarbonate of soda", "cream of tartar", "fresh yeast",
          "active dry yeast", "instant yeast", "sourdough starter", "fine salt", "flaked sea salt",
          "coarse salt", "kosher salt",
          // cocoa and chocolate
          "cocoa powder", "Dutch cocoa", "dark chocolate", "milk chocolate", "white chocolate",
          "chocolate chips", "grated unsweetened chocolate",
          // nuts, seeds and fruit
          "whole almonds", "flaked almonds", "chopped walnuts", "pecans", "pistachios",
          "desiccated coconut", "sesame seeds", "poppy seeds", "linseed", "raisins", "sultanas",
          "currants", "dried apricots", "dates", "prunes", "apples", "bananas", "raspberries",
          "lemons", "lemon juice", "lemon zest", "oranges", "rhubarb",
          // vegetables, grains, pulses
          "onions", "garlic", "carrots", "celery", "potatoes", "tomatoes", "spinach", "mushrooms",
          "rolled oats", "long-grain rice", "couscous", "pearl barley", "quinoa", "macaroni",
          "breadcrumbs", "red lentils", "chickpeas", "kidney beans", "split peas",
          // spices, extracts, setting agents
          "cinnamon", "ground ginger", "nutmeg", "ground cloves", "black pepper", "paprika",
          "turmeric", "vanilla extract", "almond extract", "vanilla pod", "bay leaf",
          "leaf gelatine", "gelatine powder", "agar", "pectin", "xanthan gum",
          // liquids and alcohol
          "water", "cider vinegar", "soy sauce", "coffee", "red wine", "beer", "rum",
          // meat, fish, stocks
          "minced beef", "chicken", "bacon", "salmon", "prawns", "anchovies", "chicken stock",
          "vegetable stock", "fish stock"}) {
        INFO(name);
        CHECK(is_known(name));
    }
}

} // namespace benchcard::ingredients
