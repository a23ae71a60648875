#pragma once

#include "compiler/batch/batch.hpp"

#include <string>
#include <vector>

/// Counted things of which a batch asks for part of one.
namespace benchcard::batch {

/// What a kitchen does with part of a counted thing.
enum class parting {
    cut,     ///< a lemon: it is cut up
    whole,   ///< an egg, a leaf of gelatine, a tin: whole ones are taken and the rest is weighed
    weighed, ///< a sachet of powder: all of it is weighed
};

/// By the ingredient's `whole:`, or else by what it is counted in (tins, sachets).
parting parting_of(const recipe::line& l);

/// `1` egg and 18 g of another.
struct whole_and_rest {
    exact whole = 0;      ///< may be 0
    exact rest_grams = 0; ///< greater than 0
};

/// Of a line of which whole ones are taken: how many, and what the rest weighs. Nothing where it
/// comes out even, where the weight is not known, and for a range.
std::optional<whole_and_rest> whole_and_rest_of(const weigh_line& l);

/// Orders near one that needs part of a thing, which need whole ones only.
struct whole_orders {
    std::string things;         ///< `eggs`
    std::vector<exact> numbers; ///< of pieces of the product, or factors where it has no pieces
};

/// For each kind of thing of which this batch needs part of one: the nearest orders for which
/// every line of it comes out even, with all components in the same proportion. None where there
/// is none of up to 10000 pieces or 100 times the recipe.
std::vector<whole_orders> whole_orders_of(const batch& b);

/// The smallest number greater than 0 that makes each of these, greater than 0, whole.
exact smallest_whole_multiple(const std::vector<exact>& each);

} // namespace benchcard::batch
