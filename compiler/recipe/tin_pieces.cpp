#include "compiler/recipe/tin_pieces.hpp"

#include "compiler/ingredients/names.hpp"

#include <algorithm>

namespace benchcard::recipe {

bool fills_a_tin_alone(const std::string& piece) {
    constexpr std::string_view words[] = {"tart",  "cake",   "loaf",       "quiche",  "pie",
                                          "flan",  "gateau", "cheesecake", "brioche", "pudding",
                                          "torte", "case",   "terrine",    "tin",     "slab"};
    const auto name = ingredients::compared_words(piece);
    return !name.empty() &&
           std::find(std::begin(words), std::end(words), name.back()) != std::end(words);
}

} // namespace benchcard::recipe
