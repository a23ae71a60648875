#pragma once

#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "styles/card.hpp"
#include "styles/style.hpp"

#include <string>
#include <vector>

namespace benchcard::commands {

/// The cards of one recipe, whose messages were said; none, with the exit code, where they cannot
/// be made.
std::vector<styles::card> cards_of(const compiled& c, const print_options& options,
                                   const styles::style& look, const std::string& file, int& code,
                                   const saying& say);

/// Says which cards there are where one is asked for that is not among them.
bool are_all_there(const std::vector<std::string>& names, const std::vector<styles::card>& cards);

/// Leaves only the cards that are named, if any are.
void keep_named(std::vector<styles::card>& cards, const std::vector<std::string>& names);

} // namespace benchcard::commands
