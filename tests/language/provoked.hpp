#pragma once

#include "examples.hpp"

#include <set>
#include <string>
#include <utility>
#include <vector>

/// The kinds of messages that no page can show: they are provoked by other means.
namespace benchcard::language {

/// Kinds, and a recipe for each that cannot be printed on a page, or not in a few lines.
const std::vector<std::pair<std::string, std::string>>& other_provocations();

/// A recipe that uses a thousand files, one more than there may be with it.
outcome with_too_many_files();

/// Every kind whose page has no failing example: the above, and those of making a PDF, which
/// tests/styles provokes.
const std::set<std::string>& kinds_without_example();

} // namespace benchcard::language
