#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

namespace benchcard::checks {

/// Everything that is wrong or doubtful about a recipe that could be understood; in the order of
/// the text. One message a cause: nothing is said that follows from an unknown weight.
grammar::diagnostics check(const recipe::recipe& r);

/// Demand against yield: an assembly that wants more of a component than is made; a component
/// that nobody uses.
void check_demand(const recipe::recipe& r, grammar::diagnostics& to);
/// Amounts as they stand: ranges upside down, two scales of one temperature that disagree.
void check_amounts(const recipe::recipe& r, grammar::diagnostics& to);

/// Proportions that the trade keeps within bounds: hints, all of them common practice.
void check_proportions(const recipe::recipe& r, grammar::diagnostics& to);

/// What comes after all other messages: the house rules of the recipe's files, and what their
/// `accept:` lines take away. `messages` are all that there are of the book and the recipe.
void settle(const recipe::book& files, const recipe::recipe& r, grammar::diagnostics& messages);

/// What `require:` asks for, in whichever of the files, and a component or its file lacks. Takes
/// away hints that say the same.
void check_house_rules(const recipe::book& files, const recipe::recipe& r,
                       grammar::diagnostics& messages);
/// Takes away the hints and warnings that `accept:` names: in its block, or in the whole file
/// where it stands in the head. Says what is wrong with an `accept:`, and which ones catch nothing.
void settle_accepts(const recipe::book& files, const recipe::recipe& r,
                    grammar::diagnostics& messages);

} // namespace benchcard::checks
