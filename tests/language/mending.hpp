#pragma once

#include <map>
#include <string>

namespace benchcard::language {

/// What came of mending a recipe, and mending it again.
struct mending {
    std::size_t repairs = 0;
    std::string fault; ///< empty where it did no harm
};
mending mended_twice(const std::string& text, const std::map<std::string, std::string>& files);

} // namespace benchcard::language
