#include "compiler/ingredients/built_in_index.hpp"

#include <algorithm>

namespace benchcard::ingredients {

std::span<const indexed_name> built_in_index::called(std::string_view compared) const {
    const auto found =
        std::ranges::equal_range(names, compared, {}, [&](const auto& n) { return text_of(n); });
    return {found.begin(), found.end()};
}

} // namespace benchcard::ingredients
