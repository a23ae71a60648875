#include "compiler/ingredients/names.hpp"

#include "grammar/unicode_map.hpp"

#include <algorithm>
#include <array>
#include <utf8proc.h>
#include <utility>

namespace benchcard::ingredients {

namespace {

/// Case and accents folded, by Unicode's own rules.
std::string folded(std::string_view text) {
    return grammar::unicode_mapped(text, UTF8PROC_STABLE | UTF8PROC_COMPAT | UTF8PROC_DECOMPOSE |
                                             UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK);
}

bool is_plain_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x80; });
}

/// Whether a character stands in a name as it is compared.
bool is_compared(char c) { return c != '\'' && (c < 'A' || c > 'Z'); }

char lower_ascii(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Words whose plural in -ves comes from -f or -fe; the others in -ves come from -ve (olives).
constexpr std::array<std::pair<std::string_view, std::string_view>, 6> ves_words = {{
    {"leaves", "leaf"},
    {"loaves", "loaf"},
    {"halves", "half"},
    {"knives", "knife"},
    {"calves", "calf"},
    {"shelves", "shelf"},
}};

/// Words whose -s alone makes the plural, though their ending looks like more: `brioches` come
/// from a brioche, but `peaches` from a peach.
bool takes_s_alone(std::string_view many) {
    constexpr std::string_view words[] = {
        "cookies",  "brownies", "smoothies", "bries",    "calories", "veggies",
        "brioches", "quiches",  "ganaches",  "fraiches", "leches",   "tranches",
        "ceviches", "roes",     "toes",      "shoes",    "aloes"};
    const bool after_z = many.ends_with("zes") && !many.ends_with("zzes"); // glazes
    return after_z || std::find(std::begin(words), std::end(words), many) != std::end(words);
}

/// Words that take -es in the plural. Not every -ses does: cases come from a case.
bool ends_in_hissing(std::string_view stem) {
    return stem.ends_with("ss") || stem.ends_with("us") || stem.ends_with("x") ||
           stem.ends_with("z") || stem.ends_with("ch") || stem.ends_with("sh");
}

bool may_be_plural(std::string_view word) { return word.ends_with('s') || word.ends_with('x'); }

} // namespace

std::string singular(std::string_view word) {
    if (!may_be_plural(word)) return std::string(word);
    for (const auto& [many, one] : ves_words)
        if (word == many) return std::string(one);
    if (word.size() < 4 && word != "eggs") return std::string(word);
    if (word.ends_with("eaux")) return std::string(word.substr(0, word.size() - 1));
    if (takes_s_alone(word)) return std::string(word.substr(0, word.size() - 1));
    if (word.ends_with("ies") && word.size() > 4)
        return std::string(word.substr(0, word.size() - 3)) + "y";
    if (word.ends_with("oes")) return std::string(word.substr(0, word.size() - 2));
    if (word.ends_with("es") && ends_in_hissing(word.substr(0, word.size() - 2)) &&
        word != "molasses")
        return std::string(word.substr(0, word.size() - 2));
    if (word.ends_with("s") && !word.ends_with("ss") && !word.ends_with("us") && word != "molasses")
        return std::string(word.substr(0, word.size() - 1));
    return std::string(word);
}

std::string plural(std::string_view word) {
    for (const auto& [many, one] : ves_words)
        if (word == one) return std::string(many);
    if (word.ends_with("eau")) return std::string(word) + "x"; // gateaux
    const bool vowel_before_y =
        word.size() > 1 &&
        std::string_view("aeiou").find(word[word.size() - 2]) != std::string_view::npos;
    if (word.ends_with("y") && !vowel_before_y)
        return std::string(word.substr(0, word.size() - 1)) + "ies";
    if (ends_in_hissing(word) || word == "tomato" || word == "potato" || word == "mango")
        return std::string(word) + "es";
    return std::string(word) + "s";
}

namespace {

/// Gives each word of a name, in the form in which it is compared, to `take`.
void each_compared_word(std::string_view name, auto take) {
    std::string text;
    if (!is_plain_ascii(name)) name = text = folded(name);
    const auto parts = [](char c) { return c == ' ' || c == '\t' || c == '-'; };
    const auto end = name.end();
    std::string changed;
    for (auto begin = std::find_if_not(name.begin(), end, parts); begin != end;) {
        const auto past = std::find_if(begin, end, parts);
        std::string_view word(begin, past);
        if (!std::all_of(begin, past, is_compared)) {
            changed = word;
            std::transform(changed.begin(), changed.end(), changed.begin(), lower_ascii);
            std::erase(changed, '\'');
            word = changed;
        }
        if (may_be_plural(word))
            take(singular(word));
        else if (!word.empty())
            take(word);
        begin = std::find_if_not(past, end, parts);
    }
}

} // namespace

std::size_t words_in(std::string_view compared) {
    if (compared.empty()) return 0;
    return 1 + static_cast<std::size_t>(std::count(compared.begin(), compared.end(), ' '));
}

std::vector<std::string> compared_words(std::string_view name) {
    std::vector<std::string> words;
    words.reserve(words_in(name));
    each_compared_word(name, [&](std::string_view word) { words.emplace_back(word); });
    return words;
}

bool has_word(std::string_view text, std::initializer_list<std::string_view> wanted) {
    bool found = false;
    each_compared_word(text, [&](std::string_view word) {
        if (found) return;
        const auto last = word.find_last_not_of(".,;:!?()");
        const auto bare = word.substr(0, last == word.npos ? 0 : last + 1);
        const bool was_marked = bare.size() < word.size() && may_be_plural(bare);
        const auto one = was_marked ? singular(bare) : std::string();
        found = std::find(wanted.begin(), wanted.end(), was_marked ? one : bare) != wanted.end();
    });
    return found;
}

std::string compared_name(std::string_view name) {
    std::string result;
    each_compared_word(name, [&](std::string_view word) {
        if (!result.empty()) result += ' ';
        result += word;
    });
    return result;
}

} // namespace benchcard::ingredients
