#include "compiler/cards/weigh_table.hpp"
#include "compiler/cards/why.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

int weigh(const weigh_options& options) {
    const auto c = compile(options.file, options.measures);
    if (!c) return not_run;
    int code = done;
    const auto batch = ordered(*c, options.order, code);
    if (!batch) return code;
    if (const auto failure =
            write_file("-", options.why ? cards::why(*batch) : cards::weigh_table(*batch))) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
