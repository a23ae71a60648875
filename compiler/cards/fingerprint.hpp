#pragma once

#include "styles/card.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace benchcard::cards {

/// All that a card says, its number and its fingerprint aside: a line for each thing on it, which
/// begins with what it is (`weigh: 400 g butter, soft`). Two cards say the same when and only when
/// these are the same.
std::vector<std::string> said_on(const styles::card& c);

/// A short sign of what a card says: `7K4Q-92`. Six of 32 letters and digits, none of them taken
/// for another when read across a kitchen.
std::string fingerprint_of(const styles::card& c);

/// A fingerprint as it is typed: in small letters too, with or without the dash. Empty where the
/// text can be none.
std::string fingerprint_in(std::string_view text);

} // namespace benchcard::cards
