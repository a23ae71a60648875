#pragma once

namespace CLI {
class App;
} // namespace CLI

namespace benchcard::commands {

/// One file a command: what it is called, its options and its help. Reading a line that names the
/// command runs it, and sets the exit code; throws a `wrong_line` where the line is no good.
void add_check(CLI::App& app, int& code);
void add_tidy(CLI::App& app, int& code);
void add_explain(CLI::App& app, int& code);
void add_weigh(CLI::App& app, int& code);
void add_print(CLI::App& app, int& code);
void add_label(CLI::App& app, int& code);
void add_convert(CLI::App& app, int& code);
void add_language_server(CLI::App& app, int& code);

} // namespace benchcard::commands
