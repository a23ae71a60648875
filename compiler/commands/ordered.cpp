#include "compiler/commands/ordered.hpp"

#include "compiler/batch/orders.hpp"
#include "compiler/commands/commands.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// Whether there is something to be made, and no error.
bool can_be_made(const compiled& c, int& code, const saying& say) {
    if (grammar::has_errors(c.messages)) {
        code = recipe_errors;
        return false;
    }
    if (!c.meaning.has_product) {
        say(fmt::format("benchcard: {} makes nothing: it has no component\n",
                        c.files.sources.front().name()));
        code = recipe_errors;
        return false;
    }
    return true;
}

std::optional<batch::batch> made(const compiled& c, const batch::order& order,
                                 std::optional<batch::fit> fit, int& code, const saying& say) {
    auto made = batch::batch_for(c.meaning, order, fit);
    if (const auto* no = std::get_if<batch::refusal>(&made)) {
        say(fmt::format("benchcard: {}: {}\n", c.files.sources.front().name(), no->message));
        for (const auto& help : no->helps) say(fmt::format("     = help: {}\n", help));
        code = not_run;
        return std::nullopt;
    }
    return std::get<batch::batch>(std::move(made));
}

} // namespace

std::optional<batch::batch> batch_of(const compiled& c, const batch::order& order,
                                     std::optional<batch::fit> fit, int& code, const saying& say) {
    return can_be_made(c, code, say) ? made(c, order, fit, code, say) : std::nullopt;
}

std::vector<batch::batch> batches_of(const compiled& c, const std::vector<exact>& factors,
                                     std::optional<batch::fit> fit, int& code, const saying& say) {
    std::vector<batch::batch> result;
    if (!can_be_made(c, code, say)) return result;
    for (const auto& factor : factors) {
        auto one = made(c, batch::scaled{factor}, fit, code, say);
        if (!one) return {};
        result.push_back(std::move(*one));
    }
    return result;
}

std::optional<batch::batch> ordered(const compiled& c, const batch::order& order,
                                    std::optional<batch::fit> fit, int& code) {
    print_messages(c);
    return batch_of(c, order, fit, code, complain);
}

std::vector<batch::batch> ordered(const compiled& c, const std::vector<exact>& factors,
                                  std::optional<batch::fit> fit, int& code) {
    print_messages(c);
    return batches_of(c, factors, fit, code, complain);
}

} // namespace benchcard::commands
