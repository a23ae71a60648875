#include "compiler/ingredients/table_file.hpp"

#include <algorithm>
#include <optional>

namespace benchcard::ingredients {

namespace {

/// The rest of a line that begins with a word and a colon.
std::optional<std::string_view> value_of(std::string_view word, std::string_view line) {
    if (!line.starts_with(word) || !line.substr(word.size()).starts_with(": ")) return std::nullopt;
    return line.substr(word.size() + 2);
}

/// The names in a list, as they are written between its commas.
void add_listed(std::string_view list, std::vector<std::string>& to) {
    for (std::size_t begin = 0; begin < list.size();) {
        const auto end = std::min(list.find(", ", begin), list.size());
        to.emplace_back(list.substr(begin, end - begin));
        begin = end + 2;
    }
}

} // namespace

std::vector<table_block> blocks_of(std::string_view text) {
    std::vector<table_block> blocks;
    stretch measures;
    const auto end_block = [&](std::uint32_t at) {
        if (!blocks.empty()) blocks.back().whole.end = at;
    };
    for (std::size_t begin = 0; begin < text.size();) {
        const auto end = std::min(text.find('\n', begin), text.size());
        const stretch at{static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
        const auto line = at.in(text);
        if (const auto title = value_of("ingredient", line)) {
            end_block(at.begin);
            blocks.push_back({{at.begin, at.begin}, measures, {std::string(*title)}});
        } else if (const auto also = value_of("also", line); also && !blocks.empty()) {
            add_listed(*also, blocks.back().names);
        } else if (value_of("measures", line)) {
            measures = at;
        }
        begin = end + 1;
    }
    end_block(static_cast<std::uint32_t>(text.size()));
    return blocks;
}

std::pair<std::string_view, country> name_and_country(std::string_view written) {
    const auto bare = written.substr(0, written.size() - std::min<std::size_t>(5, written.size()));
    if (written.ends_with(" (uk)")) return {bare, country::uk};
    if (written.ends_with(" (us)")) return {bare, country::us};
    return {written, country::any};
}

} // namespace benchcard::ingredients
