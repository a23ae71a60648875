#include "compiler/recipe/line_names.hpp"

#include "compiler/ingredients/names.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::recipe {

namespace {

bool all_among(const std::vector<std::string>& wanted, const std::vector<std::string>& words) {
    return std::all_of(wanted.begin(), wanted.end(), [&](const auto& w) {
        return std::find(words.begin(), words.end(), w) != words.end();
    });
}

} // namespace

line_names::line_names(const std::vector<line>& lines) : lines_(lines) {
    for (const auto& l : lines_) words_.push_back(words_of(l));
    for (std::size_t i = 0; i < words_.size(); ++i) note_words(i);
}

line_names::words line_names::words_of(const line& l) {
    words result;
    result.name = ingredients::compared_words(l.name);
    result.with_preparation = result.name;
    for (auto& w : ingredients::compared_words(l.preparation)) {
        while (!w.empty() && w.back() == ',') w.pop_back();
        result.with_preparation.push_back(std::move(w));
    }
    if (l.what) {
        result.other_names.push_back(ingredients::compared_words(l.what->name));
        for (const auto& other : l.what->also)
            result.other_names.push_back(ingredients::compared_words(other));
    }
    return result;
}

void line_names::note_words(std::size_t index) {
    const auto note = [&](const std::vector<std::string>& all) {
        for (const auto& w : all)
            if (auto& lines = with_word_[w]; lines.empty() || lines.back() != index)
                lines.push_back(index);
    };
    note(words_[index].with_preparation);
    for (const auto& other : words_[index].other_names) note(other);
}

/// Of the lines that have some words, those that have the rarest.
const std::vector<std::size_t>& line_names::may_be(const std::vector<std::string>& wanted) const {
    static const std::vector<std::size_t> none;
    const std::vector<std::size_t>* fewest = nullptr;
    for (const auto& w : wanted) {
        const auto found = with_word_.find(w);
        if (found == with_word_.end()) return none;
        if (!fewest || found->second.size() < fewest->size()) fewest = &found->second;
    }
    return fewest ? *fewest : none;
}

std::vector<std::size_t> line_names::candidates(const std::string& said) const {
    const auto wanted = ingredients::compared_words(said);
    std::vector<std::size_t> exact_ones, by_name, by_preparation, by_other_name;
    for (const auto i : may_be(wanted)) {
        const auto& w = words_[i];
        if (w.name == wanted) exact_ones.push_back(i);
        if (all_among(wanted, w.name)) by_name.push_back(i);
        if (all_among(wanted, w.with_preparation)) by_preparation.push_back(i);
        for (const auto& other : w.other_names)
            if (all_among(wanted, other)) {
                by_other_name.push_back(i);
                break;
            }
    }
    for (const auto* found : {&exact_ones, &by_name, &by_preparation, &by_other_name})
        if (!found->empty()) return *found;
    return {};
}

std::vector<std::size_t> line_names::meant_by(const std::string& said) const {
    const auto found = candidates(said);
    // `some flour, for dusting` has words of its own.
    const bool is_one_name = std::all_of(found.begin(), found.end(), [&](std::size_t i) {
        return words_[i].name == words_[found.front()].name;
    });
    std::vector<std::size_t> weighed;
    for (const auto i : found)
        if (!lines_[i].some) weighed.push_back(i);
    return is_one_name && weighed.size() == 1 ? weighed : found;
}

std::optional<line_names::near> line_names::nearest(const std::string& said) const {
    std::vector<std::string> all;
    for (const auto& l : lines_) {
        all.push_back(l.name);
        all.push_back(l.name.substr(l.name.rfind(' ') + 1));
    }
    const auto found = grammar::nearest(said, all, 1);
    if (found.empty()) return std::nullopt;
    const auto place = std::find(all.begin(), all.end(), found.front()) - all.begin();
    return near{static_cast<std::size_t>(place / 2), found.front()};
}

std::string line_names::printed(std::size_t index, const std::string& said) const {
    const auto wanted = ingredients::compared_words(said);
    const auto& w = words_[index];
    const auto names = [&](const std::vector<std::string>& name) {
        return std::any_of(wanted.begin(), wanted.end(), [&](const auto& word) {
            return std::find(name.begin(), name.end(), word) != name.end();
        });
    };
    const bool is_named =
        names(w.name) || std::any_of(w.other_names.begin(), w.other_names.end(), names);
    return is_named ? said : lines_[index].name;
}

std::string line_names::last_word(std::size_t index) const {
    const auto& name = words_[index].name;
    return name.empty() ? "" : name.back();
}

std::string line_names::listed(std::size_t most) const {
    std::string all;
    for (std::size_t i = 0; i < std::min(lines_.size(), most); ++i)
        all += (i == 0 ? "" : ", ") + lines_[i].name;
    if (lines_.size() > most) all += fmt::format(" and {} more", lines_.size() - most);
    return all;
}

} // namespace benchcard::recipe
