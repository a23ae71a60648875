#pragma once

#include <string>
#include <utility>
#include <vector>

namespace benchcard::language {

/// The tables of LANGUAGE.md that the program itself knows, by name, as Markdown: its settings,
/// its measures, its kinds of messages and its limits.
std::vector<std::pair<std::string, std::string>> tables();

} // namespace benchcard::language
