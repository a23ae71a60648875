#pragma once

#include <cstddef>

/// The most that is read of a recipe: far more than any bake has, and so little that none takes
/// long. LANGUAGE.md has them as a table; each has a message that says what was found.
namespace benchcard::grammar::limits {

/// Of one file.
inline constexpr std::size_t file_bytes = 1 << 20;
inline constexpr std::size_t lines = 10'000;
/// With the lines that continue it, where it is a step or a note.
inline constexpr std::size_t line_bytes = 10'000;
inline constexpr std::size_t name_characters = 120; ///< what a card can hold
/// Code points of what a person sees as one character: 30 marks on it, as in the Stream-Safe Text
/// Format of UAX #15.
inline constexpr std::size_t code_points_of_a_character = 31;
inline constexpr std::size_t brackets = 10'000;
inline constexpr std::size_t components = 1'000; ///< with assemblies
inline constexpr std::size_t ingredients_defined = 2'000;

/// Of one number.
inline constexpr std::size_t digits = 7; ///< ten tonnes, in grams
inline constexpr std::size_t decimals = 9;
inline constexpr std::size_t parts_of_a_fraction = 1'000; ///< what stands below its line

/// Of one component.
inline constexpr std::size_t ingredient_lines = 2'000;
inline constexpr std::size_t steps = 1'000;
inline constexpr std::size_t losses = 10;

/// Of a recipe with all that it uses.
inline constexpr std::size_t files = 1'000;
inline constexpr std::size_t bytes_of_all = 4 << 20;
inline constexpr std::size_t files_in_a_chain = 20;
inline constexpr std::size_t components_in_a_chain = 50;
inline constexpr std::size_t components_of_all = 2'000;

/// Of what is pasted to be converted.
inline constexpr std::size_t pasted_lines = 2'000;

/// Of what is said about it.
inline constexpr std::size_t messages = 1'000;

} // namespace benchcard::grammar::limits
