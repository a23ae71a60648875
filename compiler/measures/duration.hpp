#pragma once

#include "grammar/exact.hpp"
#include "grammar/tree.hpp"

#include <string>
#include <vector>

namespace benchcard::measures {

/// A time as a cook reads it, to the second: `30 s`, `35–40 min`, `1 h 30 min`, `1–2 h`, `2 days`.
/// Days from 48 h up. A range is in the one largest unit that both ends have whole; minutes reach
/// to 2 h for that, seconds to 2 min: `45–75 min`. Never `0 s` for a time above zero.
std::string shown_duration(const exact& low_minutes, const exact& high_minutes);

/// A length or the sides of a tin, in the unit it was written in and, in brackets, in the other:
/// `23 cm (9 in)`, `3 mm (⅛ in)`, `20 × 30 cm (8 × 12 in)`, `9 in (23 cm)`.
/// Inches are whole where that is within 2 % (tins are sold as 20 cm = 8 in), else to the
/// quarter, below 1 in to the eighth, below ¼ in to the sixteenth; left out below 1/32 in.
/// Millimetres are whole below 1 in; centimetres to the half below 10 cm, else whole.
/// An inch is 25.4 mm (GNU units 2.22).
std::string shown_length(const std::vector<grammar::amount>& sides, grammar::length_unit in);

} // namespace benchcard::measures
