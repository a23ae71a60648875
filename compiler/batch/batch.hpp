#pragma once

#include "compiler/recipe/demand.hpp"
#include "compiler/recipe/recipe.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// One recipe and one order: the amounts to weigh out. Still exact; rounding comes when they are
/// shown.
namespace benchcard::batch {

struct as_written {};
struct scaled {
    exact factor = 1; ///< greater than 0
};
struct to_make {
    grammar::yield wanted; ///< `48 tarts`, `48`, `2 kg`
};
/// What is ordered: the written batch, so many times that, or so much of the product.
using order = std::variant<as_written, scaled, to_make>;

/// What the whole order asks of a line.
struct weigh_line {
    const recipe::line* of = nullptr;
    std::optional<recipe::spread> grams, ml, count;
    /// The ends of an amount written as a range, as parts of the amount used; 1 where it is none.
    exact low_part = 1, high_part = 1;
};

struct component_batch {
    const recipe::component* of = nullptr;
    std::vector<weigh_line> lines;
    exact times = 1;                         ///< the written amounts are weighed out so many times
    std::optional<exact> mix, ready, baked;  ///< grams
    std::optional<exact> pieces, made_grams; ///< pieces made in all
    std::optional<exact> left_pieces, left_grams; ///< over, after all that use it
};

struct batch {
    const recipe::recipe* of = nullptr;
    exact factor = 1;
    std::vector<component_batch> components; ///< in the recipe's order
};

/// Why an order cannot be made, in a sentence.
struct refusal {
    std::string message;
    std::vector<std::string> helps;
};

/// The factor by which a recipe is made for an order, or why not.
std::variant<exact, refusal> factor_of(const recipe::recipe& r, const order& wanted);

/// All amounts of a recipe times a factor greater than 0.
batch scale(const recipe::recipe& r, const exact& factor);

} // namespace benchcard::batch
