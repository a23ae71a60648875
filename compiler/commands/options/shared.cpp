#include "compiler/commands/options/shared.hpp"

#include "compiler/commands/wrong_line.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

CLI::App* add_command(CLI::App& app, const char* name, const char* help) {
    auto* command = app.add_subcommand(name, help);
    command->group("Commands");
    return command;
}

CLI::Option* add_files(CLI::App& command, std::vector<std::string>& files) {
    return command.add_option("FILE", files, "Recipes, and folders of them; - is standard input")
        ->required()
        ->type_name("");
}

void add_file(CLI::App& command, std::string& file) {
    command.add_option("FILE", file, "A recipe; - is standard input")->required()->type_name("");
}

void add_instead_of(CLI::App& command, CLI::Option* option, const char* name, bool& flag,
                    const char* help) {
    command.add_flag_callback(
        name,
        [&flag, option] {
            flag = true;
            option->required(false);
        },
        help);
}

void add_look(CLI::App& command, std::string& style, const char* help, std::string& paper) {
    command.add_option("--style", style, help)->type_name("NAME");
    command
        .add_option("--paper", paper,
                    "A4, A5, A6, A7, letter, half-letter, 5x8, 4x6 or 3x5; turned:\n"
                    "'A5 landscape'; otherwise the style's own")
        ->type_name("SIZE");
}

void add_confined(CLI::App& command, bool& confined) {
    command.add_flag("--confined", confined,
                     "Read nothing outside the folder that is named, or in which\n"
                     "the recipe lies: for recipes of others");
}

void add_jobs(CLI::App& command, std::size_t& jobs) {
    command.add_option("--jobs", jobs, "So many recipes at once; otherwise one a core")
        ->type_name("N")
        ->check(CLI::Range(1, 256));
}

void expect_names(const std::vector<std::string>& files) {
    if (std::count(files.begin(), files.end(), "-") > 1)
        throw wrong_line{"standard input can be read once, and `-` is given twice", {}};
    if (std::find(files.begin(), files.end(), "") != files.end())
        throw wrong_line{"the name of a recipe is empty",
                         {"for example: tart.recipe, or - for standard input"}};
}

void expect_output(const std::string& output, const std::vector<std::string>& files) {
    const std::vector<std::string> helps = {"for example: -o cards.pdf"};
    if (output.empty()) throw wrong_line{"the name of the PDF is empty", helps};
    if (output.ends_with(".recipe"))
        throw wrong_line{fmt::format("-o {} gives the PDF the name of a recipe", output), helps};
    for (const auto& file : files) {
        std::error_code failed;
        if (output != "-" && std::filesystem::equivalent(file, output, failed))
            throw wrong_line{fmt::format("-o {} would write the PDF over the recipe", output),
                             helps};
    }
}

std::string examples(std::initializer_list<std::string_view> lines) {
    std::string result = lines.size() > 1 ? "Examples:\n" : "Example:\n";
    for (const auto line : lines) result += fmt::format("  {}\n", line);
    result.pop_back();
    return result;
}

} // namespace benchcard::commands
