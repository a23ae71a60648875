#pragma once

#include "compiler/commands/commands.hpp"
#include "compiler/commands/folders.hpp"

namespace benchcard::commands {

/// Prints many recipes, several at once, in the order in which they are named. One with errors is
/// said and left out, and the others are printed; the exit code is that of the worst. A file in a
/// folder that makes nothing, a list of ingredients or a house file, is checked only.

/// All in one PDF: contents with page numbers in front, and bookmarks.
int print_book(const print_options& options, const named_recipes& recipes);

/// Whether there is to be a PDF for each recipe: in a folder that is there, or is to be one.
bool is_folder(const std::string& output);

/// A PDF each, in a folder, called as the recipe is.
int print_each(const print_options& options, const named_recipes& recipes);

} // namespace benchcard::commands
