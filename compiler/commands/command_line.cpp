#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "grammar/nearest.hpp"
#include "grammar/parse.hpp"
#include "styles/style.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// What the command line says of the order, as text until the command is known.
struct order_text {
    std::string scale, make;
    CLI::Option* scale_option = nullptr;
    CLI::Option* make_option = nullptr;
};

void add_order(CLI::App& command, order_text& order) {
    order.scale_option =
        command.add_option("--scale", order.scale, "Make the recipe so many times: 1/2, 3, 1.5");
    order.make_option =
        command.add_option("--make", order.make, "Make so much of the product: '48 tarts', '2 kg'");
    order.scale_option->type_name("N")->excludes(order.make_option);
    order.make_option->type_name("'N PIECES'");
}

void add_measures(CLI::App& command, std::string& measures) {
    command
        .add_option("--measures", measures,
                    "Whose cups and spoons, instead of what the recipe says:\n"
                    "us, metric, uk, imperial, australian, canadian or us-label")
        ->type_name("WHOSE");
}

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

void add_file(CLI::App& command, std::string& file) {
    command.add_option("FILE", file, "A recipe; - is standard input")->required()->type_name("");
}

measures::system system_of(const std::string& word) {
    if (word.empty()) return measures::system::unstated;
    if (const auto named = measures::system_named(word)) return *named;
    std::vector<std::string> names;
    for (const auto s : measures::all_systems) names.emplace_back(measures::name_of(s));
    wrong_line wrong{fmt::format("there are no measures called `{}`; there are: {}", word,
                                 fmt::join(names, ", ")),
                     {}};
    for (const auto& near : grammar::nearest(word, names, 1))
        wrong.helps.push_back("the nearest is `" + near + "`");
    throw wrong;
}

check_format format_of(const std::string& word) {
    const std::vector<std::string> names = {"text", "gcc", "json", "sarif"}; // as in check_format
    const auto found = std::find(names.begin(), names.end(), word);
    if (found != names.end()) return static_cast<check_format>(found - names.begin());
    throw wrong_line{
        fmt::format("there is no format `{}`; there are: {}", word, fmt::join(names, ", ")),
        {"for example: --format json"}};
}

std::string without_outer_blanks(const std::string& text) { return CLI::detail::trim_copy(text); }

batch::order scaled_by(const std::string& text) {
    if (const auto number = grammar::parse_number(without_outer_blanks(text)))
        return batch::scaled{*number};
    throw wrong_line{fmt::format("--scale takes a number above 0, and not `{}`", text),
                     {"for example: --scale 2, --scale 1/2 or --scale 1.5"}};
}

/// How many or how much to make: one plain number of pieces, or one of a weight or a volume.
batch::order order_to_make(const std::string& text) {
    const auto trimmed = without_outer_blanks(text);
    const auto made = grammar::parse_yield(grammar::source(0, "--make", trimmed)).made;
    const std::vector<std::string> helps = {
        "for example: --make '48 tarts', --make 48 or --make '2 kg'"};
    if (!made || trimmed.find_first_of("\n#") != trimmed.npos)
        throw wrong_line{
            fmt::format("--make takes how many or how much to make, and not `{}`", text), helps};
    if (made->each || (!made->count && !made->whole))
        throw wrong_line{fmt::format("--make takes how many or how much, and `{}` says how heavy a "
                                     "piece is; that stands in the recipe",
                                     text),
                         helps};
    const auto& number = made->whole ? made->whole->quantity : *made->count;
    if (number.low != number.high || number.packs)
        throw wrong_line{fmt::format("--make takes one number, and `{}` has two", text), helps};
    return batch::to_make{*made};
}

batch::order order_of(const CLI::App& command, const order_text& text) {
    // Whether an option was given is asked of the command: an empty text is given too.
    if (command.count("--scale") > 0) return scaled_by(text.scale);
    if (command.count("--make") > 0) return order_to_make(text.make);
    return batch::as_written{};
}

void expect_names(const std::vector<std::string>& files) {
    if (std::count(files.begin(), files.end(), "-") > 1)
        throw wrong_line{"standard input can be read once, and `-` is given twice", {}};
    if (std::find(files.begin(), files.end(), "") != files.end())
        throw wrong_line{"the name of a recipe is empty",
                         {"for example: tart.recipe, or - for standard input"}};
}

