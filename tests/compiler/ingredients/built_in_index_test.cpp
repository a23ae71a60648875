#include "compiler/ingredients/built_in_index.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/ingredients/table.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace benchcard::ingredients;

TEST_CASE("the index of the built-in table holds every name of it and no other", "[ingredients]") {
    const auto& index = index_of_built_in();
    const auto entries = built_in_table().entries();
    REQUIRE(entries.size() == index.blocks.size());
    std::size_t count = 0;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        auto names = entries[i]->also;
        names.push_back(entries[i]->name);
        count += names.size();
        for (const auto& written : names) {
            CAPTURE(written);
            const auto [bare, where] = name_and_country(written);
            const auto compared = compared_name(bare);
            const auto called = index.called(compared);
            const auto of_block = [&, w = where](const indexed_name& n) {
                return n.block == i && n.where == w && index.text_of(n) == compared;
            };
            CHECK(std::any_of(called.begin(), called.end(), of_block));
            CHECK(std::ranges::count(index.word_counts, words_in(compared)) == 1);
        }
    }
    CHECK(index.names.size() == count);
    CHECK(index.called("").empty());
    CHECK(index.called("zzz").empty());
}

TEST_CASE("names that are the same stand in the order of their entries", "[ingredients]") {
    const auto& index = index_of_built_in();
    const auto before = [&](const indexed_name& a, const indexed_name& b) {
        const auto of_a = index.text_of(a), of_b = index.text_of(b);
        return of_a < of_b || (of_a == of_b && a.block <= b.block);
    };
    for (std::size_t i = 1; i < index.names.size(); ++i)
        CHECK(before(index.names[i - 1], index.names[i]));
}

TEST_CASE("a file of the table is cut into blocks of which the names are read", "[ingredients]") {
    const std::string_view text =
        "recipe: Table\nmeasures: us\n\ningredient: oat bran\nalso: bran, "
        "oats (uk)\nweighs: 94 g per cup\n\ningredient: rye\nalso: ryes";
    const auto blocks = blocks_of(text);
    REQUIRE(blocks.size() == 2);
    CHECK(blocks[0].names == std::vector<std::string>{"oat bran", "bran", "oats (uk)"});
    CHECK(blocks[0].measures.in(text) == "measures: us");
    CHECK(blocks[0].whole.in(text).ends_with("94 g per cup\n\n"));
    CHECK(blocks[1].names == std::vector<std::string>{"rye", "ryes"});
    CHECK(blocks[1].whole.in(text) == "ingredient: rye\nalso: ryes");
    CHECK(name_and_country("oats (uk)") == std::pair(std::string_view("oats"), country::uk));
    CHECK(name_and_country("corn (us)") == std::pair(std::string_view("corn"), country::us));
    CHECK(name_and_country("(uk)") == std::pair(std::string_view("(uk)"), country::any));
}
