#pragma once

#include "compiler/recipe/recipe.hpp"
#include "grammar/diagnostic.hpp"

#include <string>

namespace benchcard::checks {

/// A weight as messages say it: `880 g`, below 10 g to a tenth.
std::string in_grams(const exact& value);
/// `20 g`, or `20 to 22 g` of a range.
std::string in_grams(const recipe::spread& value);
/// A share as messages say it: `8.3 %`.
std::string in_percent(const exact& share);
/// A number of the pieces that a component makes: `1 case`, `24 rounds`.
std::string in_pieces(const exact& number, const recipe::component& c);
/// A note where a component says how many of what its amounts are for are made of it, if it does.
void add_number_made(const recipe::component& by, grammar::diagnostic& to);
/// Where the amount of a line stands, without the name behind it.
grammar::span amount_place(const recipe::line& l);

/// A heat as messages say it: `180 °C`, `160 °C fan`, `gas 4`.
std::string said_degrees(const grammar::amount& degrees, grammar::oven_scale scale);

} // namespace benchcard::checks
