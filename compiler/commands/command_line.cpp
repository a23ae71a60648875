#include "compiler/cards/fingerprint.hpp"
#include "compiler/commands/card_check.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/definitions.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/html_file.hpp"
#include "compiler/commands/order_options.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "styles/style.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

CLI::Option* add_files(CLI::App& command, std::vector<std::string>& files) {
    return command.add_option("FILE", files, "Recipes; - is standard input")
        ->required()
        ->type_name("");
}

/// A flag without which an option must be given.
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

void add_file(CLI::App& command, std::string& file) {
    command.add_option("FILE", file, "A recipe; - is standard input")->required()->type_name("");
}

check_format format_of(const std::string& word) {
    const std::vector<std::string> names = {"text", "gcc", "json", "sarif"}; // as in check_format
    const auto found = std::find(names.begin(), names.end(), word);
    if (found != names.end()) return static_cast<check_format>(found - names.begin());
    throw wrong_line{
        fmt::format("there is no format `{}`; there are: {}", word, fmt::join(names, ", ")),
        {"for example: --format json"}};
}

void expect_names(const std::vector<std::string>& files) {
    if (std::count(files.begin(), files.end(), "-") > 1)
        throw wrong_line{"standard input can be read once, and `-` is given twice", {}};
    if (std::find(files.begin(), files.end(), "") != files.end())
        throw wrong_line{"the name of a recipe is empty",
                         {"for example: tart.recipe, or - for standard input"}};
}

/// What is written must not take a recipe's place because a word was left out of the command line.
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

/// What the options of all commands are read into, and the code of the one that was run.
struct command_line {
    int code = done;
    std::string measures, format = "text";
    order_text order;
    check_options checked;
    std::string card;
    tidy_options tidied;
    explain_options explained;
    weigh_options weighed;
    print_options printed;
    convert_options converted;
    label_options labelled;
    std::vector<std::string> amount_words, made, frozen;
    std::string flip;
    bool list_wanted = false, tidy_in_file = false, tidy_check = false;
};

CLI::App* add_command(CLI::App& app, const char* name, const char* help) {
    auto* command = app.add_subcommand(name, help);
    command->group("Commands");
    return command;
}

/// What the command line says of one printed card.
card_check_options card_checked(const CLI::App& command, const command_line& line) {
    const auto& files = line.checked.files;
    if (files.size() > 1 || files.front() == "-")
        throw wrong_line{"--card holds a card against one recipe, in a file",
                         {"for example: " + example_of("--card")}};
    for (const auto* other : {"--fix", "--format"})
        if (command.count(other) > 0)
            throw wrong_line{
                fmt::format("--card says something else than {}: give one of them", other),
                {"for example: " + example_of("--card")}};
    auto fingerprint = cards::fingerprint_in(line.card);
    if (fingerprint.empty())
        throw wrong_line{fmt::format("--card takes the fingerprint in the foot of a card, four "
                                     "letters or digits and two, and not `{}`",
                                     line.card),
                         {"for example: " + example_of("--card")}};
    return {files.front(), std::move(fingerprint), placed_of(command, line.order, line.measures)};
}

void run_check(const CLI::App& command, command_line& line) {
    expect_names(line.checked.files);
    if (command.count("--card") > 0) {
        line.code = check_card(card_checked(command, line));
        return;
    }
    expect_no_order(command, "an order is checked with --card alone");
    line.checked.measures = system_of(line.measures);
    line.checked.format = format_of(line.format);
    line.code = check(line.checked);
}

