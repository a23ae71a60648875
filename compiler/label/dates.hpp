#pragma once

#include "compiler/recipe/recipe.hpp"
#include "compiler/safety/allergen_lists.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::label {

using date = std::chrono::sys_days;

/// `2026-04-01`; nothing for what is no such day.
std::optional<date> date_in(std::string_view text);
/// `2026-04-01`
std::string said(date day);

/// From the day it went into the freezer to the day it was thawed.
struct frozen {
    date from, to;
};
/// `2026-10-03/2026-10-10`, an interval as in ISO 8601; nothing where it runs backwards.
std::optional<frozen> frozen_in(std::string_view text);

/// The last day of so many (at least 1), of which the day it was made is the first. Days in the
/// freezer do not count: it goes on with the day of thawing (FDA Food Code 3-501.17). No day counts
/// twice, and freezing what was not made yet, or is past its last day, gives no further one.
date last_day(date made, int days, std::vector<frozen> in_freezer);

/// The days that the rule gives to ready-to-eat food which needs the cold: 7 at 5 °C (41 °F) or
/// below, by the FDA Food Code, 3-501.17. Nothing where the law followed counts no days.
std::optional<int> days_by_rule(safety::law whose);
/// Whether it says how long something keeps in the cold, and not in the freezer.
bool is_chilled(const grammar::keeping& k);
/// The whole days that a component keeps chilled by its `keeps:`, the day it is made the first.
std::optional<int> days_chilled(const recipe::component& c);

/// By which day it must be used, and by what.
struct use_by {
    std::optional<date> day; ///< nothing where no rule and no `keeps:` gives one
    std::string reason;      ///< in a sentence
};
/// `made` are the days on which it, and what went into it ready to eat, were made; never empty: the
/// one whose time is over first counts.
use_by use_by_of(const recipe::recipe& r, const std::vector<date>& made,
                 const std::vector<frozen>& in_freezer);

} // namespace benchcard::label
