#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::ingredients {

/// The words of a name in the form in which names are compared: in one case, without accents,
/// hyphens as blanks, each word in the singular. `Sifted Plain Flours` and `sifted plain flour`
/// are the same.
std::vector<std::string> compared_words(std::string_view name);

/// The same, joined by blanks.
std::string compared_name(std::string_view name);

/// Whether a text has one of some words, given as they are compared; the marks behind a word do not
/// count: `Simmer, then cool.` has `simmer`.
bool has_word(std::string_view text, std::initializer_list<std::string_view> wanted);

/// The words of a name in that form, which one blank each divides.
std::size_t words_in(std::string_view compared);

/// One word in the singular, by the rules of English spelling: `leaves` → `leaf`,
/// `berries` → `berry`, `tomatoes` → `tomato`, `glasses` → `glass`.
std::string singular(std::string_view word);
/// One word in the plural: `leaf` → `leaves`, `loaf` → `loaves`, `glass` → `glasses`.
std::string plural(std::string_view word);

} // namespace benchcard::ingredients
