#pragma once

#include "styles/card.hpp"
#include "styles/style.hpp"

#include <string>

namespace benchcard::html {

/// One part of a card between its head and its foot; empty where the card does not have it. `id` is
/// the card's own, and begins all ids within it.
std::string block_of(styles::block which, const styles::card& c, const styles::style& look,
                     const std::string& id);

} // namespace benchcard::html
