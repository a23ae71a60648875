#include "grammar/nearest.hpp"

#include "grammar/unicode_map.hpp"

#include <algorithm>
#include <array>
#include <utf8proc.h>

namespace benchcard::grammar {

namespace {

std::vector<utf8proc_int32_t> characters(std::string_view text) {
    std::vector<utf8proc_int32_t> result;
    auto rest = reinterpret_cast<const utf8proc_uint8_t*>(text.data());
    auto left = static_cast<utf8proc_ssize_t>(text.size());
    while (left > 0) {
        utf8proc_int32_t code = 0;
        auto length = utf8proc_iterate(rest, left, &code);
        if (length <= 0) length = 1, code = 0xFFFD;
        result.push_back(code);
        rest += length;
        left -= length;
    }
    return result;
}

/// How often each character is in a word, in 32 drawers of some characters each.
using drawers = std::array<int, 32>;
drawers drawers_of(const std::vector<utf8proc_int32_t>& word) {
    drawers result{};
    for (const auto c : word) ++result[static_cast<std::size_t>(c) % result.size()];
    return result;
}

/// What the distance of two words is at the least: each slip adds one character, takes one away,
/// or both.
std::size_t least_distance(const drawers& a, const drawers& b) {
    int more = 0, fewer = 0;
    for (std::size_t i = 0; i < a.size(); ++i)
        (a[i] > b[i] ? more : fewer) += std::abs(a[i] - b[i]);
    return static_cast<std::size_t>(std::max(more, fewer));
}

/// The distance of two words where it is `most` or less, and more than that where it is more: only
/// what lies so near to the diagonal of the table is looked at, in three rows of it.
std::size_t distance_within(const std::vector<utf8proc_int32_t>& from,
                            const std::vector<utf8proc_int32_t>& to, std::size_t most) {
    const auto apart = std::max(from.size(), to.size()) - std::min(from.size(), to.size());
    if (apart > most) return most + 1;
    std::vector<std::size_t> before_last(to.size() + 1, most + 1), last(before_last),
        row(before_last);
    for (std::size_t j = 0; j <= std::min(to.size(), most); ++j) row[j] = j;
    for (std::size_t i = 1; i <= from.size(); ++i) {
        std::swap(before_last, last);
        std::swap(last, row);
        std::fill(row.begin(), row.end(), most + 1);
        if (i <= most) row[0] = i;
        const auto begin = i > most ? i - most : 1, end = std::min(to.size(), i + most);
        for (auto j = begin; j <= end; ++j) {
            const std::size_t changed = from[i - 1] == to[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + changed});
            const bool swapped =
                i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1];
            if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
        }
        const auto is_far = [&](std::size_t d) { return d > most; };
        if (std::all_of(row.begin(), row.end(), is_far) &&
            std::all_of(last.begin(), last.end(), is_far))
            return most + 1;
    }
    return row[to.size()];
}

} // namespace

std::string folded_case(std::string_view text) {
    const bool is_ascii =
        std::all_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x80; });
    if (is_ascii) {
        std::string lower(text);
        for (auto& c : lower)
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        return lower;
    }
    return unicode_mapped(text, UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD);
}

std::size_t distance(std::string_view a, std::string_view b) {
    const auto from = characters(a), to = characters(b);
    return distance_within(from, to, std::max(from.size(), to.size()));
}

std::vector<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates,
                                 std::size_t most) {
    const auto wanted = folded_case(word);
    constexpr std::size_t longest_compared = 60;
    if (wanted.size() > longest_compared) return {};
    const auto letters = characters(wanted);
    const auto slips = std::max<std::size_t>(1, letters.size() / 3);
    const auto in_drawers = drawers_of(letters);
    std::vector<std::pair<std::size_t, std::string>> near;
    for (const auto& candidate : candidates) {
        // A slip is one character, which is at most four bytes.
        const auto longer = std::max(candidate.size(), wanted.size());
        const auto shorter = std::min(candidate.size(), wanted.size());
        if (longer - shorter > 4 * slips) continue;
        const auto other = characters(folded_case(candidate));
        if (least_distance(in_drawers, drawers_of(other)) > slips) continue;
        const auto d = distance_within(letters, other, slips);
        if (d <= slips) near.emplace_back(d, candidate);
    }
    std::stable_sort(near.begin(), near.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> result;
    for (const auto& [d, candidate] : near)
        if (result.size() < most &&
            std::find(result.begin(), result.end(), candidate) == result.end())
            result.push_back(candidate);
    return result;
}

} // namespace benchcard::grammar
