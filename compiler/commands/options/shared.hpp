#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
class Option;
} // namespace CLI

/// What the options of several commands have in common.
namespace benchcard::commands {

CLI::App* add_command(CLI::App& app, const char* name, const char* help);

CLI::Option* add_files(CLI::App& command, std::vector<std::string>& files);
void add_file(CLI::App& command, std::string& file);

/// A flag without which an option must be given.
void add_instead_of(CLI::App& command, CLI::Option* option, const char* name, bool& flag,
                    const char* help);

/// `--style`, with its help, and `--paper`.
void add_look(CLI::App& command, std::string& style, const char* help, std::string& paper);

/// `--confined`, where recipes may use others.
void add_confined(CLI::App& command, bool& confined);

/// `--jobs`, where many recipes can be given.
void add_jobs(CLI::App& command, std::size_t& jobs);

/// Throws a `wrong_line` where a recipe's name is empty, or standard input is given twice.
void expect_names(const std::vector<std::string>& files);

/// What is written must not take a recipe's place because a word was left out of the command line:
/// throws a `wrong_line` where it would.
void expect_output(const std::string& output, const std::vector<std::string>& files);

/// The foot of a command's help.
std::string examples(std::initializer_list<std::string_view> lines);

} // namespace benchcard::commands
