#pragma once

#include "grammar/exact.hpp"

#include <string>

namespace benchcard::measures {

/// Two figures as a range, `180–190 °C`; one figure where they are the same. `unit` brings its own
/// blank. Figures of several words or below zero have blanks around the dash: `2 h – 2 h 30 min`.
std::string range_of(const std::string& low, const std::string& high, const std::string& unit);

/// A number to at most two decimals, with a minus sign (not a hyphen) below zero.
std::string decimals_with_minus(const exact& value);

} // namespace benchcard::measures
