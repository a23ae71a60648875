#pragma once

#include "compiler/ingredients/entry.hpp"
#include "compiler/measures/systems.hpp"
#include "compiler/recipe/recipe.hpp"
#include "styles/card.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::cards {

/// What a level cup, tablespoon and teaspoon of one ingredient weigh, in grams, with the range
/// that filling the measure in other ways gives; nothing where the system has no such measure.
struct chart_row {
    const ingredients::entry* what = nullptr;
    std::optional<recipe::spread> cup, tablespoon, teaspoon;
    std::string source;
};

/// A row for each of the entries whose density is known, each once, by their names.
std::vector<chart_row> chart_of(std::vector<const ingredients::entry*> entries,
                                measures::system system);

/// The rows as a text table, with their sources.
std::string chart_text(const std::vector<chart_row>& rows, measures::system system);

/// The rows as a card for the wall. `title` is the house's or the recipe's; it may be empty.
styles::card chart_card(const std::vector<chart_row>& rows, measures::system system,
                        const std::string& title);

} // namespace benchcard::cards
