#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/commands/compile.hpp"

#include <optional>

namespace benchcard::commands {

/// The batch of a compiled recipe for an order. Gives nothing, and says why on standard error,
/// when the recipe has errors, makes nothing, or the order does not fit it; `code` is then the
/// exit code.
std::optional<batch::batch> ordered(const compiled& c, const batch::order& order, int& code);

} // namespace benchcard::commands
