#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/measures/systems.hpp"

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

/// Adds the choice of whose cups and spoons are meant.
void add_measures(CLI::App& command, std::string& measures);

/// The cups and spoons of that name; unstated for an empty one. Throws a `wrong_line`.
measures::system system_of(const std::string& word);

/// Adds the ways to order to a command.
void add_order(CLI::App& command, order_text& text);

/// The order that was given. Throws a `wrong_line` where there are two, or one that cannot be read.
batch::order order_of(const CLI::App& command, const order_text& text);

/// How components are fitted to the order; nothing where that is not said.
std::optional<batch::fit> fit_of(const CLI::App& command, const order_text& text);

/// The factors of `--batch '1/2, 1, 2'`; none where it is not given.
std::vector<exact> batches_of(const CLI::App& command, const order_text& text);

/// All of the order together.
placed_order placed_of(const CLI::App& command, const order_text& text,
                       const std::string& measures);

/// The options of an order in the words they were given in: `--make`, `37 buns`.
std::vector<std::string> words_of(const order_text& text, const std::string& measures);

/// The order that such words say. Throws as `order_of` does.
placed_order placed_by(const std::vector<std::string>& words);

/// Throws a `wrong_line` that says so where an order is given.
void expect_no_order(const CLI::App& command, const std::string& message);

} // namespace benchcard::commands
