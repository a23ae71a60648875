#pragma once

#include "grammar/tree.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace benchcard::recipe {

/// The words of steps outside brackets, each where it stands first. The steps must outlive them.
class plain_words {
  public:
    explicit plain_words(const std::vector<const grammar::step*>& steps);

    struct mention {
        grammar::span where;
        std::string_view word; ///< as it is written there
    };
    /// Where a word stands, given as it is compared; nothing where it does not.
    std::optional<mention> find(const std::string& compared) const;

  private:
    std::unordered_map<std::string, mention> first_;

    void add(const grammar::words& in);
};

} // namespace benchcard::recipe
