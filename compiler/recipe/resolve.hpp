#pragma once

#include "compiler/recipe/book.hpp"
#include "compiler/recipe/recipe.hpp"

namespace benchcard::recipe {

/// What the first file of a book means, with the components it uses from the others. Messages are
/// on what cannot be understood: names, references, measures, yields. The recipe points into the
/// book's trees and the table, which must outlive it.
struct resolved {
    recipe meaning;
    grammar::diagnostics messages;
};

/// `override` other than unstated is taken instead of what the file says.
resolved resolve(const book& files, const ingredients::table& table,
                 measures::system override = measures::system::unstated);

} // namespace benchcard::recipe
