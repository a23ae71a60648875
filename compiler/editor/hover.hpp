#pragma once

#include "compiler/editor/look.hpp"
#include "grammar/settings.hpp"

namespace benchcard::editor {

/// `textDocument/hover`: what a line weighs both ways, with its spread, source and allergens; of a
/// component its balance; of a setting what it says. Null where there is nothing to say.
json hover(const look& l, position p);

/// The same texts, as Markdown, for a line, a component and a setting.
std::string said_of(const recipe::line& line);
std::string balance_of(const recipe::component& c, const recipe::recipe& all);

std::string documentation_of(const grammar::setting_entry& entry);

} // namespace benchcard::editor
