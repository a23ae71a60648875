#include "compiler/editor/places.hpp"

#include <algorithm>

namespace benchcard::editor {

namespace {

/// How many bytes the character takes that begins at the front of a text, and how many units its
/// column counts. A byte that is not UTF-8 is one of each.
struct extent {
    std::size_t bytes = 1, units = 1;
};

extent first_character(std::string_view text, encoding counted) {
    const auto lead = static_cast<unsigned char>(text.front());
    std::size_t bytes = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : lead < 0xF8 ? 4 : 1;
    bytes = std::min(bytes, text.size());
    for (std::size_t i = 1; i < bytes; ++i)
        if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) return {1, 1};
    if (counted == encoding::utf8) return {bytes, bytes};
    return {bytes, bytes == 4 ? std::size_t{2} : std::size_t{1}};
}

} // namespace

position position_in(const json& from) {
    const auto number = [&](const char* name) {
        const auto value = from.at(name).get<std::int64_t>();
        return static_cast<std::size_t>(std::max<std::int64_t>(0, value));
    };
    return {number("line"), number("character")};
}

json as_json(const position& p) { return {{"line", p.line}, {"character", p.character}}; }

std::size_t units_in(std::string_view text, encoding counted) {
    std::size_t units = 0;
    while (!text.empty()) {
        const auto next = first_character(text, counted);
        units += next.units;
        text.remove_prefix(next.bytes);
    }
    return units;
}

places::places(std::string_view text, encoding counted, std::size_t mark)
    : text_(text), counted_(counted), mark_(mark), starts_{0} {
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') ++i;
        if (text[i] == '\r' || text[i] == '\n') starts_.push_back(i + 1);
    }
}

std::size_t places::line_end(std::size_t line) const {
    if (line + 1 >= starts_.size()) return text_.size();
    auto end = starts_[line + 1] - 1;
    if (text_[end] == '\n' && end > starts_[line] && text_[end - 1] == '\r') --end;
    return end;
}

std::size_t places::units_of_mark() const {
    return mark_ == 0 ? 0 : counted_ == encoding::utf8 ? mark_ : 1;
}

std::size_t places::offset_at(position p) const {
    if (p.line >= starts_.size()) return text_.size();
    const auto end = line_end(p.line);
    auto units = p.line == 0 ? units_of_mark() : 0;
    auto offset = starts_[p.line];
    while (offset < end) {
        const auto next = first_character(text_.substr(offset, end - offset), counted_);
        if (units + next.units > p.character) break;
        units += next.units;
        offset += next.bytes;
    }
    return offset;
}

position places::at(std::size_t offset) const {
    offset = std::min(offset, text_.size());
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
    const auto line = static_cast<std::size_t>(after - starts_.begin()) - 1;
    const auto start = starts_[line];
    const auto end = std::min(offset, line_end(line));
    return {line, units_in(text_.substr(start, end - start), counted_) +
                      (line == 0 ? units_of_mark() : 0)};
}

json places::range(std::size_t begin, std::size_t end) const {
    return {{"start", as_json(at(begin))}, {"end", as_json(at(std::max(begin, end)))}};
}

void change_text(std::string& text, const json& change, encoding counted) {
    auto made = change.at("text").get<std::string>();
    const auto range = change.find("range");
    if (range == change.end() || range->is_null()) {
        text = std::move(made);
        return;
    }
    const places at(text, counted);
    const auto begin = at.offset_at(position_in(range->at("start")));
    const auto end = at.offset_at(position_in(range->at("end")));
    text.replace(std::min(begin, end), std::max(begin, end) - std::min(begin, end), made);
}

} // namespace benchcard::editor
