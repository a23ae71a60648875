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
/// So much of the product, of the pieces of one component, or of a component by its name.
struct to_make {
    grammar::yield wanted; ///< `48 tarts`, `48`, `2 kg`
    std::string of = {};   ///< `Custard`, of `800 g Custard`; otherwise empty
};
/// As much as what is there allows: `400 g butter`.
struct from_stock {
    std::vector<grammar::ingredient_line> have; ///< never empty; one amount of one name each
};
/// For a tin of another size than the recipe's, filled as deep.
struct in_tin {
    grammar::tin tin;
};
/// By the weight of what `percent:` is reckoned against.
struct of_base {
    exact grams = 0; ///< greater than 0
};
/// What is ordered: the written batch, so many times that, or so much of something.
using order = std::variant<as_written, scaled, to_make, from_stock, in_tin, of_base>;

/// How much of each component is made.
enum class fit {
    written, ///< all by one factor: what is over in the written batch is over in the same part
    need,    ///< as much as is used of it
    whole,   ///< whole written batches, and what is over is kept
};

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
    exact times = 1;  ///< the written amounts are weighed out so many times
    exact factor = 1; ///< its written batch is made so many times
    exact each = 1;   ///< a piece weighs so many times what is written: in a tin of another size
    std::optional<exact> mix, ready, baked;       ///< grams
    std::optional<exact> pieces, made_grams;      ///< pieces made in all
    std::optional<exact> left_pieces, left_grams; ///< over, after all that use it
};

struct batch {
    const recipe::recipe* of = nullptr;
    exact factor = 1;                        ///< of the product
    std::vector<component_batch> components; ///< in the recipe's order
    std::optional<grammar::tin> tin;         ///< baked in this one instead of the recipe's
    std::vector<std::string>
        reckoning; ///< how the factor came about, a sentence each; may be empty
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

/// The same with one factor, greater than 0, a component. A piece of a component weighs `each`
/// times what is written, so that there are fewer or more of them; one a component, or empty for 1.
batch scale_each(const recipe::recipe& r, const std::vector<exact>& factors,
                 const std::vector<exact>& each = {});

} // namespace benchcard::batch
