#pragma once

#include "compiler/ingredients/entry.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace benchcard::ingredients {

/// A stretch of a file, in bytes.
struct stretch {
    std::uint32_t begin = 0, end = 0;

    std::string_view in(std::string_view text) const { return text.substr(begin, end - begin); }
};

/// An `ingredient:` block of a file of the built-in table.
struct table_block {
    stretch whole;
    stretch measures;               ///< the line in the file's head that says whose they are
    std::vector<std::string> names; ///< as they are written, that of its own first
};

/// The blocks of a file of the built-in table, of which no more than their names is read.
std::vector<table_block> blocks_of(std::string_view text);

/// `cornflour (uk)` is a name of the entry in one country only.
std::pair<std::string_view, country> name_and_country(std::string_view written);

} // namespace benchcard::ingredients
