#include "compiler/cards/fingerprint.hpp"
#include "compiler/commands/card_check.hpp"
#include "compiler/commands/commands.hpp"
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

struct check_given {
    check_options checked;
    order_text order;
    std::string measures, format = "text", card;
};

check_format format_of(const std::string& word) {
    const std::vector<std::string> names = {"text", "gcc", "json", "sarif"}; // as in check_format
    const auto found = std::find(names.begin(), names.end(), word);
    if (found != names.end()) return static_cast<check_format>(found - names.begin());
    throw wrong_line{
        fmt::format("there is no format `{}`; there are: {}", word, fmt::join(names, ", ")),
        {"for example: --format json"}};
}

/// What the command line says of one printed card.
card_check_options card_checked(const CLI::App& command, const check_given& line) {
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
    return {files.front(), std::move(fingerprint), placed_of(command, line.order, line.measures),
            line.checked.confined};
}

int run_check(const CLI::App& command, check_given& line) {
    expect_names(line.checked.files);
    if (command.count("--card") > 0) return check_card(card_checked(command, line));
    expect_no_order(command, "an order is checked with --card alone");
    line.checked.measures = system_of(line.measures);
    line.checked.format = format_of(line.format);
    return check(line.checked);
}

} // namespace

void add_check(CLI::App& app, int& code) {
    const auto line = std::make_shared<check_given>();
    auto* command = add_command(app, "check", "Say what is wrong or doubtful in recipes");
    add_files(*command, line->checked.files);
    command->add_flag("--fix", line->checked.fix,
                      "Mend in the file what leaves no doubt, say what was mended,\n"
                      "and check what is left; with -, the mended recipe is printed");
    command
        ->add_option("--format", line->format,
                     "For other programs: gcc, a line a message; json; or sarif,\n"
                     "for editors and code hosts. Otherwise text, for people")
        ->type_name("FORMAT");
    command
        ->add_option("--card", line->card,
                     "Instead, say whether a printed card is today's, by the\n"
                     "fingerprint in its foot; for the order below, or the one\n"
                     "that print --record kept")
        ->type_name("7K4Q-92");
    add_jobs(*command, line->checked.jobs);
    add_order(*command, line->order);
    add_confined(*command, line->checked.confined);
    add_measures(*command, line->measures);
    command->footer(
        examples({"benchcard check tart.recipe", "benchcard check examples",
                  "benchcard check --fix tart.recipe", "benchcard check --format gcc *.recipe",
                  "benchcard check tart.recipe --card 7K4Q-92"}));
    command->callback([line, command, &code] { code = run_check(*command, *line); });
}

} // namespace benchcard::commands
