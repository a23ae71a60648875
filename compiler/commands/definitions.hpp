#pragma once

#include <CLI/App.hpp>
#include <string>
#include <vector>

namespace benchcard::commands {

/// What the command line is defined as, told to shells and to `man`. `program` has its commands.

/// The words that may follow an option of a command, or stand for its positional `name`; none where
/// anything may.
std::vector<std::string> choices_of(const std::string& command, const std::string& name);

/// A completion file for bash, zsh or fish; empty for another shell.
std::string completion_for(const CLI::App& program, const std::string& shell);

/// The manual page, section 1, in the `man` macros of roff.
std::string manual_of(const CLI::App& program);

/// The options of a command that are shown, and what may be typed for each: `--output`, `-o`.
std::vector<const CLI::Option*> shown_options(const CLI::App& command);
std::vector<std::string> spellings_of(const CLI::Option& option);

} // namespace benchcard::commands
