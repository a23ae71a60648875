#include "compiler/recipe/plain_words.hpp"

#include "compiler/ingredients/names.hpp"

#include <algorithm>

namespace benchcard::recipe {

plain_words::plain_words(const std::vector<const grammar::step*>& steps) {
    for (const auto* written : steps)
        for (const auto& part : written->parts)
            if (const auto* text = std::get_if<grammar::words>(&part)) add(*text);
}

std::optional<plain_words::mention> plain_words::find(const std::string& compared) const {
    const auto found = first_.find(compared);
    if (compared.empty() || found == first_.end()) return std::nullopt;
    return found->second;
}

/// The words of a part of a step, in whatever number; none where the text was folded and its
/// places are not those of the file.
void plain_words::add(const grammar::words& in) {
    const std::string_view text = in.text;
    if (text.size() != in.where.end - in.where.begin) return;
    constexpr std::string_view between = " \t.,;:()!?";
    for (auto begin = text.find_first_not_of(between); begin != text.npos;) {
        const auto end = std::min(text.find_first_of(between, begin), text.size());
        const auto word = text.substr(begin, end - begin);
        const grammar::span where{in.where.file, in.where.begin + static_cast<std::uint32_t>(begin),
                                  in.where.begin + static_cast<std::uint32_t>(end)};
        first_.emplace(ingredients::compared_name(word), mention{where, word});
        begin = text.find_first_not_of(between, end);
    }
}

} // namespace benchcard::recipe
