#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace benchcard::diagnostics {

/// The page of a kind, as it is written in pages/KIND.md; empty when there is none.
std::string_view page_of(std::string_view kind);

/// The kinds that have a page, in order of the alphabet.
std::vector<std::string_view> kinds_with_pages();

/// What `explain` prints of a kind that is registered: its name, how grave it is, its line and its
/// page as plain text, no wider than 80 columns but where a recipe's own lines are.
std::string explained(std::string_view kind);

/// Every kind in a line of its own: its name, how grave it is, and what it is about.
std::string list_of_kinds();

} // namespace benchcard::diagnostics
