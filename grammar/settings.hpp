#pragma once

#include "grammar/tree.hpp"

#include <string_view>
#include <vector>

namespace benchcard::grammar {

/// The forms a setting's value can have; each has its rule in recipe_rules.hpp.
enum class value_form {
    words,
    prose,
    list,
    yield,
    losses,
    keepings,
    tin_size,
    figures,
    price,
    measure,
    yes_or_no,
};

/// Where a setting may stand, added up.
enum place : unsigned { in_recipe = 1, in_component = 2, in_assembly = 4, in_ingredient = 8 };
inline constexpr unsigned in_block = in_recipe | in_component | in_assembly;

struct setting_entry {
    key name;
    std::string_view word; ///< as it is written before the colon
    value_form form;
    unsigned places;          ///< of `place`
    std::string_view example; ///< a whole line
    std::string_view says;    ///< what it says, in one sentence
};

/// Every setting there is, in the order of `key`.
const std::vector<setting_entry>& all_settings();
/// The setting a word names (in any case), or null.
const setting_entry* setting_named(std::string_view word);
const setting_entry& setting_of(key name);

/// The block a setting opens: recipe, component, assembly, ingredient; `before` for the others.
block::sort opened_by(key name);
/// The place that a block is, for `setting_entry::places`.
place place_of(block::sort is);
/// `recipe:`, `component:` … as a person says where something stands: `a component`.
std::string_view said_place(block::sort is);

} // namespace benchcard::grammar
