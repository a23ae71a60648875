#include "compiler/commands/commands.hpp"
#include "compiler/commands/html_file.hpp"
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

struct label_given {
    label_options labelled;
    order_text order;
    std::vector<std::string> made, frozen;
    std::string measures, format = "text";
};

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

int run_label(const CLI::App& command, label_given& line) {
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
    return label(labelled);
}

} // namespace

void add_label(CLI::App& app, int& code) {
    const auto line = std::make_shared<label_given>();
    auto* command = add_command(
        app, "label", "Draft the ingredient list and the use-by date for the person responsible");
    add_file(*command, line->labelled.file);
    add_order(*command, line->order);
    command
        ->add_option("--made", line->made,
                     "The day it was made, for the use-by date; again for each\n"
                     "part made before, as the earliest counts")
        ->type_name("YYYY-MM-DD")
        ->allow_extra_args(false);
    command
        ->add_option("--frozen", line->frozen,
                     "From the day it was frozen to the day it was thawed:\n"
                     "these days do not count")
        ->type_name("FROM/TO")
        ->allow_extra_args(false);
    command
        ->add_option("-o,--output", line->labelled.output,
                     "A PDF of it to write, for a printed label; otherwise text")
        ->type_name("OUT.pdf");
    add_look(*command, line->labelled.style,
             "How it looks: label, or a file of your own; otherwise label", line->labelled.paper);
    command->add_option("--format", line->format, "json, for other programs; otherwise text")
        ->type_name("FORMAT");
    add_confined(*command, line->labelled.confined);
    add_measures(*command, line->measures);
    command->footer(
        examples({"benchcard label tart.recipe", "benchcard label tart.recipe --made 2026-04-01",
                  "benchcard label tart.recipe -o label.pdf --paper A7",
                  "benchcard label tart.recipe --format json"}));
    command->callback([line, command, &code] { code = run_label(*command, *line); });
}

} // namespace benchcard::commands
