#include "compiler/commands/commands.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"

#include <CLI/CLI.hpp>

namespace benchcard::commands {

void add_language_server(CLI::App& app, int& code) {
    auto* command = add_command(app, "language-server",
                                "Help with recipes in a text editor, which starts it itself");
    // Editors may say how they talk to it; there is one way.
    command->add_flag("--stdio")->group("");
    command->footer("It speaks the Language Server Protocol 3.17 on standard input and output.\n"
                    "How editors are set up: grammar/editors/README.md");
    command->callback([&code] { code = language_server(); });
}

} // namespace benchcard::commands
