#pragma once

#include "grammar/exact.hpp"
#include "grammar/units.hpp"

#include <compare>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace benchcard::measures {

using grammar::unit;

/// Whose cups and spoons a recipe was written with (`measures:`).
enum class system { unstated, us, metric, uk, imperial, australian, canadian, us_label };

inline constexpr system all_systems[] = {system::us,       system::metric,     system::uk,
                                         system::imperial, system::australian, system::canadian,
                                         system::us_label};

/// The word for it in a recipe: `us`, `us-label`; empty for unstated.
std::string_view name_of(system s);
/// The system a word names, or nothing.
std::optional<system> system_named(std::string_view word);

struct grams {
    exact value = 0;
    auto operator<=>(const grams& other) const = default;
};

struct millilitres {
    exact value = 0;
    auto operator<=>(const millilitres& other) const = default;
};

/// What a unit of weight weighs, exactly; nothing for a unit of volume.
/// A pound is 453.59237 g and an ounce a sixteenth of it; a stick is a stick of butter, a quarter
/// of a pound (GNU units 2.22: lb, oz, stickbutter).
std::optional<grams> weight_of(unit u);

/// What a unit of volume holds in a system, exactly; nothing for a unit of weight, and nothing
/// where the system has no such measure or more than one (a cup where `measures:` is unstated, or
/// under `uk`, where it is 250 ml or half a pint).
/// Sources: GNU units 2.22 (the US gallon is 231 cubic inches, the imperial gallon 4.54609 l;
/// metriccup, brcup, brtablespoon and its comment "5|8 brfloz", brdessertspoon 10 ml,
/// australiatablespoon 20 ml, drop 1/20 ml); 21 CFR 101.9(b)(5)(viii) for `us-label`, which
/// defines no pint, quart, gallon or gill. The gill is a quarter of a pint.
/// A dash is taken as 1/8 and a pinch as 1/16 of the system's teaspoon: common practice and not
/// settled. The USDA's household weights (SR28) put a dash of salt at 1/15 and of pepper at 1/23
/// of a teaspoon, and Unicode CLDR 48 a pinch at 3/64.
std::optional<millilitres> volume_of(unit u, system s);

/// The least and the most that a unit may mean, as shares of what `volume_of` takes it for; 1 and 1
/// for all but two. A dash: from 1/23 of a teaspoon, the USDA's dash of pepper (SR28, NDB 02030),
/// to 1/8 (common practice). A pinch: from 3/64 (Unicode CLDR 48) to 1/8 (common practice).
std::pair<exact, exact> vagueness_of(unit u);

/// The systems in which a unit of volume has a size, with it; for listing the readings of a unit
/// that is not settled. Systems that agree are listed once, under the first's name.
std::vector<std::pair<system, millilitres>> readings_of(unit u);

/// Whether a unit measures volume.
bool is_volume(unit u);

} // namespace benchcard::measures
