#include "compiler/commands/commands.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace benchcard::commands {

namespace {

struct explain_given {
    explain_options explained;
};

} // namespace

void add_explain(CLI::App& app, int& code) {
    const auto line = std::make_shared<explain_given>();
    auto* command =
        add_command(app, "explain", "Say what a kind of message means, and how it is mended");
    command
        ->add_option("KIND", line->explained.kinds,
                     "The words in brackets behind a message; without any, all kinds are listed")
        ->type_name("");
    command->footer(examples({"benchcard explain mix-too-small", "benchcard explain"}));
    command->callback([line, &code] { code = explain(line->explained); });
}

} // namespace benchcard::commands
