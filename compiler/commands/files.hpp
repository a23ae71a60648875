#pragma once

#include "compiler/recipe/book.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace benchcard::commands {

/// Gives the numbers of standard streams that are closed to streams that cannot be used, so that
/// no file opened later is taken for one of them.
void hold_standard_streams();

/// Has a write beyond the largest size a file may have fail, as on a full disk, and not end the
/// program.
void expect_failing_writes();

/// Writes to standard error; when that fails there is nobody left to tell.
void complain(std::string_view text);

/// Reads standard input to its end, as much as a recipe may have.
recipe::file_text read_standard_input();

/// Reads a regular file, as large as a recipe may be. Never waits on a pipe or a device that only
/// looks like a file.
recipe::file_text read_file(const std::string& path);

/// The same of so many bytes at most.
recipe::file_text read_file_up_to(std::size_t most, const std::string& path);

/// Writes a file whole or not at all: beside it under another name, flushed to the disk, then
/// renamed. `-` is standard output. Gives what went wrong, with the path, or nothing.
std::optional<std::string> write_file(const std::string& path, std::string_view bytes);

} // namespace benchcard::commands
