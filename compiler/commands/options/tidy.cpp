#include "compiler/commands/commands.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace benchcard::commands {

namespace {

struct tidy_given {
    tidy_options tidied;
    bool tidy_in_file = false, tidy_check = false;
};

} // namespace

void add_tidy(CLI::App& app, int& code) {
    const auto line = std::make_shared<tidy_given>();
    auto* command = add_command(
        app, "tidy", "Print recipes in order: columns in line, settings in their places");
    add_files(*command, line->tidied.files);
    command->add_flag("--write", line->tidy_in_file, "Put each in order in its file instead");
    command->add_flag("--check", line->tidy_check,
                      "Only name those that are not in order, with exit code 1");
    command->footer(examples({"benchcard tidy tart.recipe", "benchcard tidy --write *.recipe",
                              "benchcard tidy --check *.recipe"}));
    command->callback([line, &code] {
        expect_names(line->tidied.files);
        if (line->tidy_in_file && line->tidy_check)
            throw wrong_line{"--check changes nothing, and --write does: give one of them",
                             {"for example: benchcard tidy --check tart.recipe"}};
        if (line->tidy_in_file) line->tidied.way = tidy_way::write;
        if (line->tidy_check) line->tidied.way = tidy_way::check;
        code = tidy(line->tidied);
    });
}

} // namespace benchcard::commands
