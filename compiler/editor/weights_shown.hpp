#pragma once

#include "compiler/editor/look.hpp"

namespace benchcard::editor {

/// `textDocument/inlayHint`: the grams beside each volume that has none.
json hints(const look& l, const json& range);

/// `textDocument/codeAction`: the repairs that messages carry, and the weight written beside a
/// volume, for a line and for all.
json actions(const look& l, const json& params);

/// `textDocument/formatting`: the canonical text, as edits of the lines that differ.
json formatting(const look& l);

} // namespace benchcard::editor
