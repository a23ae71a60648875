#include "grammar/unicode_map.hpp"

#include <cstdlib>
#include <memory>
#include <utf8proc.h>

namespace benchcard::grammar {

std::string unicode_mapped(std::string_view text, int options) {
    utf8proc_uint8_t* result = nullptr;
    const auto length = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                     static_cast<utf8proc_ssize_t>(text.size()), &result,
                                     static_cast<utf8proc_option_t>(options));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owned(result, &std::free);
    if (length < 0) return std::string(text);
    return {reinterpret_cast<const char*>(result), static_cast<std::size_t>(length)};
}

} // namespace benchcard::grammar