void add_check(CLI::App& app, command_line& line) {
    auto* command = add_command(app, "check", "Say what is wrong or doubtful in recipes");
    add_files(*command, line.checked.files);
    command->add_flag("--fix", line.checked.fix,
                      "Mend in the file what leaves no doubt, say what was mended,\n"
                      "and check what is left; with -, the mended recipe is printed");
    command
        ->add_option("--format", line.format,
                     "For other programs: gcc, a line a message; json; or sarif,\n"
                     "for editors and code hosts. Otherwise text, for people")
        ->type_name("FORMAT");
    command
        ->add_option("--card", line.card,
                     "Instead, say whether a printed card is today's, by the\n"
                     "fingerprint in its foot; for the order below, or the one\n"
                     "that print --record kept")
        ->type_name("7K4Q-92");
    add_order(*command, line.order);
    add_measures(*command, line.measures);
    command->footer(
        examples({"benchcard check tart.recipe", "benchcard check examples/*.recipe",
                  "benchcard check --fix tart.recipe", "benchcard check --format gcc *.recipe",
                  "benchcard check tart.recipe --card 7K4Q-92"}));
    command->callback([&line, command] { run_check(*command, line); });
}

void add_tidy(CLI::App& app, command_line& line) {
    auto* command = add_command(
        app, "tidy", "Print recipes in order: columns in line, settings in their places");
    add_files(*command, line.tidied.files);
    command->add_flag("--write", line.tidy_in_file, "Put each in order in its file instead");
    command->add_flag("--check", line.tidy_check,
                      "Only name those that are not in order, with exit code 1");
    command->footer(examples({"benchcard tidy tart.recipe", "benchcard tidy --write *.recipe",
                              "benchcard tidy --check *.recipe"}));
    command->callback([&line] {
        expect_names(line.tidied.files);
        if (line.tidy_in_file && line.tidy_check)
            throw wrong_line{"--check changes nothing, and --write does: give one of them",
                             {"for example: benchcard tidy --check tart.recipe"}};
        if (line.tidy_in_file) line.tidied.way = tidy_way::write;
        if (line.tidy_check) line.tidied.way = tidy_way::check;
        line.code = tidy(line.tidied);
    });
}

void add_explain(CLI::App& app, command_line& line) {
    auto* command =
        add_command(app, "explain", "Say what a kind of message means, and how it is mended");
    command
        ->add_option("KIND", line.explained.kinds,
                     "The words in brackets behind a message; without any, all kinds are listed")
        ->type_name("");
    command->footer(examples({"benchcard explain mix-too-small", "benchcard explain"}));
    command->callback([&line] { line.code = explain(line.explained); });
}

void add_weigh(CLI::App& app, command_line& line) {
    auto* command =
        add_command(app, "weigh", "Print what to weigh out for every component, as text");
    add_file(*command, line.weighed.file);
    add_order(*command, line.order);
    command->add_flag("--why", line.weighed.why,
                      "Show how each amount came about, with its source,\ninstead of the table");
    add_measures(*command, line.measures);
    command->footer(examples(
        {"benchcard weigh tart.recipe", "benchcard weigh tart.recipe --make '6 tarts'",
         "benchcard weigh tart.recipe --from '400 g butter' --from '3 eggs'",
         "benchcard weigh tart.recipe --tin '20 cm round'", "benchcard weigh tart.recipe --why",
         "benchcard weigh tart.recipe --batch '1/2, 1, 2, 4'",
         "benchcard weigh tart.recipe --make '37 tarts' --fit batch"}));
    command->callback([&line, command] {
        expect_names({line.weighed.file});
        line.weighed.measures = system_of(line.measures);
        line.weighed.order = order_of(*command, line.order);
        line.weighed.fit = fit_of(*command, line.order);
        line.weighed.batches = batches_of(*command, line.order);
        if (line.weighed.why && !line.weighed.batches.empty())
            throw wrong_line{"--why explains one batch, and --batch shows several",
                             {"for example: --why --scale 2"}};
        line.code = weigh(line.weighed);
    });
}

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
    const bool has_input =
        std::find(options.files.begin(), options.files.end(), "-") != options.files.end();
    if (options.files.empty() || has_input || options.output == "-")
        throw wrong_line{"--watch needs recipes in files, and a file to print to",
                         {"for example: benchcard print tart.recipe -o tart.pdf --watch"}};
}

