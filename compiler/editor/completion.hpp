#pragma once

#include "compiler/editor/look.hpp"

#include <functional>
#include <string>
#include <vector>

namespace benchcard::editor {

/// The paths of the recipes in a folder and those below it.
using recipes_in_folder = std::function<std::vector<std::string>(const std::string& folder)>;

/// `textDocument/completion`: settings and their values, measures, ingredients with their grams,
/// and in brackets what the block has to name.
json completion(const look& l, position p, const recipes_in_folder& recipes_in);

} // namespace benchcard::editor
