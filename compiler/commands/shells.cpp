#include "compiler/commands/definitions.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "compiler/measures/systems.hpp"
#include "styles/style.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

namespace {

std::string joined(const std::vector<std::string>& words, const char* with = " ") {
    return fmt::format("{}", fmt::join(words, with));
}

/// The first sentence of a help text, on one line.
std::string first_of(const std::string& help) {
    std::string result;
    for (const char c : help.substr(0, help.find_first_of(";:"))) result += c == '\n' ? ' ' : c;
    return result;
}

bool takes_value(const CLI::Option& o) { return o.get_items_expected_max() > 0; }

bool is_file(const CLI::Option& o) {
    return o.get_name() == "--output" || o.get_name() == "--depfile";
}

std::vector<const CLI::App*> commands_of(const CLI::App& program) {
    return program.get_subcommands([](const CLI::App*) { return true; });
}

std::vector<std::string> names_of(const CLI::App& program) {
    std::vector<std::string> result;
    for (const auto* c : commands_of(program)) result.push_back(c->get_name());
    return result;
}

std::vector<std::string> all_spellings(const CLI::App& command) {
    std::vector<std::string> result;
    for (const auto* o : shown_options(command))
        for (auto& s : spellings_of(*o)) result.push_back(std::move(s));
    return result;
}

/// What stands for something in a command, where only some words can.
std::vector<std::string> positional_choices(const CLI::App& command) {
    for (const auto* o : command.get_options())
        if (o->get_positional())
            if (auto words = choices_of(command.get_name(), o->get_name()); !words.empty())
                return words;
    return {};
}

std::string bash(const CLI::App& program) {
    std::string values, options, words;
    for (const auto* c : commands_of(program)) {
        for (const auto* o : shown_options(*c)) {
            if (!takes_value(*o)) continue;
            std::vector<std::string> patterns;
            for (const auto& s : spellings_of(*o)) patterns.push_back(c->get_name() + ":" + s);
            const auto choices = choices_of(c->get_name(), o->get_name());
            const auto reply = is_file(*o)       ? "compgen -f"
                               : choices.empty() ? ":"
                                                 : fmt::format("compgen -W '{}'", joined(choices));
            values += fmt::format("    {}) COMPREPLY=($({} -- \"$word\")); return ;;\n",
                                  joined(patterns, "|"), reply);
        }
        options +=
            fmt::format("        {}) words='{}' ;;\n", c->get_name(), joined(all_spellings(*c)));
        if (const auto p = positional_choices(*c); !p.empty())
            words += fmt::format("    {}) COMPREPLY=($(compgen -W '{}' -- \"$word\")) ;;\n",
                                 c->get_name(), joined(p));
    }
    return fmt::format(R"(# Completion of benchcard for bash.
_benchcard() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}
    local command=${{COMP_WORDS[1]}} words=
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W '{} {}' -- "$word"))
        return
    fi
    case $command:$before in
{}    esac
    if [[ $word == -* ]]; then
        case $command in
{}        esac
        COMPREPLY=($(compgen -W "$words" -- "$word"))
        return
    fi
    case $command in
{}    *) COMPREPLY=($(compgen -f -X '!*.recipe' -- "$word")) ;;
    esac
}}
complete -o filenames -o plusdirs -F _benchcard benchcard
)",
                       joined(names_of(program)), joined(all_spellings(program)), values, options,
                       words);
}

/// A text within single quotes and square brackets of an `_arguments` specification.
std::string zsh_quoted(const std::string& text) {
    std::string result;
    for (const char c : text) {
        if (c == '\'')
            result += "'\\''";
        else if (c == '[' || c == ']' || c == ':' || c == '\\')
            result += std::string{'\\', c};
        else
            result += c;
    }
    return result;
}

std::string zsh_action(const CLI::App& command, const CLI::Option& o) {
    const auto choices = choices_of(command.get_name(), o.get_name());
    if (!choices.empty()) return fmt::format("({})", joined(choices));
    return o.get_positional() ? "_files -g \"*.recipe\"" : is_file(o) ? "_files" : " ";
}

