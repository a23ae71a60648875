#pragma once

#include "grammar/exact.hpp"
#include "grammar/units.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace benchcard::measures {

using grammar::unit;

/// Whose cups and spoons a recipe was written with (`measures:`).
enum class system { unstated, us, metric, uk, imperial, australian, canadian, us_label };

inline constexpr system all_systems[] = {system::us,         system::metric,   system::uk,
                                         system::imperial,   system::australian,
                                         system::canadian,   system::us_label};

/// The word for it in a recipe: `us`, `us-label`; empty for unstated.
std::string_view name_of(system s);
/// The system a word names, or nothing.
std::optional<system> system_named(std::string_view word);

struct grams {
    exact value = 0;
    auto operator<=>(const grams& other) const { return value.compare(other.value) <=> 0; }
    bool operator==(const grams& other) const { return value == other.value; }
};

struct millilitres {
    exact value = 0;
    auto operator<=>(const millilitres& other) const { return value.compare(other.value) <=> 0; }
    bool operator==(const millilitres& other) const { return value == other.value; }
};

/// What a unit of weight weighs, exactly; nothing for a unit of volume.
/// A stick is a stick of butter: a quarter of a pound.
std::optional<grams> weight_of(unit u);

/// What a unit of volume holds in a system, exactly; nothing for a unit of weight, and nothing
/// where the system has no such measure or more than one (a cup where `measures:` is unstated).
std::optional<millilitres> volume_of(unit u, system s);

/// The systems in which a unit of volume has a size, with it; for listing the readings of a unit
/// that is not settled. Systems that agree are listed once, under the first's name.
std::vector<std::pair<system, millilitres>> readings_of(unit u);

/// Whether a unit measures volume.
bool is_volume(unit u);

} // namespace benchcard::measures
