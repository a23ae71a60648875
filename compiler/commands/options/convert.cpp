#include "compiler/commands/commands.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"
#include "compiler/commands/order_options.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>

namespace benchcard::commands {

namespace {

struct convert_given {
    convert_options converted;
    std::vector<std::string> amount_words;
    std::string measures;
    bool list_wanted = false;
};

} // namespace

void add_convert(CLI::App& app, int& code) {
    const auto line = std::make_shared<convert_given>();
    auto* command = add_command(app, "convert",
                                "Say what one amount of an ingredient weighs, and by which source");
    auto* amount =
        command
            ->add_option(
                "AMOUNT", line->amount_words,
                "An amount of an ingredient, best in quotes; - reads lines from standard input")
            ->required()
            ->type_name("");
    command->add_flag("--why", line->converted.why, "Show how the weight came about, step by step");
    add_instead_of(*command, amount, "--list", line->list_wanted,
                   "Instead, a table of what a cup and a spoon of each ingredient\n"
                   "weigh; words after it choose those of that name");
    add_measures(*command, line->measures);
    command->footer(examples({"benchcard convert '2 1/4 cups plain flour' --measures us",
                              "benchcard convert - --measures us < pasted.txt",
                              "benchcard convert --list rye flour --measures us"}));
    command->callback([line, &code] {
        line->converted.amount =
            CLI::detail::trim_copy(fmt::format("{}", fmt::join(line->amount_words, " ")));
        line->converted.measures = system_of(line->measures);
        code = line->list_wanted ? list_measures(line->converted) : convert(line->converted);
    });
}

} // namespace benchcard::commands
