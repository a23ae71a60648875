#pragma once

#include "compiler/commands/compile.hpp"
#include "mutants.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace benchcard::mutation {

/// A recipe of the tests or the examples, as it stands in its folder.
struct correct_recipe {
    std::string path; ///< in the project: `tests/recipes/chapatis.recipe`
    std::string text;
    std::unique_ptr<commands::compiled> compiled;
};

/// A text as if it were such a recipe.
correct_recipe recipe_of(std::string path, std::string text);

/// All recipes in tests/recipes and examples, in the order of their paths.
std::vector<correct_recipe> correct_recipes();

/// All slips that can be made in a recipe.
std::vector<mutant> mutants_of(const correct_recipe& r);

/// What became of one slip.
struct verdict {
    bool is_caught = false;             ///< by a new message at the place of the slip
    std::optional<exact> before, after; ///< grams of the line, or of what is made
    std::string why_missed;             ///< a class of reasons; empty where it is caught

    /// Whether a weight changes by more than a fifth, or is not known any more.
    bool changes_weight() const;
};
verdict judge(const correct_recipe& r, const mutant& m);

} // namespace benchcard::mutation