std::string zsh(const CLI::App& program) {
    std::string commands, options;
    for (const auto* c : commands_of(program)) {
        commands +=
            fmt::format("        '{}:{}'\n", c->get_name(), zsh_quoted(c->get_description()));
        options += fmt::format("            {})\n                _arguments", c->get_name());
        for (const auto* o : shown_options(*c))
            for (const auto& s : spellings_of(*o))
                options += fmt::format(" \\\n                    '*{}[{}]{}'", s,
                                       zsh_quoted(first_of(o->get_description())),
                                       takes_value(*o) ? ": :" + zsh_action(*c, *o) : "");
        for (const auto* o : c->get_options())
            if (o->get_positional())
                options += fmt::format(" \\\n                    '*: :{}'", zsh_action(*c, *o));
        options += "\n                ;;\n";
    }
    return fmt::format(R"(#compdef benchcard
# Completion of benchcard for zsh.
_benchcard() {{
    local -a commands
    local state line
    commands=(
{}    )
    _arguments -C '(- *)--help[Print this help and stop]' '(- *)--version[Print the version and stop]' \
        '1: :->command' '*:: :->rest'
    case $state in
    command) _describe command commands ;;
    rest)
        case $words[1] in
{}        esac
        ;;
    esac
}}
_benchcard "$@"
)",
                       commands, options);
}

std::string fish_quoted(const std::string& text) {
    std::string result;
    for (const char c : text) {
        if (c == '\'' || c == '\\') result += '\\';
        result += c;
    }
    return "'" + result + "'";
}

std::string fish_option(const CLI::App& command, const CLI::Option& o) {
    auto line = fmt::format("complete -c benchcard -n '__fish_seen_subcommand_from {}'",
                            command.get_name());
    for (const auto& s : spellings_of(o))
        line += s.starts_with("--") ? " -l " + s.substr(2) : " -s " + s.substr(1);
    if (takes_value(o)) {
        const auto choices = choices_of(command.get_name(), o.get_name());
        line += is_file(o)        ? " -rF"
                : choices.empty() ? " -x"
                                  : " -x -a " + fish_quoted(joined(choices));
    }
    return line + " -d " + fish_quoted(first_of(o.get_description())) + "\n";
}

std::string fish(const CLI::App& program) {
    std::string result = "# Completion of benchcard for fish.\n"
                         "complete -c benchcard -f\n"
                         "complete -c benchcard -n __fish_use_subcommand -l help "
                         "-d 'Print this help and stop'\n"
                         "complete -c benchcard -n __fish_use_subcommand -l version "
                         "-d 'Print the version and stop'\n";
    for (const auto* c : commands_of(program)) {
        result += fmt::format("complete -c benchcard -n __fish_use_subcommand -a {} -d {}\n",
                              c->get_name(), fish_quoted(c->get_description()));
        for (const auto* o : shown_options(*c)) result += fish_option(*c, *o);
        const auto words = positional_choices(*c);
        const bool takes_files = c->get_option_no_throw("FILE") != nullptr;
        if (!words.empty() || takes_files)
            result += fmt::format(
                "complete -c benchcard -n '__fish_seen_subcommand_from {}' -a {}\n", c->get_name(),
                words.empty() ? "'(__fish_complete_suffix .recipe)'" : fish_quoted(joined(words)));
    }
    return result;
}

} // namespace

std::vector<std::string> choices_of(const std::string& command, const std::string& name) {
    std::vector<std::string> result;
    if (name == "--measures") {
        for (const auto s : measures::all_systems) result.emplace_back(measures::name_of(s));
    } else if (name == "--format") {
        if (command == "label") return {"text", "json"};
        return {"text", "gcc", "json", "sarif"};
    } else if (name == "--fit") {
        return {"need", "batch"};
    } else if (name == "--two-sided") {
        return {"long", "short"};
    } else if (name == "--style") {
        for (const auto& s : styles::built_in_style_names()) result.emplace_back(s);
    } else if (name == "--paper") {
        for (const auto& p : styles::papers()) result.emplace_back(p.name);
    } else if (name == "KIND") {
        for (const auto& k : diagnostics::all_kinds()) result.emplace_back(k.name);
    }
    return result;
}

std::vector<const CLI::Option*> shown_options(const CLI::App& command) {
    std::vector<const CLI::Option*> result;
    for (const auto* o : command.get_options())
        if (!o->get_positional() && !o->get_group().empty()) result.push_back(o);
    return result;
}

std::vector<std::string> spellings_of(const CLI::Option& option) {
    std::vector<std::string> result;
    for (const auto& s : option.get_snames()) result.push_back("-" + s);
    for (const auto& l : option.get_lnames()) result.push_back("--" + l);
    return result;
}

std::string completion_for(const CLI::App& program, const std::string& shell) {
    return shell == "bash"   ? bash(program)
           : shell == "zsh"  ? zsh(program)
           : shell == "fish" ? fish(program)
                             : "";
}

} // namespace benchcard::commands
