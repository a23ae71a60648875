#include "compiler/cards/counted_name.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>

namespace benchcard::cards {

namespace {

/// Things that are counted in place of what they are of: `20 cloves garlic`, `2 tins tomatoes`.
bool holds_or_parts(const std::string& one) {
    constexpr std::string_view words[] = {"tin",    "can",    "jar",   "bottle", "bag",    "packet",
                                          "sachet", "punnet", "clove", "leaf",   "sheet",  "sprig",
                                          "head",   "bunch",  "pod",   "slice",  "piece",  "stalk",
                                          "cube",   "ball",   "knob",  "rasher", "fillet", "strip"};
    return std::find(std::begin(words), std::end(words), one) != std::end(words);
}

std::vector<std::string> words_of(const std::string& name) {
    std::vector<std::string> words(1);
    for (const char c : name) {
        if (c == ' ')
            words.emplace_back();
        else
            words.back() += c;
    }
    return words;
}

std::string joined(const std::vector<std::string>& words) {
    std::string result;
    for (const auto& w : words) result += (result.empty() ? "" : " ") + w;
    return result;
}

/// Which word of a name is counted: the piece at its beginning, or else the last.
std::size_t counted_word(const std::vector<std::string>& words) {
    const bool by_piece =
        words.size() > 1 && holds_or_parts(ingredients::compared_name(words.front()));
    return by_piece ? 0 : words.size() - 1;
}

bool is_many(const exact& number) { return number > 1; }

bool is_counted_by_name(const batch::weigh_line& l) {
    return how_given(l) == given::counted && !l.of->component && !l.of->written->piece;
}

} // namespace

std::string in_number(const std::string& name, bool many) {
    auto words = words_of(name);
    auto& word = words[counted_word(words)];
    const auto one = ingredients::singular(word);
    word = many ? ingredients::plural(one) : one;
    return joined(words);
}

std::string counted_name(const batch::weigh_line& l) {
    if (!is_counted_by_name(l)) return l.of->name;
    const bool many = is_many(counted_number(l));
    const bool was_many = is_many(recipe::spread_of(l.of->written->amounts.front().quantity).used);
    if (many == was_many) return l.of->name; // as the baker wrote it
    std::string result;
    for (const auto& name : l.of->written->names)
        result += (result.empty() ? "" : " or ") + in_number(name.text, many);
    return result;
}

bool is_beaten(const recipe::line& l) {
    if (!l.what) return false;
    const auto& raw = l.what->raw;
    return std::find(raw.begin(), raw.end(), "egg") != raw.end();
}

std::string name_of_part(const recipe::line& l) {
    if (is_beaten(l)) return "beaten " + l.what->name;
    if (l.what && l.what->whole) return l.what->name;
    auto words = words_of(l.written->names.front().text);
    if (words.size() > 1 && counted_word(words) == 0) words.erase(words.begin());
    return joined(words);
}

std::string counted_name(const batch::weigh_line& l, const std::string& said) {
    if (!is_counted_by_name(l)) return said;
    const auto whole = counted_name(l);
    const auto first = words_of(whole.substr(0, whole.find(" or ")));
    const auto& counted = first[counted_word(first)];
    auto words = words_of(said);
    const auto place = std::find_if(words.begin(), words.end(), [&](const auto& w) {
        return ingredients::compared_name(w) == ingredients::compared_name(counted);
    });
    if (place == words.end()) return whole;
    *place = counted;
    return joined(words);
}

} // namespace benchcard::cards
