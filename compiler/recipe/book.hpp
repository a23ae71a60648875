#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/source.hpp"
#include "grammar/tree.hpp"

#include <functional>
#include <string>
#include <vector>

namespace benchcard::recipe {

/// What came of reading a file: its text, or why there is none (`no such file`).
struct file_text {
    bool is_read = false;
    std::string text;
    std::string failure;
    bool is_outside = false; ///< it is not read because it lies where nothing may be read
};

/// Reads the file at a path. The one way by which a recipe reaches the disk; commands give it.
using file_reader = std::function<file_text(const std::string& path)>;

/// A recipe file and all files that it uses, each read once. The first is the recipe itself.
struct book {
    std::vector<grammar::source> sources;
    std::vector<grammar::tree> trees;
    grammar::diagnostics messages; ///< of reading: of the text and of `use:`
};

/// Reads what `use:` names, and what that uses, as far as it goes. A `use:` that cannot be read,
/// or that closes a circle, is a message at its line.
book gather(const std::string& name, std::string text, const file_reader& read);

} // namespace benchcard::recipe
