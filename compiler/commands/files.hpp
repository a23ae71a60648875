#pragma once

#include "compiler/recipe/book.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace benchcard::commands {

/// Reads a regular file, or standard input where the path is `-`. Never waits on a pipe or a
/// device that only looks like a file.
recipe::file_text read_file(const std::string& path);

/// Writes a file whole or not at all: beside it under another name, flushed to the disk, then
/// renamed. `-` is standard output. Gives what went wrong, or nothing.
std::optional<std::string> write_file(const std::string& path, std::string_view bytes);

} // namespace benchcard::commands
