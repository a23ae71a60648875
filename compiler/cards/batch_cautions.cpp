#include "compiler/cards/batch_cautions.hpp"

#include "compiler/batch/split.hpp"
#include "compiler/batch/tins.hpp"
#include "compiler/cards/figures.hpp"
#include "compiler/checks/composition.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

exact rounded_up(const exact& value) {
    const auto whole = measures::whole_part(value);
    return whole == value ? whole : exact(whole + 1);
}

std::string number(const exact& value) { return measures::with_fraction(value); }

bool holds(const recipe::component& c, std::initializer_list<checks::part> parts) {
    return std::any_of(c.lines.begin(), c.lines.end(), [&](const auto& l) {
        return std::any_of(parts.begin(), parts.end(),
                           [&](auto p) { return checks::grams_in(l, p) > 0; });
    });
}

/// That leavening and salt are not adjusted, where there is any.
std::string said_straight(const recipe::component& c) {
    using checks::part;
    const bool salt = holds(c, {part::salt});
    const bool rises = holds(c, {part::yeast, part::starter, part::powder, part::soda});
    if (!salt && !rises) return "";
    return fmt::format("; {} scaled straight", salt && rises ? "leavening and salt are"
                                               : salt        ? "salt is"
                                                             : "leavening is");
}

/// `Made × 3 …`: above twice and below half the written batch, by common practice.
std::string on_times(const recipe::component& c, const exact& factor) {
    if (factor <= 2 && factor >= exact(1, 2)) return "";
    return fmt::format("Made × {}: mixing, proving and baking times change with the size of the "
                       "batch{}.",
                       number(factor), said_straight(c));
}

/// A tin holds what it held; only what is made `per:` a piece has a tin for each. In a tin of
/// another size what the steps say of sizes and times is still for the recipe's.
std::string on_tin(const batch::component_batch& c, const batch::batch& b) {
    if (!c.of->tin) return "";
    if (b.tin)
        return fmt::format("In a tin of {} and not {}: sizes and times in the steps are for that "
                           "one. Test before the time is up.",
                           batch::said_tin(*b.tin), batch::said_tin(*c.of->tin));
    if (c.of->per || c.factor == 1) return "";
    return fmt::format("The tin and its time are for × 1. For × {} take tins to match, filled as "
                       "deep, and test before the time is up.",
                       number(c.factor));
}

std::string on_limits(const batch::component_batch& c) {
    if (!c.mix || !c.of->at_least) return "";
    const auto split = batch::split_of(c);
    const exact each = split ? split->each : *c.mix;
    if (each >= *c.of->at_least) return "";
    return fmt::format("{}{} is less than the {} that can be mixed well: make more and keep what "
                       "is over.",
                       split ? "A mix of " : "", said_grams(each), said_grams(*c.of->at_least));
}

std::string on_whole_batches(const recipe::component& c, const exact& factor) {
    if (!c.whole_batch || measures::whole_part(factor) == factor) return "";
    return fmt::format("This is made whole: instead of × {} make × {} and keep what is over.",
                       number(factor), number(rounded_up(factor)));
}

} // namespace

std::vector<std::string> order_cautions(const batch::component_batch& c, const batch::batch& b) {
    std::vector<std::string> result;
    for (auto& text : {on_whole_batches(*c.of, c.factor), on_limits(c), on_tin(c, b)})
        if (!text.empty()) result.push_back(text);
    return result;
}

std::vector<std::string> batch_cautions(const batch::component_batch& c, const batch::batch& b) {
    auto result = order_cautions(c, b);
    if (auto text = on_times(*c.of, c.factor); !text.empty()) result.push_back(std::move(text));
    return result;
}

} // namespace benchcard::cards
