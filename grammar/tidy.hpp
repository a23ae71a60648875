#pragma once

#include "grammar/source.hpp"
#include "grammar/tree.hpp"

#include <string>

namespace benchcard::grammar {

/// A recipe's text in its canonical form, read as `file`: amounts, measures and names of a block's
/// lines in three columns, settings in their order, one blank where there were several. It has the
/// same lines as before, some in another place; words, steps' line breaks, comments and empty lines
/// stay, and so do lines that could not be read. A text that would read otherwise in that form
/// comes back as it is. Without a byte order mark; line ends stay as they are.
std::string tidied(const source& text, const tree& file);

/// The same for the bytes of a file, which may begin with a byte order mark: it stays.
std::string tidied(const std::string& bytes);

} // namespace benchcard::grammar
