#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/source.hpp"
#include "grammar/tree.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Slips of the pen, made on purpose in recipes that are correct.
namespace benchcard::mutation {

/// One slip: exactly what would stand where in the text.
struct mutant {
    enum class sort { amount, removal, yield, reference, heat };
    sort is = sort::amount;
    std::string_view slip; ///< its kind in words: `a digit dropped`
    grammar::edit change;  ///< of the correct text
    std::size_t block = 0; ///< of the tree
    grammar::span of = {}; ///< the line, setting or bracket that is changed
};

/// Every slip of every kind at every place of a recipe, in the order of the text. Those that the
/// grammar alone would refuse (`/2 tsp`) are left out, and so are two that come to the same text.
/// `component_lines` are the places of the lines that use another component.
std::vector<mutant> mutants_of(const grammar::source& text, const grammar::tree& tree,
                               const std::set<std::uint32_t>& component_lines);

/// The text with a change made.
std::string changed(std::string_view text, const grammar::edit& change);

/// A number as it is written with its point one place further to the right or, for a negative
/// one, to the left: `1.5` is `15` and `0.15`. Empty for what is no number.
std::string with_point_moved(std::string_view number, int places);

} // namespace benchcard::mutation
