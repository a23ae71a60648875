#include "compiler/cards/batch_cautions.hpp"

#include "compiler/recipe/reading.hpp"

#include <catch2/catch.hpp>

namespace benchcard::testing {

namespace {

/// The cautions of a one-component recipe with these settings, made so many times.
std::vector<std::string> cautions(const std::string& settings, const exact& factor) {
    const auto c = compiled("recipe: Mix\n" + settings + "600 g plain flour\n400 g water\n");
    const auto b = batch::scale(c->meaning, factor);
    return cards::batch_cautions(b.components.back(), b);
}

} // namespace

TEST_CASE("a batch as written asks for nothing") {
    CHECK(
        cautions("tin: 20 cm round\nat-most: 1 kg\nat-least: 1 kg\nwhole-batch: yes\n", 1).empty());
}

TEST_CASE("a batch that is split is no cause for caution, too small a mix is") {
    CHECK(cautions("at-most: 1.5 kg\n", 2).empty());
    CHECK(cautions("at-most: 1.5 kg\nat-least: 1.2 kg\n", 2) ==
          std::vector<std::string>{"A mix of 1000 g is less than the 1200 g that can be mixed "
                                   "well: make more and keep what is over."});
    CHECK(cautions("at-least: 800 g\n", exact(1, 2)) ==
          std::vector<std::string>{"500 g is less than the 800 g that can be mixed well: make more "
                                   "and keep what is over."});
}

TEST_CASE("what is made whole is not made in part") {
    CHECK(cautions("whole-batch: yes\n", exact(5, 4)) ==
          std::vector<std::string>{
              "This is made whole: instead of × 1¼ make × 2 and keep what is over."});
    CHECK(cautions("whole-batch: yes\n", 2).empty());
}

TEST_CASE("a tin does not grow with the batch, unless there is one a piece") {
    CHECK(cautions("tin: 20 cm round\n", 2).size() == 1);
    CHECK(cautions("makes: 2 cakes\nper: 1 cake\ntin: 20 cm round\n", 2).empty());
}

TEST_CASE("above twice and below half, times change") {
    CHECK(cautions("", 2).empty());
    CHECK(cautions("", exact(1, 2)).empty());
    CHECK(cautions("", 3).size() == 1);
    CHECK(cautions("", exact(1, 3)).size() == 1);
}

TEST_CASE("leavening and salt are said to be scaled straight") {
    const auto said = [](const std::string& line) {
        const auto all = cautions(line + "\n", 3);
        return all.size() == 1 ? all.front().substr(all.front().find("batch")) : "";
    };
    CHECK(said("10 g fine salt") == "batch; salt is scaled straight.");
    CHECK(said("10 g fresh yeast") == "batch; leavening is scaled straight.");
    CHECK(said("10 g fine salt\n5 g baking powder") ==
          "batch; leavening and salt are scaled straight.");
    CHECK(said("10 g caster sugar") == "batch.");
}

} // namespace benchcard::testing