/// A PDF must not take a recipe's place because a word was left out of the command line.
void expect_output(const print_options& options) {
    const std::vector<std::string> helps = {"for example: -o cards.pdf"};
    if (options.output.empty()) throw wrong_line{"the name of the PDF is empty", helps};
    if (options.output.ends_with(".recipe"))
        throw wrong_line{fmt::format("-o {} gives the PDF the name of a recipe", options.output),
                         helps};
    for (const auto& file : options.files) {
        std::error_code failed;
        if (options.output != "-" && std::filesystem::equivalent(file, options.output, failed))
            throw wrong_line{
                fmt::format("-o {} would write the PDF over the recipe", options.output), helps};
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

} // namespace

int run(int argc, const char* const* argv) {
    CLI::App app("Compiles recipes to kitchen cards, in metric and imperial measures.",
                 "benchcard");
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

    int code = done;
    std::string measures;
    order_text order;

    check_options checked;
    auto* check_command = app.add_subcommand("check", "Say what is wrong or doubtful in recipes");
    add_files(*check_command, checked.files);
    std::string format = "text";
    check_command->add_flag("--fix", checked.fix,
                            "Mend in the file what leaves no doubt, say what was mended,\n"
                            "and check what is left; with -, the mended recipe is printed");
    check_command
        ->add_option("--format", format,
                     "For other programs: gcc, a line a message; json; or sarif,\n"
                     "for editors and code hosts. Otherwise text, for people")
        ->type_name("FORMAT");
    add_measures(*check_command, measures);
    check_command->footer(
        examples({"benchcard check tart.recipe", "benchcard check examples/*.recipe",
                  "benchcard check --fix tart.recipe", "benchcard check --format gcc *.recipe"}));
    check_command->group("Commands");
    check_command->callback([&] {
        expect_names(checked.files);
        checked.measures = system_of(measures);
        checked.format = format_of(format);
        code = check(checked);
    });

    explain_options explained;
    auto* explain_command =
        app.add_subcommand("explain", "Say what a kind of message means, and how it is mended");
    explain_command
        ->add_option("KIND", explained.kinds,
                     "The words in brackets behind a message; without any, all kinds are listed")
        ->type_name("");
    explain_command->footer(examples({"benchcard explain mix-too-small", "benchcard explain"}));
    explain_command->group("Commands");
    explain_command->callback([&] { code = explain(explained); });

    weigh_options weighed;
    auto* weigh_command =
        app.add_subcommand("weigh", "Print what to weigh out for every component, as text");
    add_file(*weigh_command, weighed.file);
    add_order(*weigh_command, order);
    weigh_command->add_flag(
        "--why", weighed.why,
        "Show how each amount came about, with its source,\ninstead of the table");
    add_measures(*weigh_command, measures);
    weigh_command->footer(
        examples({"benchcard weigh tart.recipe", "benchcard weigh tart.recipe --make '6 tarts'",
                  "benchcard weigh tart.recipe --why"}));
    weigh_command->group("Commands");
    weigh_command->callback([&] {
        expect_names({weighed.file});
        weighed.measures = system_of(measures);
        weighed.order = order_of(*weigh_command, order);
        code = weigh(weighed);
    });

    print_options printed;
    auto* print_command = app.add_subcommand("print", "Print the cards of recipes to a PDF");
    auto* printed_files = add_files(*print_command, printed.files);
    print_command
        ->add_option("-o,--output", printed.output, "The PDF to write; - is standard output")
        ->required()
        ->type_name("OUT.pdf");
    add_order(*print_command, order);
    print_command->add_option("--style", printed.style, "How the cards look; otherwise station")
        ->type_name("NAME");
    print_command
        ->add_option("--paper", printed.paper,
                     "A4, A5, A6, letter, half-letter, 5x8, 4x6 or 3x5;\notherwise the style's own")
        ->type_name("SIZE");
    add_instead_of(*print_command, printed_files, "--chart", printed.chart,
                   "Instead of cards a wall chart: what a cup and a spoon of the\n"
                   "recipes' ingredients weigh; without a recipe, of all in the table");
    add_measures(*print_command, measures);
    print_command->footer(
        examples({"benchcard print tart.recipe -o tart.pdf",
                  "benchcard print tart.recipe -o tart.pdf --scale 1/2 --paper A4",
                  "benchcard print --chart house/*.recipe -o chart.pdf --measures us"}));
    print_command->group("Commands");
    print_command->callback([&] {
        expect_names(printed.files);
        expect_output(printed);
        printed.measures = system_of(measures);
        printed.order = order_of(*print_command, order);
        if (printed.chart && !std::holds_alternative<batch::as_written>(printed.order))
            throw wrong_line{"--chart is the same for every batch: leave the order out", {}};
        code = printed.chart ? print_chart(printed) : print(printed);
    });

    convert_options converted;
    std::vector<std::string> amount_words;
    auto* convert_command = app.add_subcommand(
        "convert", "Say what one amount of an ingredient weighs, and by which source");
    bool list_wanted = false;
    auto* amount_option =
        convert_command
            ->add_option(
                "AMOUNT", amount_words,
                "An amount of an ingredient, best in quotes; - reads lines from standard input")
            ->required()
            ->type_name("");
    convert_command->add_flag("--why", converted.why,
                              "Show how the weight came about, step by step");
    add_instead_of(*convert_command, amount_option, "--list", list_wanted,
                   "Instead, a table of what a cup and a spoon of each ingredient\n"
                   "weigh; words after it choose those of that name");
    add_measures(*convert_command, measures);
    convert_command->footer(examples({"benchcard convert '2 1/4 cups plain flour' --measures us",
                                      "benchcard convert - --measures us < pasted.txt",
                                      "benchcard convert --list rye flour --measures us"}));
    convert_command->group("Commands");
    convert_command->callback([&] {
        converted.amount = without_outer_blanks(fmt::format("{}", fmt::join(amount_words, " ")));
        converted.measures = system_of(measures);
        code = list_wanted ? list_measures(converted) : convert(converted);
    });

    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& e) {
        return stop(app, e);
    } catch (const wrong_line& wrong) {
        print_wrong_line(wrong);
        return not_run;
    }
    return code;
}

} // namespace benchcard::commands
