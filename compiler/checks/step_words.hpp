#pragma once

#include "grammar/tree.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The words of a step, for checks that go by what it says.
namespace benchcard::checks {

/// A word of a step, in small letters, without the signs behind it. A bracket is an empty word.
struct step_word {
    std::string text;
    std::optional<grammar::span> where; ///< where the text stands in the file as it was read
    bool begins_clause = false;         ///< where a verb stands: `Bake for`, `…, then bake`
};

std::vector<step_word> words_of_step(const grammar::step& written);

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words);
bool begins_with_one_of(std::string_view word, std::initializer_list<std::string_view> beginnings);

/// A to z alone: words of checks are English.
std::string in_small_letters(std::string_view text);

} // namespace benchcard::checks
