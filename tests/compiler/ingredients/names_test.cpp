#include "compiler/ingredients/names.hpp"

#include "compiler/ingredients/table.hpp"

#include <catch2/catch.hpp>

namespace benchcard::ingredients {

namespace {

using pair_of_words = std::pair<std::string, std::string>;

/// One of a thing and many of it, as kitchens write them.
const std::vector<pair_of_words> numbers = {
    {"case", "cases"},       {"loaf", "loaves"},     {"leaf", "leaves"},
    {"half", "halves"},      {"glass", "glasses"},   {"dish", "dishes"},
    {"peach", "peaches"},    {"radish", "radishes"}, {"box", "boxes"},
    {"tomato", "tomatoes"},  {"potato", "potatoes"}, {"berry", "berries"},
    {"cherry", "cherries"},  {"olive", "olives"},    {"clove", "cloves"},
    {"egg", "eggs"},         {"tray", "trays"},      {"round", "rounds"},
    {"slice", "slices"},     {"tart", "tarts"},      {"square", "squares"},
    {"avocado", "avocados"}, {"knife", "knives"},    {"shell", "shells"},
    {"éclair", "éclairs"},   {"cake", "cakes"},      {"piece", "pieces"},
    {"orange", "oranges"},   {"chive", "chives"},    {"cookie", "cookies"},
    {"pie", "pies"},         {"bay", "bays"},        {"sandwich", "sandwiches"},
    {"brioche", "brioches"}, {"quiche", "quiches"},  {"ganache", "ganaches"},
    {"glaze", "glazes"},     {"gateau", "gateaux"},
};

} // namespace

TEST_CASE("one and many of what kitchens count") {
    for (const auto& [one, many] : numbers) {
        CHECK(singular(many) == one);
        CHECK(plural(one) == many);
        CHECK(singular(one) == one);
    }
}

TEST_CASE("words that only look like many") {
    for (const auto* word : {"molasses", "asparagus", "couscous", "hummus", "citrus", "glass",
                             "swiss", "watercress", "gas", "us"})
        CHECK(singular(word) == word);
}

TEST_CASE("names are compared without case, accents, hyphens and number") {
    CHECK(compared_name("Sifted Plain Flours") == "sifted plain flour");
    CHECK(compared_name("crème fraîche") == "creme fraiche");
    CHECK(compared_name("CRÈME FRAÎCHE") == "creme fraiche");
    CHECK(compared_name("cre\u0300me frai\u0302che") == "creme fraiche");
    CHECK(compared_name("self-raising flour") == "self raising flour");
    CHECK(compared_name("  bay   leaves ") == "bay leaf");
    CHECK(compared_name("confectioners' sugar") == compared_name("confectioners sugar"));
    CHECK(compared_name("Éclairs") == "eclair");
    CHECK(compared_name("loaves") == "loaf");
    CHECK(compared_name("molasses") == "molasses");
    CHECK(compared_words("").empty());
    CHECK(compared_words(" - ").empty());
}

TEST_CASE("apostrophes are no part of a name as it is compared") {
    CHECK(compared_name("Baker's yeast") == compared_name("bakers yeast"));
    CHECK(compared_words("salt ' pepper") == std::vector<std::string>{"salt", "pepper"});
    CHECK(compared_words("'").empty());
    CHECK(compared_words("\u0301").empty()); // an accent on nothing
}

TEST_CASE("comparing a name twice changes nothing more, for every name of the table") {
    for (const auto* e : built_in_table().entries()) {
        auto names = e->also;
        names.push_back(e->name);
        for (const auto& name : names) {
            INFO(name);
            CHECK(compared_name(compared_name(name)) == compared_name(name));
        }
    }
}

TEST_CASE("the plural of a name of the table is found under it") {
    for (const auto* e : built_in_table().entries()) {
        const auto space = e->name.rfind(' ');
        const auto first = space == std::string::npos ? 0 : space + 1;
        const auto last = e->name.substr(first);
        if (last.ends_with(")") || singular(last) != last || last == "us") continue;
        if (last == "tofu" || last == "molasses") continue; // not counted
        const auto many = e->name.substr(0, first) + plural(last);
        INFO(many);
        CHECK(compared_name(many) == compared_name(e->name));
    }
}

} // namespace benchcard::ingredients
