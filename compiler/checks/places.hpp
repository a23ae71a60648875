#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <utility>
#include <vector>

/// Which places in the texts meet, found without going through all of them.
namespace benchcard::checks {

/// Whether two places share a character.
bool overlap(grammar::span a, grammar::span b);

/// Places of which it is asked whether another meets one of them.
class place_set {
  public:
    explicit place_set(std::vector<grammar::span> places);
    bool meets(grammar::span where) const;

  private:
    struct stretch {
        std::uint32_t begin, last_end; ///< the farthest end of this one and those before it
    };
    std::map<std::uint32_t, std::vector<stretch>> by_file_;
};

/// The lines of a recipe, which no two places share.
class line_places {
  public:
    explicit line_places(const recipe::recipe& r);
    /// The component, by its place in the recipe, whose line meets a place.
    std::optional<std::size_t> component_at(grammar::span where) const;

  private:
    struct entry {
        grammar::span where;
        std::size_t component;
    };
    std::map<std::pair<std::uint32_t, std::uint32_t>, entry> by_begin_;
};

} // namespace benchcard::checks
