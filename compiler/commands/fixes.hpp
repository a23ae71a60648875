#pragma once

#include "compiler/commands/compile.hpp"

#include <string>
#include <vector>

namespace benchcard::commands {

/// One repair that was made, where the text stood that it replaced.
struct repair {
    grammar::position at;
    std::string before, after;
    std::string kind; ///< of the message that it answers
};

/// A recipe's text with all repairs made that are certain, and what is left to say of it.
struct mended {
    std::string text;
    std::vector<repair> repairs; ///< in the order in which they were made
    std::unique_ptr<compiled> left;
};

/// Makes the edits that messages about the recipe itself carry, of the kinds whose repair is
/// certain, until there are none. Files that it uses stay as they are. An edit is not made where
/// another covers its place, where its line would have an error afterwards, or where a recipe
/// that compiled would no longer weigh the same.
mended mend(const std::string& name, const std::string& text, measures::system measures,
            const recipe::file_reader& read);

/// The repairs, a line each: `tart.recipe:3:1: mended: `5-3` is now `3-5` [range-upside-down]`.
std::string repairs_text(const std::string& name, const std::vector<repair>& repairs);

} // namespace benchcard::commands
