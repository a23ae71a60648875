#pragma once

#include "compiler/recipe/recipe.hpp"

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace benchcard::recipe {

/// By what words steps call the lines of a block. The lines must outlive it.
class line_names {
  public:
    explicit line_names(const std::vector<line>& lines);

    /// The lines that some words may mean: those so named exactly, or else those that have them
    /// all; of several of one name, the one that is weighed.
    std::vector<std::size_t> meant_by(const std::string& said) const;

    /// The line that misspelt words were meant for, and those of its words that are nearest.
    struct near {
        std::size_t line = 0;
        std::string words;
    };
    std::optional<near> nearest(const std::string& said) const;

    /// The words that the card prints: those in the bracket, where they name the thing; the line's
    /// name where they are of its preparation alone, as in `[for the tin]`.
    std::string printed(std::size_t index, const std::string& said) const;

    /// The last word of a line's name as it is compared, or nothing.
    std::string last_word(std::size_t index) const;

    /// The names of the lines, up to so many, for a message.
    std::string listed(std::size_t most) const;

  private:
    /// All words a line may be called by: its name, its preparation, and its ingredient's names.
    struct words {
        std::vector<std::string> name;
        std::vector<std::string> with_preparation;
        std::vector<std::vector<std::string>> other_names;
    };

    const std::vector<line>& lines_;
    std::vector<words> words_;
    std::unordered_map<std::string, std::vector<std::size_t>> with_word_; ///< lines, in order

    static words words_of(const line& l);
    void note_words(std::size_t index);
    const std::vector<std::size_t>& may_be(const std::vector<std::string>& wanted) const;
    std::vector<std::size_t> candidates(const std::string& said) const;
};

} // namespace benchcard::recipe
