#include "compiler/commands/commands.hpp"
#include "compiler/commands/definitions.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

int print_and_stop(const std::string& text) {
    const auto failure = write_file("-", text);
    if (failure) complain(fmt::format("benchcard: {}\n", *failure));
    return failure ? not_run : done;
}

/// What a line that asks for the program's own words gets, or says what is wrong with the line.
int stop(const CLI::App& program, const CLI::ParseError& e) {
    if (dynamic_cast<const CLI::CallForHelp*>(&e)) return print_and_stop(program.help());
    if (dynamic_cast<const CLI::CallForVersion*>(&e))
        return print_and_stop(std::string(e.what()) + "\n");
    print_wrong_line(explain(program, e));
    return not_run;
}

/// The command line as it is told to shells and to `man`, for those who install it.
struct own_words {
    std::string text;
};

void tell_completion(const CLI::App& app, const std::string& shell) {
    auto text = completion_for(app, shell);
    if (text.empty())
        throw wrong_line{
            fmt::format("there is no completion for `{}`; there is for: bash, zsh, fish", shell),
            {}};
    throw own_words{std::move(text)};
}

void add_definitions(CLI::App& app) {
    app.add_option_function<std::string>(
           "--completion", [&app](const std::string& shell) { tell_completion(app, shell); })
        ->group("");
    app.add_flag_callback("--manual", [&app] { throw own_words{manual_of(app)}; })->group("");
}

void describe(CLI::App& app) {
    app.set_version_flag("--version", "benchcard " BENCHCARD_VERSION, "Print the version and stop");
    app.require_subcommand(1);
    app.get_formatter()->column_width(26);
    for (const auto& [from, to] : {std::pair{"SUBCOMMAND", "COMMAND"},
                                   {"Positionals", "What to give"},
                                   {"REQUIRED", "(needed)"},
                                   {"Excludes", "not with"}})
        app.get_formatter()->label(from, to);
    app.footer(
        "Exit codes:\n"
        "  0  done; warnings are allowed\n"
        "  1  errors in a recipe\n"
        "  2  a wrong command line, an unreadable file, an output that cannot be written\n\n"
        "Example:\n  benchcard check tart.recipe\n\nbenchcard COMMAND --help says more of each.");
}

} // namespace

int run(int argc, const char* const* argv) {
    CLI::App app("Compiles recipes to kitchen cards, in metric and imperial measures.",
                 "benchcard");
    describe(app);
    int code = done;
    for (const auto add : {add_check, add_tidy, add_explain, add_weigh, add_print, add_label,
                           add_convert, add_language_server})
        add(app, code);
    add_definitions(app);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& e) {
        return stop(app, e);
    } catch (const own_words& words) {
        return print_and_stop(words.text);
    } catch (const wrong_line& wrong) {
        print_wrong_line(wrong);
        return not_run;
    }
    return code;
}

} // namespace benchcard::commands
