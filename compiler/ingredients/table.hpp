#pragma once

#include "compiler/ingredients/built_in_index.hpp"
#include "compiler/ingredients/entry.hpp"
#include "grammar/diagnostic.hpp"

#include <deque>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace benchcard::ingredients {

/// What a name leads to.
struct lookup {
    const entry* match = nullptr;
    std::string description;            ///< the words before the match: `sifted`, `large`
    std::vector<const entry*> readings; ///< of a name that means several things: in two countries,
                                        ///< where the recipe does not say in which it was written,
                                        ///< or in its own
};

/// Ingredients by their names. A table may stand on another: what it does not hold is looked up
/// there, and its own entries hide those below.
class table {
  public:
    explicit table(const table* below = nullptr) : below_(below) {}
    /// The built-in table, whose entries are read from their files when they are first asked for.
    explicit table(const built_in_index& index);
    // Entries are pointed to, so a table stays where it is.
    table(const table&) = delete;
    table& operator=(const table&) = delete;

    void add(entry what);

    /// The entry with the longest name that `name` ends in, plural, case and accents aside. A name
    /// that two entries bear in `from` alone (`cream (uk)`) matches neither: it has readings.
    lookup find(std::string_view name, country from) const;
    /// The names nearest to one that is not known, best first, at most `most`.
    std::vector<std::string> near(std::string_view name, std::size_t most = 3) const;
    /// Every entry, of this table alone, in the order they were added.
    std::vector<const entry*> entries() const;

  private:
    struct naming {
        std::size_t index;
        country where;
    };
    struct slot {
        std::once_flag is_read;
        std::unique_ptr<const entry> what; ///< nothing before it is read
    };
    const table* below_ = nullptr;
    const built_in_index* index_ = nullptr; ///< of the built-in table; no other has one
    mutable std::deque<slot> slots_;
    std::unordered_multimap<std::string, naming> by_name_;
    std::set<std::size_t> word_counts_; ///< of these names: no other end of a name is looked up

    const entry* entry_at(std::size_t index) const;
    /// All of this table alone that bear a name, in the order they were added.
    std::vector<naming> namings_of(const std::string& compared) const;
    /// The same of the first table that has it.
    std::vector<naming> named(const std::string& compared, const table** holder) const;
    bool has_name_of(std::size_t words) const;
    void collect_names(std::vector<std::string>& names) const;
};

/// The entries that a file's `ingredient:` blocks define, with messages on those that cannot be
/// understood. `poured` says that all of them are liquids.
struct defined {
    std::vector<entry> entries;
    grammar::diagnostics messages;
};
defined definitions_in(const grammar::tree& file, bool poured);

/// An entry of the built-in table.
entry read_built_in(const indexed_block& block);

/// The table built into the program: of each entry the names, and the rest when it is looked up.
/// The same for the life of the process, from any thread.
const table& built_in_table();

} // namespace benchcard::ingredients
