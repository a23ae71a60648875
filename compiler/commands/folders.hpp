#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace benchcard::commands {

/// The recipes in a folder and below it, in the order of their paths: regular files called
/// `*.recipe`. Hidden folders are left out, and links to folders are not followed. Where there is
/// more to look through than so many entries, that is a failure.
struct recipes_found {
    std::vector<std::string> paths;
    std::vector<std::string> failures; ///< the folders that are not read, and why
};
recipes_found recipes_below(const std::string& folder, std::size_t most_entries = 1'000'000);

/// A recipe that a command is to read.
struct named_recipe {
    std::string path;
    std::string within; ///< its path below the folder that was named; its own name for a file
    bool in_folder = false;
};

/// The recipes that a command line names, with each folder's in its place. A folder that cannot be
/// read, or has no recipe, is said on standard error.
struct named_recipes {
    std::vector<named_recipe> all;
    bool has_folder = false;
    bool has_failed = false; ///< a folder was not read, or holds no recipe
};
named_recipes recipes_named(const std::vector<std::string>& names);

/// The paths alone, for a command that takes a folder's recipes as if each were named.
std::vector<std::string> paths_of(const named_recipes& recipes);

} // namespace benchcard::commands
