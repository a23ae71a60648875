#pragma once

#include <map>
#include <string>

namespace benchcard::language {

/// What is wrong with the order that a recipe is put in: a second time changes it, it weighs
/// otherwise, or other things are said of it. Empty for nothing.
std::string fault_of_tidying(const std::string& text,
                             const std::map<std::string, std::string>& files);

} // namespace benchcard::language
