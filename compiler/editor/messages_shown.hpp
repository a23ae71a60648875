#pragma once

#include "compiler/editor/look.hpp"

#include <map>
#include <string>

namespace benchcard::editor {

/// What is said of a recipe and of the files that it uses, as the protocol's diagnostics, by the
/// URIs of the files. The recipe's own file is always among them.
std::map<std::string, json> diagnostics_of(const look& l);

} // namespace benchcard::editor
