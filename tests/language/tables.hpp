#pragma once

#include <string>
#include <utility>
#include <vector>

namespace benchcard::language {

/// The tables of LANGUAGE.md that the program itself knows, by name, as Markdown: its settings,
/// its measures and its kinds of messages.
std::vector<std::pair<std::string, std::string>> tables();

} // namespace benchcard::language
