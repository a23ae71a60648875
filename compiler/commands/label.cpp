#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/label/shown.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

int label(const label_options& options) {
    const auto c = compile(options.file, options.measures);
    if (!c) return not_run;
    int code = done;
    const auto batch = ordered(*c, options.order, options.fit, code);
    if (!batch) return code;
    label::draft draft{label::ingredients_of(*batch), safety::law_named(c->meaning.labels), {}};
    if (!options.made.empty())
        draft.date = label::use_by_of(c->meaning, options.made, options.frozen);
    if (const auto failure =
            write_file("-", options.json ? label::as_json(draft) : label::as_text(draft))) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
