#pragma once

#include "grammar/diagnostic.hpp"

#include <string>
#include <vector>

namespace benchcard::diagnostics {

using grammar::source;

enum class colour { no, yes };

/// A message as a person reads it: `file:line:col: error: …  [kind]`, the line itself with carets
/// under the whole range, then notes and helps. `sources` are all files by their numbers.
std::string render(const grammar::diagnostic& message, const std::vector<source>& sources,
                   colour use);

/// All of them, in order, and at the end how many there were; empty for none.
std::string render_all(const grammar::diagnostics& messages, const std::vector<source>& sources,
                       colour use);

} // namespace benchcard::diagnostics
