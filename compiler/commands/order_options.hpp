#pragma once

#include "compiler/batch/batch.hpp"

#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
} // namespace CLI

namespace benchcard::commands {

/// What the command line says of the order, as text until the command is known.
struct order_text {
    std::string scale, make, tin, flour, batches, fit;
    std::vector<std::string> from;
};

/// Adds the ways to order to a command.
void add_order(CLI::App& command, order_text& text);

/// The order that was given. Throws a `wrong_line` where there are two, or one that cannot be read.
batch::order order_of(const CLI::App& command, const order_text& text);

/// How components are fitted to the order; nothing where that is not said.
std::optional<batch::fit> fit_of(const CLI::App& command, const order_text& text);

/// The factors of `--batch '1/2, 1, 2'`; none where it is not given.
std::vector<exact> batches_of(const CLI::App& command, const order_text& text);

} // namespace benchcard::commands
