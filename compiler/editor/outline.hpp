#pragma once

#include "compiler/editor/look.hpp"

namespace benchcard::editor {

/// `textDocument/documentSymbol`: the recipe's blocks with their ingredient lines.
json outline(const look& l);
/// `textDocument/foldingRange`: blocks, steps and notes of several lines, and runs of comments.
json folds(const look& l);

/// The kinds of tokens, in the order of their numbers.
const std::vector<std::string>& token_kinds();
/// `textDocument/semanticTokens/full`.
json tokens(const look& l);

} // namespace benchcard::editor
