#pragma once

#include "compiler/batch/batch.hpp"
#include "compiler/commands/compile.hpp"

#include <optional>
#include <vector>

namespace benchcard::commands {

/// The batch of a compiled recipe for an order, whose messages were said. Gives nothing, and says
/// why, when the recipe has errors, makes nothing, or the order does not fit it; `code` is then the
/// exit code.
std::optional<batch::batch> batch_of(const compiled& c, const batch::order& order,
                                     std::optional<batch::fit> fit, int& code, const saying& say);

/// The same for several factors, one a batch; none where one cannot be made.
std::vector<batch::batch> batches_of(const compiled& c, const std::vector<exact>& factors,
                                     std::optional<batch::fit> fit, int& code, const saying& say);

/// These on standard error, after all messages.
std::optional<batch::batch> ordered(const compiled& c, const batch::order& order,
                                    std::optional<batch::fit> fit, int& code);
std::vector<batch::batch> ordered(const compiled& c, const std::vector<exact>& factors,
                                  std::optional<batch::fit> fit, int& code);

} // namespace benchcard::commands
