#pragma once

#include "compiler/ingredients/table_file.hpp"

#include <span>

namespace benchcard::ingredients {

/// Where an entry of the built-in table is written.
struct indexed_block {
    std::uint32_t file = 0; ///< a place in `built_in_table_files`
    stretch whole, measures;
};

/// A name of one, in the form in which names are compared.
struct indexed_name {
    stretch text; ///< of `built_in_index::texts`
    std::uint32_t block = 0;
    country where = country::any;
};

/// The names of the built-in table in their order, and those that are the same in the order of
/// their entries. It is made when the program is built, since at each start of it that would take
/// a quarter of a check.
struct built_in_index {
    std::string_view texts;
    std::span<const indexed_name> names;
    std::span<const indexed_block> blocks;
    std::span<const std::uint32_t> word_counts; ///< of all names, each once

    std::string_view text_of(const indexed_name& name) const { return name.text.in(texts); }
    /// All that bear a name in compared form.
    std::span<const indexed_name> called(std::string_view compared) const;
};

const built_in_index& index_of_built_in();

/// The files that it is of: their names and texts.
const std::vector<std::pair<std::string_view, std::string_view>>& built_in_table_files();

} // namespace benchcard::ingredients