void run_print(const CLI::App& command, command_line& line) {
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
    if (printed.watch) expect_files_to_watch(printed);
    line.code = printed.watch ? watch(printed, once) : once(printed);
}

void add_print(CLI::App& app, command_line& line) {
    auto& printed = line.printed;
    auto* command =
        add_command(app, "print", "Print the cards of recipes to a PDF or a page for a screen");
    auto* files = add_files(*command, printed.files);
    command
        ->add_option("-o,--output", printed.output,
                     "The PDF to write, or a page for a screen where it ends\nin .html; - is a "
                     "PDF on standard output")
        ->required()
        ->type_name("OUT");
    add_order(*command, line.order);
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
        ->add_option("--two-sided", line.flip,
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
    add_measures(*command, line.measures);
    command->footer(
        examples({"benchcard print tart.recipe -o tart.pdf",
                  "benchcard print tart.recipe -o tart.pdf --scale 1/2 --paper A4",
                  "benchcard print tart.recipe -o small.pdf --tin '20 cm round'",
                  "benchcard print tart.recipe -o sizes.pdf --batch '1/2, 1, 2'",
                  "benchcard print tart.recipe -o cream.pdf --card 'Almond cream'",
                  "benchcard print tart.recipe -o sheet.pdf --style sheet --two-sided long",
                  "benchcard print tart.recipe -o tart.pdf --watch",
                  "benchcard print tart.recipe -o tart.html",
                  "benchcard print --chart house/*.recipe -o chart.pdf --measures us"}));
    command->callback([&line, command] { run_print(*command, line); });
}

std::vector<label::date> dates_made(const std::vector<std::string>& texts) {
    std::vector<label::date> result;
    for (const auto& text : texts)
        if (const auto day = label::date_in(text))
            result.push_back(*day);
        else
            throw wrong_line{fmt::format("--made takes a day, and not `{}`", text),
                             {"for example: --made 2026-04-01"}};
    return result;
}

std::vector<label::frozen> days_frozen(const std::vector<std::string>& texts) {
    std::vector<label::frozen> result;
    for (const auto& text : texts)
        if (const auto days = label::frozen_in(text))
            result.push_back(*days);
        else
            throw wrong_line{fmt::format("--frozen takes the day it was frozen and the day it was "
                                         "thawed, and not `{}`",
                                         text),
                             {"for example: --frozen 2026-04-03/2026-04-10"}};
    return result;
}

void run_label(const CLI::App& command, command_line& line) {
    auto& labelled = line.labelled;
    expect_names({labelled.file});
    if (line.format != "text" && line.format != "json")
        throw wrong_line{
            fmt::format("a label has no format `{}`; there are: text, json", line.format),
            {"for example: --format json"}};
    if (command.count("--batch") > 0)
        throw wrong_line{"a label is for one batch: --batch is for weigh",
                         {"for example: --scale 2"}};
    labelled.json = line.format == "json";
    labelled.measures = system_of(line.measures);
    labelled.order = order_of(command, line.order);
    labelled.fit = fit_of(command, line.order);
    labelled.made = dates_made(line.made);
    labelled.frozen = days_frozen(line.frozen);
    if (command.count("--output") > 0) expect_output(labelled.output, {labelled.file});
    if (is_html(labelled.output))
        throw wrong_line{"a label is printed to a PDF", {"for example: -o label.pdf"}};
    if (labelled.json && !labelled.output.empty())
        throw wrong_line{"a label is printed to a PDF, or given as json: not both at once",
                         {"for example: -o label.pdf"}};
    for (const auto* option : {"--style", "--paper"})
        if (command.count(option) > 0 && labelled.output.empty())
            throw wrong_line{fmt::format("{} is for a label that is printed: say where to", option),
                             {"for example: -o label.pdf"}};
    if (labelled.made.empty() && !labelled.frozen.empty())
        throw wrong_line{"--frozen needs the day it was made",
                         {"for example: --made 2026-04-01 --frozen 2026-04-03/2026-04-10"}};
    for (const auto& f : labelled.frozen)
        if (std::all_of(labelled.made.begin(), labelled.made.end(),
                        [&](const auto made) { return f.from < made; }))
            throw wrong_line{
                fmt::format("on {}, when it was frozen, it was not made yet", label::said(f.from)),
                {"for example: --made 2026-04-01 --frozen 2026-04-03/2026-04-10"}};
    line.code = label(labelled);
}

void add_label(CLI::App& app, command_line& line) {
    auto* command = add_command(
        app, "label", "Draft the ingredient list and the use-by date for the person responsible");
    add_file(*command, line.labelled.file);
    add_order(*command, line.order);
    command
        ->add_option("--made", line.made,
                     "The day it was made, for the use-by date; again for each\n"
                     "part made before, as the earliest counts")
        ->type_name("YYYY-MM-DD")
        ->allow_extra_args(false);
    command
        ->add_option("--frozen", line.frozen,
                     "From the day it was frozen to the day it was thawed:\n"
                     "these days do not count")
        ->type_name("FROM/TO")
        ->allow_extra_args(false);
    command
        ->add_option("-o,--output", line.labelled.output,
                     "A PDF of it to write, for a printed label; otherwise text")
        ->type_name("OUT.pdf");
    add_look(*command, line.labelled.style,
             "How it looks: label, or a file of your own; otherwise label", line.labelled.paper);
    command->add_option("--format", line.format, "json, for other programs; otherwise text")
        ->type_name("FORMAT");
    add_measures(*command, line.measures);
    command->footer(
        examples({"benchcard label tart.recipe", "benchcard label tart.recipe --made 2026-04-01",
                  "benchcard label tart.recipe -o label.pdf --paper A7",
                  "benchcard label tart.recipe --format json"}));
    command->callback([&line, command] { run_label(*command, line); });
}

void add_convert(CLI::App& app, command_line& line) {
    auto* command = add_command(app, "convert",
                                "Say what one amount of an ingredient weighs, and by which source");
    auto* amount =
        command
            ->add_option(
                "AMOUNT", line.amount_words,
                "An amount of an ingredient, best in quotes; - reads lines from standard input")
            ->required()
            ->type_name("");
    command->add_flag("--why", line.converted.why, "Show how the weight came about, step by step");
    add_instead_of(*command, amount, "--list", line.list_wanted,
                   "Instead, a table of what a cup and a spoon of each ingredient\n"
                   "weigh; words after it choose those of that name");
    add_measures(*command, line.measures);
    command->footer(examples({"benchcard convert '2 1/4 cups plain flour' --measures us",
                              "benchcard convert - --measures us < pasted.txt",
                              "benchcard convert --list rye flour --measures us"}));
    command->callback([&line] {
        line.converted.amount =
            CLI::detail::trim_copy(fmt::format("{}", fmt::join(line.amount_words, " ")));
        line.converted.measures = system_of(line.measures);
        line.code = line.list_wanted ? list_measures(line.converted) : convert(line.converted);
    });
}

void add_language_server(CLI::App& app, command_line& line) {
    auto* command = add_command(app, "language-server",
                                "Help with recipes in a text editor, which starts it itself");
    // Editors may say how they talk to it; there is one way.
    command->add_flag("--stdio")->group("");
    command->footer("It speaks the Language Server Protocol 3.17 on standard input and output.\n"
                    "How editors are set up: grammar/editors/README.md");
    command->callback([&line] { line.code = language_server(); });
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
    command_line line;
    for (const auto add : {add_check, add_tidy, add_explain, add_weigh, add_print, add_label,
                           add_convert, add_language_server})
        add(app, line);
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
    return line.code;
}

} // namespace benchcard::commands
