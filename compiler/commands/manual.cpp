#include "compiler/commands/definitions.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// Text as roff takes it: no line begins a macro, and hyphens are what they are.
std::string roff(const std::string& text) {
    std::string result;
    for (const char c : text) {
        const bool is_first = result.empty() || result.back() == '\n';
        if (is_first && (c == '.' || c == '\'')) result += "\\&";
        if (c == '\\')
            result += "\\e";
        else if (c == '-')
            result += "\\-";
        else
            result += c;
    }
    return result;
}

std::string on_one_line(std::string text) {
    for (auto& c : text)
        if (c == '\n') c = ' ';
    return text;
}

std::string synopsis_of(const CLI::App& command) {
    auto result = fmt::format(".B benchcard {}\n", roff(command.get_name()));
    if (!shown_options(command).empty()) result += ".RI [ option ]...\n";
    for (const auto* o : command.get_options())
        if (o->get_positional()) {
            const auto many = o->get_items_expected_max() > 1 ? "..." : "";
            result += o->get_required() ? fmt::format(".IR {} {}\n", o->get_name(), many)
                                        : fmt::format(".RI [ {} ]{}\n", o->get_name(), many);
        }
    return result;
}

std::string option_text(const CLI::Option& o) {
    std::string tag;
    for (const auto& s : spellings_of(o)) tag += (tag.empty() ? "" : ", ") + s;
    const bool takes_value = o.get_items_expected_max() > 0;
    auto line = fmt::format("\\fB{}\\fR", roff(tag));
    if (takes_value) line += fmt::format(" \\fI{}\\fR", roff(o.get_type_name()));
    return fmt::format(".TP\n{}\n{}\n", line, roff(on_one_line(o.get_description())));
}

/// `Examples:` and the indented lines under it, as they are.
std::string footer_text(const std::string& footer) {
    return footer.empty() ? "" : fmt::format(".PP\n.nf\n{}\n.fi\n", roff(footer));
}

std::string command_text(const CLI::App& command) {
    auto result = fmt::format(".SS {}\n{}.PP\n{}.\n", roff(command.get_name()),
                              synopsis_of(command), roff(command.get_description()));
    for (const auto* o : command.get_options())
        if (o->get_positional())
            result += fmt::format(".TP\n\\fI{}\\fR\n{}\n", o->get_name(),
                                  roff(on_one_line(o->get_description())));
    for (const auto* o : shown_options(command)) result += option_text(*o);
    return result + footer_text(command.get_footer());
}

} // namespace

std::string manual_of(const CLI::App& program) {
    auto result = fmt::format(".TH BENCHCARD 1 \"\" \"benchcard {}\" \"User Commands\"\n"
                              ".SH NAME\nbenchcard \\- compile recipes to kitchen cards\n"
                              ".SH SYNOPSIS\n.B benchcard\n.I command\n.RI [ option ]...\n"
                              ".RI [ file ]...\n"
                              ".SH DESCRIPTION\n{}\nA recipe is a plain text file whose name ends "
                              "in .recipe.\n.SH COMMANDS\n",
                              BENCHCARD_VERSION, roff(program.get_description()));
    for (const auto* c : program.get_subcommands([](const CLI::App*) { return true; }))
        result += command_text(*c);
    result += ".SH OPTIONS\n";
    for (const auto* o : shown_options(program)) result += option_text(*o);
    return result + ".SH EXIT STATUS\n" + footer_text(program.get_footer());
}

} // namespace benchcard::commands
