#pragma once

#include "compiler/commands/folders.hpp"
#include "compiler/recipe/book.hpp"

#include <optional>
#include <string>

namespace benchcard::commands {

/// Where a recipe may read from: anywhere, or in one folder and below it.
using confinement = std::optional<std::string>;

/// With `--confined`, the folder in which a recipe lies: the current one for standard input.
confinement own_folder(bool is_confined, const std::string& recipe);
/// The same for a recipe that may have been found in a folder: that folder.
confinement own_folder(bool is_confined, const named_recipe& recipe);

/// Reads as `read` does, but nothing that lies outside, whatever dots and links lead there.
recipe::file_reader confined_to(const confinement& folder, recipe::file_reader read);

} // namespace benchcard::commands
