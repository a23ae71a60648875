#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

int check(const check_options& options) {
    int worst = done;
    for (const auto& file : options.files) {
        const auto c = compile(file, options.measures);
        if (!c) {
            worst = not_run;
            continue;
        }
        if (const auto failure = write_file("-", shown_messages(*c, stdout))) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return not_run;
        }
        if (grammar::has_errors(c->messages)) worst = std::max<int>(worst, recipe_errors);
    }
    return worst;
}

} // namespace benchcard::commands
