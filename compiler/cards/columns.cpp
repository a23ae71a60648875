#include "compiler/cards/columns.hpp"

#include <algorithm>
#include <utf8proc.h>

namespace benchcard::cards {

std::size_t width_of(std::string_view text) {
    std::size_t width = 0;
    while (!text.empty()) {
        utf8proc_int32_t code = 0;
        const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                             static_cast<utf8proc_ssize_t>(text.size()), &code);
        if (length <= 0) break;
        width += static_cast<std::size_t>(std::max(utf8proc_charwidth(code), 0));
        text.remove_prefix(static_cast<std::size_t>(length));
    }
    return width;
}

std::string padded(const std::string& text, std::size_t width) {
    const auto own = width_of(text);
    return text + std::string(width > own ? width - own : 0, ' ');
}

std::string wrapped(const std::string& text, std::size_t indent) {
    const auto room = page_width > indent + 20 ? page_width - indent : 20;
    std::string result, line;
    for (std::size_t i = 0; i <= text.size();) {
        const auto end = std::min(text.find(' ', i), text.size());
        const auto word = text.substr(i, end - i);
        if (!line.empty() && width_of(line) + 1 + width_of(word) > room) {
            result += line + "\n" + std::string(indent, ' ');
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
        i = end + 1;
    }
    return result + line;
}

} // namespace benchcard::cards
