#include "compiler/batch/orders.hpp"

#include "compiler/batch/fit.hpp"
#include "compiler/batch/orders_of.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <fmt/format.h>

namespace benchcard::batch {

std::string said_factor(const exact& factor) {
    return measures::in_decimals(factor, factor < exact(1, 100) ? 5 : 3);
}

std::string said_weight(const exact& grams) {
    const auto s = measures::on_a_scale({grams});
    return s.figure + " " + s.unit;
}

std::string said_made(const recipe::component& c, const exact& factor) {
    if (c.made.pieces) {
        const exact number = c.made.pieces->used * factor;
        return fmt::format("{} {}", measures::with_fraction(number),
                           number > 1 ? ingredients::plural(c.made.piece) : c.made.piece);
    }
    if (c.made.ml) {
        const auto s = measures::in_a_jug({*c.made.ml * factor});
        return s.figure + " " + s.unit;
    }
    return c.made.grams ? said_weight(c.made.grams->used * factor)
                        : "× " + measures::with_fraction(factor);
}

namespace {

/// Between a thousandth and ten thousand times: beyond, it is a slip of the hand.
std::variant<answer, refusal> checked(std::variant<answer, refusal> a) {
    const auto* given = std::get_if<answer>(&a);
    if (!given || (given->factor >= exact(1, 1000) && given->factor <= 10000)) return a;
    return refusal{fmt::format("that is {} the recipe, which no kitchen makes",
                               given->factor < 1 ? "less than a thousandth of"
                                                 : "more than ten thousand times"),
                   {}};
}

struct answering {
    const recipe::recipe& r;
    fit how;

    std::variant<answer, refusal> operator()(const as_written&) const { return answer{1, {}}; }
    std::variant<answer, refusal> operator()(const scaled& s) const { return answer{s.factor, {}}; }
    std::variant<answer, refusal> operator()(const to_make& m) const {
        return answer_to_make(r, m, how);
    }
    std::variant<answer, refusal> operator()(const from_stock& s) const {
        return answer_from_stock(r, s, how);
    }
    std::variant<answer, refusal> operator()(const in_tin& t) const { return answer_in_tin(r, t); }
    std::variant<answer, refusal> operator()(const of_base& b) const {
        return answer_of_base(r, b, how);
    }
};

/// Of an order that comes to a part of a piece, the orders beside it that do not:
/// `24.69 buns: for whole ones order 24, × 1, or 25, × 1.042`.
void add_whole_pieces(const recipe::component& product, answer& to) {
    if (!product.made.pieces || to.tin) return;
    const auto& written = product.made.pieces->used;
    const exact pieces = written * to.factor;
    const exact below = measures::whole_part(pieces), above = below + 1;
    if (pieces == below || product.made.pieces->low != product.made.pieces->high) return;
    const auto order_for = [&](const exact& number) {
        return fmt::format("{}, × {}", measures::in_decimals(number, 0),
                           said_factor(number / written));
    };
    to.reckoning.push_back(
        fmt::format("{}: for whole ones order {}{}", said_made(product, to.factor),
                    below > 0 ? order_for(below) + ", or " : "", order_for(above)));
}

/// What is over of a product that was made whole.
void leave_of_product(component_batch& product, const exact& ordered) {
    if (product.factor <= ordered) return;
    const exact part = (product.factor - ordered) / product.factor;
    if (product.pieces) product.left_pieces = *product.pieces * part;
    if (product.baked) product.left_grams = *product.baked * part;
}

} // namespace

std::variant<answer, refusal> answer_to(const recipe::recipe& r, const order& wanted, fit how) {
    return checked(std::visit(answering{r, how}, wanted));
}

std::variant<exact, refusal> factor_of(const recipe::recipe& r, const order& wanted) {
    const auto a = answer_to(r, wanted, fit::written);
    if (const auto* no = std::get_if<refusal>(&a)) return *no;
    return std::get<answer>(a).factor;
}

std::variant<batch, refusal> batch_for(const recipe::recipe& r, const order& wanted,
                                       std::optional<fit> how) {
    const bool is_written = std::holds_alternative<as_written>(wanted);
    const auto fitted = how.value_or(is_written ? fit::written : fit::need);
    auto a = answer_to(r, wanted, fitted);
    if (const auto* no = std::get_if<refusal>(&a)) return *no;
    auto& given = std::get<answer>(a);
    if (!is_written) add_whole_pieces(r.product(), given);
    auto result = scale_each(r, factors_for(r, given.factor, fitted), given.each);
    leave_of_product(result.components.back(), given.factor);
    result.reckoning = std::move(given.reckoning);
    result.tin = std::move(given.tin);
    return result;
}

} // namespace benchcard::batch
