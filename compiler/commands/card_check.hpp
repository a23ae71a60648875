#pragma once

#include "compiler/commands/commands.hpp"
#include "styles/card.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::commands {

/// Adds the printed cards of a recipe to the record beside it, `tart.cards` of `tart.recipe`. Gives
/// what went wrong, or nothing.
std::optional<std::string> record_cards(const std::string& recipe_file,
                                        const std::vector<styles::card>& printed,
                                        const std::vector<std::string>& order);

/// Says whether a printed card is today's: by the record beside the recipe, with the order that it
/// was printed for; otherwise for the order that is given.
int check_card(const card_check_options& options);

} // namespace benchcard::commands
