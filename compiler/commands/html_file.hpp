#pragma once

#include "compiler/commands/pdf_file.hpp"

#include <string>

namespace benchcard::commands {

/// Whether a file of that name is to be a page for a screen: `.html` or `.htm`.
bool is_html(const std::string& output);

/// Writes the cards as one page for a screen, which prints to the same sheets. Gives the exit code;
/// what went wrong is said on standard error.
int write_html(const print_job& job, const look& how, const std::string& output);

} // namespace benchcard::commands
