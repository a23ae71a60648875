#include "styles/paper.hpp"

#include <algorithm>

namespace benchcard::styles {

namespace {

// ISO 216 for the A series; letter 8.5 × 11 in, half letter 5.5 × 8.5 in, index cards as named.
constexpr paper all_papers[] = {
    {"a4", 210, 297},    {"a5", 148, 210},         {"a6", 105, 148},
    {"a7", 74, 105},     {"letter", 215.9, 279.4}, {"half-letter", 139.7, 215.9},
    {"5x8", 127, 203.2}, {"4x6", 101.6, 152.4},    {"3x5", 76.2, 127},
};

char small_letter(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool same_word(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, {}, small_letter, small_letter);
}

} // namespace

paper turned(const paper& sheet) {
    return {sheet.name, std::max(sheet.width, sheet.height), std::min(sheet.width, sheet.height)};
}

std::span<const paper> papers() { return all_papers; }

std::optional<paper> paper_named(std::string_view name) {
    const auto blank = name.find(' ');
    const auto word = blank == name.npos ? "" : name.substr(name.find_last_of(' ') + 1);
    const bool landscape = same_word(word, "landscape");
    if (blank != name.npos && !landscape && !same_word(word, "portrait")) return std::nullopt;
    for (const auto& p : all_papers)
        if (same_word(name.substr(0, blank), p.name)) return landscape ? turned(p) : p;
    return std::nullopt;
}

} // namespace benchcard::styles
