#include "compiler/cards/weigh_columns.hpp"
#include "compiler/cards/weigh_table.hpp"
#include "compiler/cards/why.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/safety/safety.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// What to print; nothing where the order cannot be made.
std::string text_for(const compiled& c, const weigh_options& options, int& code) {
    if (!options.batches.empty()) {
        const auto batches = ordered(c, options.batches, options.fit, code);
        return batches.empty() ? "" : cards::weigh_columns(batches);
    }
    const auto batch = ordered(c, options.order, options.fit, code);
    if (!batch) return "";
    return options.why ? cards::why(*batch) + safety::sources_of_allergens(*batch->of) +
                             safety::sources_of_cautions(*batch->of)
                       : cards::weigh_table(*batch);
}

} // namespace

int weigh(const weigh_options& options) {
    const auto c = compile(options.file, options.measures,
                           {.only_in = own_folder(options.confined, options.file)});
    if (!c) return not_run;
    int code = done;
    const auto text = text_for(*c, options, code);
    if (code != done) return code;
    if (const auto failure = write_file("-", text)) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
