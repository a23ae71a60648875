#include "compiler/commands/wrong_line.hpp"

#include "compiler/commands/files.hpp"
#include "grammar/nearest.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace benchcard::commands {

std::string example_of(const std::string& name) {
    if (name == "FILE") return "tart.recipe";
    if (name == "AMOUNT") return "'2 1/4 cups plain flour'";
    if (name == "--output") return "-o cards.pdf";
    if (name == "--scale") return "--scale 1/2";
    if (name == "--make") return "--make '48 tarts'";
    if (name == "--from") return "--from '400 g butter'";
    if (name == "--tin") return "--tin '20 cm round'";
    if (name == "--flour") return "--flour '25 kg'";
    if (name == "--batch") return "--batch '1/2, 1, 2, 4'";
    if (name == "--fit") return "--fit batch";
    if (name == "--measures") return "--measures us";
    if (name == "--style") return "--style station";
    if (name == "--paper") return "--paper A5";
    if (name == "--format") return "--format json";
    if (name == "--card") return "benchcard check tart.recipe --card 7K4Q-92";
    return name;
}

namespace {

std::string listed(const std::vector<std::string>& words, std::string_view last_word = "and") {
    std::string result;
    for (std::size_t i = 0; i < words.size(); ++i)
        result += (i == 0                  ? ""
                   : i + 1 == words.size() ? fmt::format(" {} ", last_word)
                                           : ", ") +
                  words[i];
    return result;
}

/// The command that was named, or nothing.
const CLI::App* command_of(const CLI::App& program) {
    const auto named = program.get_subcommands();
    return named.empty() ? nullptr : named.front();
}

std::vector<std::string> command_names(const CLI::App& program) {
    std::vector<std::string> result;
    for (const auto* c : program.get_subcommands([](const CLI::App*) { return true; }))
        result.push_back(c->get_name());
    return result;
}

std::vector<std::string> option_names(const CLI::App& command) {
    std::vector<std::string> result;
    for (const auto* o : command.get_options())
        if (!o->get_positional()) result.push_back(o->get_name());
    return result;
}

/// A whole command line that would do.
std::string line_of(const CLI::App& command) {
    auto result = "benchcard " + command.get_name();
    for (const auto* o : command.get_options())
        if (o->get_required() && o->get_positional()) result += " " + example_of(o->get_name());
    for (const auto* o : command.get_options())
        if (o->get_required() && !o->get_positional()) result += " " + example_of(o->get_name());
    return result;
}

std::string more_of(const CLI::App& command) {
    return fmt::format("all of it: benchcard {} --help", command.get_name());
}

wrong_line without_command(const CLI::App& program) {
    const auto names = command_names(program);
    const auto given = program.remaining();
    const auto all = "all of it: benchcard --help";
    if (given.empty())
        return {fmt::format("say what to do: {}", listed(names, "or")),
                {"for example: benchcard check tart.recipe", all}};
    const auto& word = given.front();
    if (word.starts_with("-") && word != "-")
        return {fmt::format("there is no option `{}` before the command", word),
                {"for example: benchcard check tart.recipe", all}};
    wrong_line result{fmt::format("there is no command `{}`; there are {}", word, listed(names)),
                      {}};
    if (word == "-" || word.find('.') != word.npos)
        result.helps.push_back(fmt::format("the command comes first: benchcard check {}", word));
    for (const auto& near : grammar::nearest(word, names, 1))
        result.helps.push_back("the nearest is `" + near + "`");
    result.helps.push_back(all);
    return result;
}

wrong_line missing(const CLI::App& command) {
    for (const auto* o : command.get_options()) {
        if (!o->get_required() || o->count() > 0) continue;
        const auto& name = o->get_name();
        const auto what = name == "FILE"     ? "a recipe"
                          : name == "AMOUNT" ? "an amount of an ingredient"
                                             : "the name of the PDF to write";
        return {fmt::format("{} needs {}", command.get_name(), what),
                {"for example: " + line_of(command), more_of(command)}};
    }
    return {command.get_name() + ": something is missing",
            {"for example: " + line_of(command), more_of(command)}};
}

wrong_line too_much(const CLI::App& command) {
    // CLI11 keeps what it could not take in the order of the line.
    const auto given = command.remaining();
    const auto word = given.empty() ? std::string() : given.front();
    if (!word.starts_with("-") || word == "-")
        return {fmt::format("{} takes one recipe, and `{}` is one more", command.get_name(), word),
                {more_of(command)}};
    const auto names = option_names(command);
    const auto option = word.substr(0, word.find('='));
    wrong_line result{
        fmt::format("{} has no option `{}`; it has {}", command.get_name(), option, listed(names)),
        {}};
    for (const auto& near : grammar::nearest(option, names, 1))
        result.helps.push_back("the nearest is `" + near + "`");
    result.helps.push_back(more_of(command));
    return result;
}

wrong_line wrong_count(const CLI::App& command, const std::string& said) {
    const auto name = said.substr(0, said.find(':'));
    const auto* option = command.get_option_no_throw(name);
    if (option && option->count() > 1)
        return {fmt::format("{} can be given once", name), {more_of(command)}};
    return {fmt::format("{} is followed by nothing", name),
            {"for example: " + example_of(name), more_of(command)}};
}

} // namespace

wrong_line explain(const CLI::App& program, const CLI::ParseError& error) {
    const auto* command = command_of(program);
    if (!command) return without_command(program);
    if (dynamic_cast<const CLI::RequiredError*>(&error)) return missing(*command);
    if (dynamic_cast<const CLI::ExtrasError*>(&error)) return too_much(*command);
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error))
        return wrong_count(*command, error.what());
    return {error.what(), {more_of(*command)}};
}

void print_wrong_line(const wrong_line& wrong) {
    complain(fmt::format("benchcard: {}\n", wrong.message));
    for (const auto& help : wrong.helps) complain(fmt::format("     = help: {}\n", help));
}

} // namespace benchcard::commands
