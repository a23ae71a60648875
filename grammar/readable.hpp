#pragma once

#include "grammar/diagnostic.hpp"

#include <optional>
#include <string_view>

namespace benchcard::grammar {

/// Why a line cannot be read, whatever it says: it is too long, not UTF-8, or holds a control
/// character or a letter under a pile of marks. Nothing of one that can.
std::optional<diagnostic> unreadable(std::string_view line, span where);

} // namespace benchcard::grammar
