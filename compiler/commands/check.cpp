#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"

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
        print_messages(*c, stdout);
        if (grammar::has_errors(c->messages)) worst = std::max<int>(worst, recipe_errors);
    }
    return worst;
}

} // namespace benchcard::commands
