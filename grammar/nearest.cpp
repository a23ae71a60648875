#include "grammar/nearest.hpp"

#include <algorithm>
#include <cstdlib>
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
    utf8proc_uint8_t* folded = nullptr;
    const auto options =
        static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD);
    const auto length = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                     static_cast<utf8proc_ssize_t>(text.size()), &folded, options);
    if (length < 0) return std::string(text);
    std::string result(reinterpret_cast<const char*>(folded), static_cast<std::size_t>(length));
    std::free(folded);
    return result;
}

std::size_t distance(std::string_view a, std::string_view b) {
    const auto from = characters(a);
    const auto to = characters(b);
    std::vector<std::vector<std::size_t>> table(from.size() + 1,
                                                std::vector<std::size_t>(to.size() + 1));
    for (std::size_t i = 0; i <= from.size(); ++i) table[i][0] = i;
    for (std::size_t j = 0; j <= to.size(); ++j) table[0][j] = j;
    for (std::size_t i = 1; i <= from.size(); ++i)
        for (std::size_t j = 1; j <= to.size(); ++j) {
            const std::size_t changed = from[i - 1] == to[j - 1] ? 0 : 1;
            auto least =
                std::min({table[i - 1][j] + 1, table[i][j - 1] + 1, table[i - 1][j - 1] + changed});
            const bool swapped =
                i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1];
            if (swapped) least = std::min(least, table[i - 2][j - 2] + 1);
            table[i][j] = least;
        }
    return table[from.size()][to.size()];
}

std::vector<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates,
                                 std::size_t most) {
    const auto wanted = folded_case(word);
    constexpr std::size_t longest_compared = 60;
    if (wanted.size() > longest_compared) return {};
    const auto slips = std::max<std::size_t>(1, characters(wanted).size() / 3);
    std::vector<std::pair<std::size_t, std::string>> near;
    for (const auto& candidate : candidates) {
        // A slip is one character, which is at most four bytes.
        const auto longer = std::max(candidate.size(), wanted.size());
        const auto shorter = std::min(candidate.size(), wanted.size());
        if (longer - shorter > 4 * slips) continue;
        if (const auto d = distance(wanted, folded_case(candidate)); d <= slips)
            near.emplace_back(d, candidate);
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
