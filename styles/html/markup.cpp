#include "styles/html/markup.hpp"

#include "styles/layout/text.hpp"
#include "styles/layout/utf8.hpp"

namespace benchcard::html {

std::string escaped(std::string_view text) {
    std::string result;
    result.reserve(text.size());
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '&')
            result += "&amp;";
        else if (c == '<')
            result += "&lt;";
        else if (c == '>')
            result += "&gt;";
        else if (c == '"')
            result += "&quot;";
        else if (c == '\'')
            result += "&#39;";
        else if (c == '\n' || c == '\t')
            result += ' ';
        else if (byte >= 0x20 && byte != 0x7F)
            result += c;
    }
    return result;
}

namespace {

/// A text whose measures are not parted at the end of a line: their blanks do not break.
std::string with_whole_measures(const std::string& text) {
    const auto characters = layout::characters_of(text);
    std::string result;
    for (std::size_t i = 0; i < characters.size(); ++i)
        layout::append(result, layout::parts_a_measure(characters, i) ? U'\u00A0' : characters[i]);
    return result;
}

} // namespace

std::string worded(const std::string& text) { return escaped(with_whole_measures(text)); }

std::string marked_up(const styles::paragraph& p) {
    std::string result;
    for (const auto& run : p) {
        const auto text = worded(run.text);
        result += run.strong ? "<b>" + text + "</b>" : text;
    }
    return result;
}

} // namespace benchcard::html
