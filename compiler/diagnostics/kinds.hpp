#pragma once

#include "grammar/diagnostic.hpp"

#include <string_view>
#include <vector>

namespace benchcard::diagnostics {

/// Every kind of message there is, in order of the alphabet. The level is the gravest it has.
const std::vector<grammar::kind_entry>& all_kinds();

/// The kind of that name, or null.
const grammar::kind_entry* kind_named(std::string_view name);

} // namespace benchcard::diagnostics
