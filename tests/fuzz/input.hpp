#pragma once

#include "compiler/commands/compile.hpp"

#include <map>
#include <string>
#include <vector>

namespace benchcard::fuzz {

/// A recipe with all that may stand beside it, in one text: behind a line `%file NAME` a file that
/// it may use, behind a line `%order` the words of an order, one a line.
struct input {
    std::string recipe;
    std::map<std::string, std::string> files;
    std::vector<std::string> order;
};
input input_in(const std::string& text);
std::string text_of(const input& in);

/// Compiles it as `example.recipe`, with nothing from the disk.
std::unique_ptr<commands::compiled> compiled(const input& in);

} // namespace benchcard::fuzz
