#include "compiler/commands/commands.hpp"
#include "grammar/parse.hpp"
#include "styles/style.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// What the command line says of the order, as text until the command is known.
struct order_text {
    std::string scale, make;
};

void add_order(CLI::App& command, order_text& order) {
    auto* scale = command.add_option("--scale", order.scale, "Make the recipe so many times: 1/2, 3, 1.5");
    auto* make = command.add_option("--make", order.make, "Make so much of the product: '48 tarts', '2 kg'");
    scale->type_name("N")->excludes(make);
    make->type_name("'N PIECES'");
}

void add_measures(CLI::App& command, std::string& measures) {
    command
        .add_option("--measures", measures,
                    "Whose cups and spoons: us, metric, uk, imperial, australian, canadian, us-label; "
                    "instead of what the recipe says")
        ->type_name("WHOSE");
}

measures::system system_of(const std::string& word) {
    if (word.empty()) return measures::system::unstated;
    if (const auto named = measures::system_named(word)) return *named;
    throw CLI::ValidationError("--measures", fmt::format("there are no measures called `{}`", word));
}

batch::order order_of(const order_text& text) {
    if (!text.scale.empty()) {
        const auto number = grammar::parse_number(text.scale);
        if (!number) throw CLI::ValidationError("--scale", fmt::format("`{}` is not a number above 0, such as 2, 1/2 or 1.5", text.scale));
        return batch::scaled{*number};
    }
    if (!text.make.empty()) {
        const auto wanted = grammar::parse_yield(grammar::source(0, "--make", text.make));
        if (!wanted.made) throw CLI::ValidationError("--make", fmt::format("`{}` is not an order, such as '48 tarts' or '2 kg'", text.make));
        return batch::to_make{*wanted.made};
    }
    return batch::as_written{};
}

std::string examples(std::initializer_list<std::string_view> lines) {
    std::string result = lines.size() > 1 ? "Examples:\n" : "Example:\n";
    for (const auto line : lines) result += fmt::format("  {}\n", line);
    result.pop_back();
    return result;
}

} // namespace

int run(int argc, const char* const* argv) {
    CLI::App app("Compiles recipes to kitchen cards, in metric and imperial measures.", "benchcard");
    app.set_version_flag("--version", "benchcard " BENCHCARD_VERSION, "Print the version and stop");
    app.require_subcommand(1);
    app.footer("Exit codes: 0 done (warnings allowed), 1 errors in a recipe, 2 wrong command line, "
               "unreadable file or output that cannot be written.\nbenchcard COMMAND --help says more of each.");

    int code = done;
    std::string measures;
    order_text order;

    check_options checked;
    auto* check_command = app.add_subcommand("check", "Say what is wrong or doubtful in recipes");
    check_command->add_option("FILE", checked.files, "Recipes; - is standard input")->required()->type_name("");
    add_measures(*check_command, measures);
    check_command->footer(examples({"benchcard check examples/*.recipe"}));
    check_command->callback([&] {
        checked.measures = system_of(measures);
        code = check(checked);
    });

    weigh_options weighed;
    auto* weigh_command = app.add_subcommand("weigh", "Print what to weigh out for every component, as text");
    weigh_command->add_option("FILE", weighed.file, "A recipe; - is standard input")->required()->type_name("");
    add_order(*weigh_command, order);
    weigh_command->add_flag("--why", weighed.why, "Show how each amount came about, with its source, instead of the table");
    add_measures(*weigh_command, measures);
    weigh_command->footer(examples({"benchcard weigh tart.recipe", "benchcard weigh tart.recipe --make '6 tarts'", "benchcard weigh tart.recipe --why"}));
    weigh_command->callback([&] {
        weighed.measures = system_of(measures);
        weighed.order = order_of(order);
        code = weigh(weighed);
    });

    print_options printed;
    auto* print_command = app.add_subcommand("print", "Print the cards of recipes to a PDF");
    print_command->add_option("FILE", printed.files, "Recipes; - is standard input")->required()->type_name("");
    print_command->add_option("-o,--output", printed.output, "The PDF to write; - is standard output")->required()->type_name("OUT.pdf");
    add_order(*print_command, order);
    print_command->add_option("--style", printed.style, "How the cards look")->capture_default_str()->type_name("NAME");
    print_command->add_option("--paper", printed.paper, "A4, A5, A6, letter, half-letter, 5x8, 4x6 or 3x5; otherwise the style's own")->type_name("SIZE");
    add_measures(*print_command, measures);
    print_command->footer(examples({"benchcard print tart.recipe -o tart.pdf", "benchcard print tart.recipe -o tart.pdf --scale 1/2 --paper A4"}));
    print_command->callback([&] {
        printed.measures = system_of(measures);
        printed.order = order_of(order);
        code = print(printed);
    });

    convert_options converted;
    auto* convert_command = app.add_subcommand("convert", "Say what one amount of an ingredient weighs, and by which source");
    convert_command->add_option("AMOUNT", converted.amount, "An amount of an ingredient, in quotes")->required()->type_name("");
    add_measures(*convert_command, measures);
    convert_command->footer(examples({"benchcard convert '2 1/4 cups plain flour' --measures us"}));
    convert_command->callback([&] {
        converted.measures = system_of(measures);
        code = convert(converted);
    });

    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& e) {
        return app.exit(e) == 0 ? done : not_run;
    }
    return code;
}

} // namespace benchcard::commands
