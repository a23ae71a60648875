#include "compiler/commands/ordered.hpp"

#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

std::optional<batch::batch> ordered(const compiled& c, const batch::order& order, int& code) {
    print_messages(c);
    if (grammar::has_errors(c.messages)) {
        code = recipe_errors;
        return std::nullopt;
    }
    const auto& name = c.files.sources.front().name();
    if (!c.meaning.has_product) {
        complain(fmt::format("benchcard: {} makes nothing: it has no component\n", name));
        code = recipe_errors;
        return std::nullopt;
    }
    const auto factor = batch::factor_of(c.meaning, order);
    if (const auto* no = std::get_if<batch::refusal>(&factor)) {
        complain(fmt::format("benchcard: {}: {}\n", name, no->message));
        for (const auto& help : no->helps) complain(fmt::format("     = help: {}\n", help));
        code = not_run;
        return std::nullopt;
    }
    return batch::scale(c.meaning, std::get<exact>(factor));
}

} // namespace benchcard::commands
