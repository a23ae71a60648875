#pragma once

#include "styles/card.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What is kept of printed cards, so that a card on the wall can be held against today's recipe.
namespace benchcard::cards {

/// A card that was printed.
struct recorded {
    std::string fingerprint, title;
    std::vector<std::string> order; ///< the options it was printed with: `--make`, `37 buns`
    std::vector<std::string> says;  ///< as `said_on` gave it

    bool operator==(const recorded&) const = default;
};

recorded record_of(const styles::card& c, const std::vector<std::string>& order);

/// A record, read from the JSON that `written` makes; nothing where the text is no record.
std::optional<std::vector<recorded>> read_record(std::string_view text);

/// The record as JSON, a line each for what is likely to change.
std::string written(const std::vector<recorded>& record);

/// Adds cards behind those that are there. One that is there already stays as it was recorded.
void add_to(std::vector<recorded>& record, const std::vector<recorded>& printed);

/// What a card said and what it says now, lines that are in both left out.
struct card_change {
    std::vector<std::string> was, is;
};
card_change change_between(const std::vector<std::string>& before,
                           const std::vector<std::string>& now);

} // namespace benchcard::cards
