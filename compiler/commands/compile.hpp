#pragma once

#include "compiler/commands/confined.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/measures/systems.hpp"
#include "compiler/recipe/book.hpp"
#include "compiler/recipe/resolve.hpp"

#include <cstdio>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

namespace benchcard::commands {

/// A recipe file read, understood and checked, with all messages in the order of the text.
struct compiled {
    recipe::book files;
    recipe::recipe meaning;
    grammar::diagnostics messages;
};

/// Where the words go that a command says of one recipe.
using saying = std::function<void(std::string_view)>;

/// How files are read for one recipe.
struct reading {
    recipe::file_reader used = read_file; ///< gives the files that it uses
    saying say = complain;
    confinement only_in = std::nullopt; ///< of the recipe and of all that it uses
};

/// Compiles the file at `path` (`-` is standard input) and all it uses. Gives nothing, and says so,
/// when the file itself cannot be read.
std::unique_ptr<compiled> compile(const std::string& path, measures::system measures,
                                  const reading& how = {});

/// Compiles a text as if it were read from a file of that name.
std::unique_ptr<compiled> compile_text(const std::string& name, std::string text,
                                       measures::system measures, const recipe::file_reader& read);

/// Messages about some files as they are shown on `to`: in colour on a terminal unless NO_COLOR is
/// set.
std::string shown_messages(const grammar::diagnostics& messages,
                           const std::vector<grammar::source>& sources, std::FILE* to);

/// The messages as they are shown on `to`: in colour on a terminal unless NO_COLOR is set.
std::string shown_messages(const compiled& c, std::FILE* to);

/// Prints the messages to standard error.
void print_messages(const compiled& c);

} // namespace benchcard::commands
