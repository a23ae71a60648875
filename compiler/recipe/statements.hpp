#pragma once

#include "compiler/recipe/recipe.hpp"

#include <string_view>
#include <variant>
#include <vector>

/// What the settings of a block state, before its lines and steps are read.
namespace benchcard::recipe {

template <typename Visit> void each_setting(const grammar::block& b, Visit visit) {
    for (const auto& item : b.items)
        if (const auto* s = std::get_if<grammar::setting>(&item.value)) visit(*s);
}

/// Whether a block has any ingredient or step.
bool has_lines(const grammar::block& b);

/// Which version of its file a component is of.
struct version {
    std::string revision, date;
};
version version_of(const grammar::tree& file);

/// A limit by weight in grams; one by volume is not compared with a mix.
std::optional<exact> grams_of(const grammar::measure& m);

/// A component as its settings state it; lines and steps come later.
component stated_component(const grammar::block& b);

/// Whether a line that could not be read may change what its block weighs or makes. A step does
/// not, and of the settings only a few do.
bool may_bear_on_weight(std::string_view line);

/// The lines of a block that could not be read.
std::vector<std::string> unread_in(const grammar::block& b, const grammar::source& file);

} // namespace benchcard::recipe
