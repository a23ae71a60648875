#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <vector>

namespace benchcard::recipe {

/// What stands above the components, beside what belongs to the recipe.
struct file_heads {
    std::vector<measures::system> systems; ///< of each file of the book
    bool weight_unread = false; ///< a line of the first head that may say what the product makes
};

/// Reads the heads of all files: of the first one into `r`, of the others what they pass on.
/// `override` other than unstated counts more than what the first file says.
file_heads read_heads(const book& files, measures::system override, recipe& r,
                      grammar::diagnostics& to);

} // namespace benchcard::recipe
