#include "compiler/commands/commands.hpp"
#include "compiler/commands/options/options.hpp"
#include "compiler/commands/options/shared.hpp"
#include "compiler/commands/order_options.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace benchcard::commands {

namespace {

struct weigh_given {
    weigh_options weighed;
    order_text order;
    std::string measures;
};

} // namespace

void add_weigh(CLI::App& app, int& code) {
    const auto line = std::make_shared<weigh_given>();
    auto* command =
        add_command(app, "weigh", "Print what to weigh out for every component, as text");
    add_file(*command, line->weighed.file);
    add_order(*command, line->order);
    command->add_flag("--why", line->weighed.why,
                      "Show how each amount came about, with its source,\ninstead of the table");
    add_confined(*command, line->weighed.confined);
    add_measures(*command, line->measures);
    command->footer(examples(
        {"benchcard weigh tart.recipe", "benchcard weigh tart.recipe --make '6 tarts'",
         "benchcard weigh tart.recipe --from '400 g butter' --from '3 eggs'",
         "benchcard weigh tart.recipe --tin '20 cm round'", "benchcard weigh tart.recipe --why",
         "benchcard weigh tart.recipe --batch '1/2, 1, 2, 4'",
         "benchcard weigh tart.recipe --make '37 tarts' --fit batch"}));
    command->callback([line, command, &code] {
        expect_names({line->weighed.file});
        line->weighed.measures = system_of(line->measures);
        line->weighed.order = order_of(*command, line->order);
        line->weighed.fit = fit_of(*command, line->order);
        line->weighed.batches = batches_of(*command, line->order);
        if (line->weighed.why && !line->weighed.batches.empty())
            throw wrong_line{"--why explains one batch, and --batch shows several",
                             {"for example: --why --scale 2"}};
        code = weigh(line->weighed);
    });
}

} // namespace benchcard::commands
