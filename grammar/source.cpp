#include "grammar/source.hpp"

#include <algorithm>
#include <utf8proc.h>

namespace benchcard::grammar {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

std::vector<std::size_t> line_starts(std::string_view text) {
    std::vector<std::size_t> starts{0};
    for (std::size_t i = text.find('\n'); i != text.npos; i = text.find('\n', i + 1))
        starts.push_back(i + 1);
    return starts;
}

/// The length of the character at the start of `text`, or 0 where it is not UTF-8.
std::size_t character_length(std::string_view text) {
    utf8proc_int32_t code = 0;
    const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                         static_cast<utf8proc_ssize_t>(text.size()), &code);
    return length > 0 && code >= 0 ? static_cast<std::size_t>(length) : 0;
}

} // namespace

source::source(std::uint32_t file, std::string name, std::string bytes)
    : file_(file), name_(std::move(name)), text_(std::move(bytes)) {
    if (text_.starts_with(byte_order_mark)) text_.erase(0, byte_order_mark.size());
    starts_ = line_starts(text_);
}

position source::at(std::size_t offset) const {
    offset = std::min(offset, text_.size());
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
    const auto number = static_cast<std::size_t>(after - starts_.begin());
    const auto start = starts_[number - 1];
    return {number, count_characters(text().substr(start, offset - start)) + 1};
}

std::string_view source::line(std::size_t number) const {
    if (number == 0 || number > starts_.size()) return {};
    const auto start = starts_[number - 1];
    auto end = number < starts_.size() ? starts_[number] - 1 : text_.size();
    if (end > start && text_[end - 1] == '\r') --end;
    return text().substr(start, end - start);
}

std::string_view source::text_of(span where) const {
    const auto begin = std::min<std::size_t>(where.begin, text_.size());
    return text().substr(begin, std::max<std::size_t>(where.end, begin) - begin);
}

std::size_t first_not_utf8(std::string_view bytes) {
    std::size_t i = 0;
    while (i < bytes.size()) {
        const auto length =
            static_cast<unsigned char>(bytes[i]) < 0x80 ? 1 : character_length(bytes.substr(i));
        if (length == 0) return i;
        i += length;
    }
    return bytes.npos;
}

pile first_pile(std::string_view text, std::size_t most) {
    pile now{0, 0};
    utf8proc_int32_t before = 0, state = 0;
    for (std::size_t i = 0; i < text.size();) {
        utf8proc_int32_t code = 0;
        const auto length =
            utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data() + i),
                             static_cast<utf8proc_ssize_t>(text.size() - i), &code);
        if (length <= 0) break;
        if (i == 0 || utf8proc_grapheme_break_stateful(before, code, &state)) {
            if (now.code_points > most) return now;
            now = {i, 0};
        }
        ++now.code_points;
        before = code;
        i += static_cast<std::size_t>(length);
    }
    return now.code_points > most ? now : pile{text.npos, 0};
}

std::size_t count_characters(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < text.size(); ++count)
        i += std::max<std::size_t>(1, character_length(text.substr(i)));
    return count;
}

} // namespace benchcard::grammar
