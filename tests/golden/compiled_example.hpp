#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/commands/compile.hpp"

#include <memory>
#include <string>
#include <vector>

namespace benchcard::golden {

/// The example files, by their paths below `examples/` and without `.recipe`.
std::vector<std::string> all_examples();

/// An example compiled, with every message it draws.
std::unique_ptr<commands::compiled> compiled_example(const std::string& name);
/// The messages of an example as a terminal shows them; empty when there are none.
std::string messages_of(const commands::compiled& c);

/// The batch of a compiled recipe for an order as on the command line: nothing for the written
/// batch, `1/2` for half of it, `36 buns` for so many. Fails the test when it cannot be made.
batch::batch ordered(const commands::compiled& c, const std::string& order);

/// The lines of a text, without their ends.
std::vector<std::string> lines_of(const std::string& text);
/// The text of a file of this folder; empty where there is none.
std::string read_golden(const std::string& name);
/// Compares a text with a golden: with UPDATE_GOLDEN=1 in the environment it writes the golden
/// anew, as `whole` if that is given, and prints what changed.
void compare_with_golden(const std::string& name, const std::string& golden, const std::string& now,
                         const std::string& whole = {});

} // namespace benchcard::golden
