#include "compiler/batch/split.hpp"

#include "../recipe/reading.hpp"

#include <rapidcheck/catch.h>

/// A batch that no bowl holds at once.
namespace benchcard::testing {

namespace {

batch::batch mixed(const std::string& settings, const exact& factor,
                   std::unique_ptr<commands::compiled>& kept) {
    kept = compiled("recipe: Mix\n" + settings + "600 g plain flour\n400 g water\n");
    return batch::scale(kept->meaning, factor);
}

} // namespace

TEST_CASE("a batch that goes in is one mix") {
    std::unique_ptr<commands::compiled> kept;
    const auto one = [&](const std::string& settings, const exact& factor) {
        return batch::split_of(mixed(settings, factor, kept).components.back()).has_value();
    };
    CHECK_FALSE(one("", 100));
    CHECK_FALSE(one("at-most: 4 kg\n", 4));
    CHECK(one("at-most: 4 kg\n", exact(4001, 1000)));
    CHECK_FALSE(one("at-most: 2 l\n", 10)); // a limit by volume is not compared with a weight
}

TEST_CASE("equal mixes, as few as go in, are exactly the whole") {
    rc::prop("and each is within the limit", [] {
        const int limit = *rc::gen::inRange(1, 5000);
        const exact factor(*rc::gen::inRange(1, 40000), *rc::gen::inRange(1, 40));
        std::unique_ptr<commands::compiled> kept;
        const auto b = mixed("at-most: " + std::to_string(limit) + " g\n", factor, kept);
        const auto& c = b.components.back();
        const auto split = batch::split_of(c);
        RC_ASSERT(split.has_value() == (*c.mix > limit));
        if (!split) return;
        RC_ASSERT(denominator(split->mixes) == 1);
        RC_ASSERT(split->mixes >= 2);
        RC_ASSERT(split->mixes * split->each == *c.mix);
        RC_ASSERT(split->each <= limit);
        RC_ASSERT(*c.mix / (split->mixes - 1) > limit); // one mix less would not go in
    });
}

} // namespace benchcard::testing
