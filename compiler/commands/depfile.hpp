#pragma once

#include "grammar/source.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::commands {

/// What an output was made from.
struct dependence {
    std::string output;
    std::vector<std::string> inputs;
};

/// Rules as make and ninja read them, a line each, every input once: `cards.pdf: tart.recipe`.
std::string rules_of(const std::vector<dependence>& all);

/// The names of the files of a recipe, and of a style where it is in a file.
std::vector<std::string> names_of(const std::vector<grammar::source>& sources,
                                  const std::string& style);

} // namespace benchcard::commands
