#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
class ParseError;
} // namespace CLI

namespace benchcard::commands {

/// What is wrong with the command line, and what to write instead.
struct wrong_line {
    std::string message;
    std::vector<std::string> helps;
};

/// How an option or a file is written, as an example: `--make '48 tarts'`.
std::string example_of(const std::string& name);

/// In a baker's words what the reader of the command line could not take.
wrong_line explain(const CLI::App& program, const CLI::ParseError& error);

/// Says on standard error what is wrong with the command line.
void print_wrong_line(const wrong_line& wrong);

} // namespace benchcard::commands
