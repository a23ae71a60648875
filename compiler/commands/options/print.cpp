#include "compiler/commands/commands.hpp"
#include "compiler/commands/house_book.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"
#include "compiler/commands/order_options.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <memory>

namespace benchcard::commands {

namespace {

struct print_given {
    print_options printed;
    order_text order;
    std::string measures, flip;
};

/// The edge over which sheets are turned; nothing where they are printed on one side.
std::optional<layout::flip> flip_of(const CLI::App& command, const std::string& edge) {
    if (command.count("--two-sided") == 0) return std::nullopt;
    if (edge == "long") return layout::flip::long_edge;
    if (edge == "short") return layout::flip::short_edge;
    throw wrong_line{fmt::format("--two-sided takes the edge over which the sheet is turned, long "
                                 "or short, and not `{}`",
                                 edge),
                     {"for example: --two-sided long"}};
}

void expect_files_to_watch(const print_options& options) {
    const auto is_no_file = [](const std::string& name) { return name == "-" || is_folder(name); };
    if (options.files.empty() || is_no_file(options.output) ||
        std::any_of(options.files.begin(), options.files.end(), is_no_file))
        throw wrong_line{"--watch needs recipes in files, and a file to print to",
                         {"for example: benchcard print tart.recipe -o tart.pdf --watch"}};
}

void expect_depfile(const CLI::App& command, const print_options& options) {
    if (command.count("--depfile") == 0) return;
    expect_output(options.depfile, options.files);
    if (options.output == "-")
        throw wrong_line{"--depfile needs an output in a file",
                         {"for example: -o tart.pdf --depfile tart.d"}};
}

int run_print(const CLI::App& command, print_given& line) {
    auto& printed = line.printed;
    expect_names(printed.files);
    expect_output(printed.output, printed.files);
    printed.measures = system_of(line.measures);
    printed.order = order_of(command, line.order);
    printed.fit = fit_of(command, line.order);
    if (printed.record) printed.order_words = words_of(line.order, line.measures);
    if (printed.record && printed.chart)
        throw wrong_line{"--record keeps what cards say, and a chart is none", {}};
    if (printed.record && std::count(printed.files.begin(), printed.files.end(), "-") > 0)
        throw wrong_line{"--record writes beside the recipe's file, and standard input is none",
                         {"for example: benchcard print tart.recipe -o tart.pdf --record"}};
    printed.batches = batches_of(command, line.order);
    printed.two_sided = flip_of(command, line.flip);
    if (printed.chart && !printed.cards.empty())
        throw wrong_line{"--chart is one sheet: --card is for the cards of recipes", {}};
    if (printed.chart && (printed.fit || !printed.batches.empty() ||
                          !std::holds_alternative<batch::as_written>(printed.order)))
        throw wrong_line{"--chart is the same for every batch: leave the order out", {}};
    const printer once = printed.chart ? print_chart : print;
    if (printed.chart && is_folder(printed.output))
        throw wrong_line{"--chart is one sheet: give it the name of a PDF",
                         {"for example: -o chart.pdf"}};
    expect_depfile(command, printed);
    if (printed.watch) expect_files_to_watch(printed);
    return printed.watch ? watch(printed, once) : once(printed);
}

} // namespace

void add_print(CLI::App& app, int& code) {
    const auto line = std::make_shared<print_given>();
    auto& printed = line->printed;
    auto* command =
        add_command(app, "print", "Print the cards of recipes to a PDF or a page for a screen");
    auto* files = add_files(*command, printed.files);
    command
        ->add_option("-o,--output", printed.output,
                     "The PDF to write, a page for a screen where it ends in\n"
                     ".html, or a folder for a PDF each; - is a PDF on standard\noutput")
        ->required()
        ->type_name("OUT");
    add_order(*command, line->order);
    command
        ->add_option("--card", printed.cards,
                     "Only the card of this component; again for each more")
        ->type_name("NAME")
        ->allow_extra_args(false);
    add_look(*command, printed.style,
             "How the cards look: station, hand, sheet, office, or a\n"
             "file of your own; otherwise station",
             printed.paper);
    command
        ->add_option("--two-sided", line->flip,
                     "For printing on both sides: the edge over which sheets are\n"
                     "turned, long or short; a card begins on a front")
        ->type_name("EDGE");
    command
        ->add_option("--copies-per-sheet", printed.copies,
                     "So many copies of each card on a sheet, for --style sheet")
        ->type_name("N")
        ->check(CLI::Range(1, 99));
    command->add_flag("--record", printed.record,
                      "Keep what the cards say in a file beside the recipe,\n"
                      "tart.cards of tart.recipe, for check --card");
    command->add_flag("--dated", printed.dated,
                      "Say in the PDF when it was made; without it the same cards\n"
                      "are the same bytes");
    add_instead_of(*command, files, "--chart", printed.chart,
                   "Instead of cards a wall chart: what a cup and a spoon of the\n"
                   "recipes' ingredients weigh; without a recipe, of all in the table");
    command->add_flag("--watch", printed.watch,
                      "Print again whenever a recipe, or a file that it uses, is saved;\n"
                      "with errors in it the last PDF stays");
    command
        ->add_option("--depfile", printed.depfile,
                     "Also write which files the output was made from, as make\n"
                     "and ninja read it")
        ->type_name("FILE");
    add_jobs(*command, printed.jobs);
    add_confined(*command, printed.confined);
    add_measures(*command, line->measures);
    command->footer(
        examples({"benchcard print tart.recipe -o tart.pdf",
                  "benchcard print tart.recipe -o tart.pdf --scale 1/2 --paper A4",
                  "benchcard print tart.recipe -o small.pdf --tin '20 cm round'",
                  "benchcard print tart.recipe -o sizes.pdf --batch '1/2, 1, 2'",
                  "benchcard print tart.recipe -o cream.pdf --card 'Almond cream'",
                  "benchcard print tart.recipe -o sheet.pdf --style sheet --two-sided long",
                  "benchcard print tart.recipe -o tart.pdf --watch",
                  "benchcard print tart.recipe -o tart.html", "benchcard print house -o house.pdf",
                  "benchcard print house -o cards/",
                  "benchcard print --chart house/*.recipe -o chart.pdf --measures us"}));
    command->callback([line, command, &code] { code = run_print(*command, *line); });
}

} // namespace benchcard::commands
