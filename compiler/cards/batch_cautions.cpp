#include "compiler/cards/batch_cautions.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/measures/kitchen.hpp"

#include <fmt/format.h>

namespace benchcard::cards {

namespace {

exact rounded_up(const exact& value) {
    const auto whole = measures::whole_part(value);
    return whole == value ? whole : exact(whole + 1);
}

std::string number(const exact& value) { return measures::with_fraction(value); }

/// `Made × 3 …`: above twice and below half the written batch, by common practice.
std::string on_times(const exact& factor) {
    if (factor <= 2 && factor >= exact(1, 2)) return "";
    return fmt::format("Made × {}: mixing, proving and baking times change with the size of the "
                       "batch.",
                       number(factor));
}

/// A tin holds what it held; only what is made `per:` a piece has a tin for each.
std::string on_tin(const recipe::component& c, const exact& factor) {
    if (!c.tin || c.per || factor == 1) return "";
    return fmt::format("The tin and its time are for × 1. For × {} take tins to match, filled as "
                       "deep, and test before the time is up.",
                       number(factor));
}

std::string on_limits(const batch::component_batch& c) {
    if (!c.mix) return "";
    if (c.of->at_most && *c.mix > *c.of->at_most) {
        const exact mixes = rounded_up(*c.mix / *c.of->at_most);
        return fmt::format("More than the {} that it holds: make {} mixes of {}.",
                           said_grams(*c.of->at_most), number(mixes), said_grams(*c.mix / mixes));
    }
    if (c.of->at_least && *c.mix < *c.of->at_least)
        return fmt::format("{} is less than the {} that can be mixed well: make more and keep what "
                           "is over.",
                           said_grams(*c.mix), said_grams(*c.of->at_least));
    return "";
}

std::string on_whole_batches(const recipe::component& c, const exact& factor) {
    if (!c.whole_batch || measures::whole_part(factor) == factor) return "";
    return fmt::format("This is made whole: instead of × {} make × {} and keep what is over.",
                       number(factor), number(rounded_up(factor)));
}

} // namespace

std::vector<std::string> order_cautions(const batch::component_batch& c, const batch::batch& b) {
    std::vector<std::string> result;
    for (auto& text : {on_whole_batches(*c.of, b.factor), on_limits(c), on_tin(*c.of, b.factor)})
        if (!text.empty()) result.push_back(text);
    return result;
}

std::vector<std::string> batch_cautions(const batch::component_batch& c, const batch::batch& b) {
    auto result = order_cautions(c, b);
    if (auto text = on_times(b.factor); !text.empty()) result.push_back(std::move(text));
    return result;
}

} // namespace benchcard::cards
