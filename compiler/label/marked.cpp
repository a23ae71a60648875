#include "compiler/ingredients/names.hpp"
#include "compiler/label/shown.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/safety/allergen_lists.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::label {

namespace {

using safety::law;

std::string in_capitals(std::string text) {
    for (auto& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](const char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

class marker {
  public:
    void plain(std::string_view text) { add(text); }
    void strong(std::string_view text) {
        const auto begin = length_;
        add(in_capitals(std::string(text)));
        made_.allergens.push_back({begin, length_});
    }
    marked_text take() { return std::move(made_); }

  private:
    marked_text made_;
    std::size_t length_ = 0;

    void add(std::string_view text) { made_.text += text, length_ += characters(text); }
};

/// A name in its words, and where each stands.
struct word_place {
    std::string compared;
    std::size_t begin, end;
};

std::vector<word_place> words_of(const std::string& name) {
    std::vector<word_place> result;
    for (auto begin = name.find_first_not_of(" -"); begin != name.npos;) {
        const auto end = std::min(name.find_first_of(" -", begin), name.size());
        result.push_back({ingredients::compared_name(name.substr(begin, end - begin)), begin, end});
        begin = name.find_first_not_of(" -", end);
    }
    return result;
}

/// Where a name says a phrase; an empty place where it does not.
std::pair<std::size_t, std::size_t> said_in(const std::string& name, std::string_view phrase) {
    const auto words = words_of(name);
    const auto wanted = ingredients::compared_words(phrase);
    if (wanted.empty()) return {0, 0};
    for (std::size_t i = 0; i + wanted.size() <= words.size(); ++i)
        if (std::equal(wanted.begin(), wanted.end(), words.begin() + static_cast<long>(i),
                       [](const auto& w, const auto& at) { return w == at.compared; }))
            return {words[i].begin, words[i + wanted.size() - 1].end};
    return {0, 0};
}

/// What a law calls it: wheat of any kind is wheat as well, and the US speak of soy.
std::string called(const safety::allergen& a, law whose) {
    if (whose == law::us && a.name == "soya") return "soy";
    if (whose == law::us && a.name == "crustaceans") return "crustacean shellfish";
    if (a.us == "wheat" && a.name != "wheat" && a.name != "gluten")
        return whose == law::us ? "wheat" : "wheat: " + std::string(a.name);
    return std::string(a.name);
}

/// The words in a name that name the allergen; those that do it at once, `egg` in `eggs`.
std::pair<std::size_t, std::size_t> place_of(const safety::allergen& a, const std::string& name,
                                             law whose) {
    const bool is_kind_of_wheat = a.us == "wheat" && a.name != "wheat";
    if (is_kind_of_wheat) return said_in(name, "wheat");
    auto place = said_in(name, called(a, whose));
    if (place.second == 0) place = said_in(name, a.name);
    return place;
}

void add_ingredient(marker& to, const item& i, law whose) {
    std::vector<std::pair<std::size_t, std::size_t>> places;
    std::vector<std::string> behind;
    for (const auto& name : i.allergens.contains) {
        const auto* a = safety::allergen_named(name);
        if (!a || !safety::is_on_list(*a, whose)) continue;
        if (const auto place = place_of(*a, i.name, whose); place.second > 0)
            places.push_back(place);
        else if (const auto said = called(*a, whose);
                 std::find(behind.begin(), behind.end(), said) == behind.end())
            behind.push_back(said);
    }
    std::sort(places.begin(), places.end());
    std::size_t at = 0;
    for (const auto& [begin, end] : places) {
        if (begin < at) continue;
        to.plain(std::string_view(i.name).substr(at, begin - at));
        to.strong(std::string_view(i.name).substr(begin, end - begin));
        at = end;
    }
    to.plain(std::string_view(i.name).substr(at));
    for (std::size_t k = 0; k < behind.size(); ++k) {
        to.plain(k == 0 ? " (" : ", ");
        to.strong(behind[k]);
    }
    if (!behind.empty()) to.plain(")");
}

/// Above 5 % without decimals. More than all of the product is said by weight (Annex VIII, 4(a)).
std::string said_percent(const exact& percent) {
    if (percent > 100) return fmt::format("{} g to 100 g", measures::in_decimals(percent, 0));
    return measures::in_decimals(percent, percent > 5 ? 0 : 1) + " %";
}

void add_item(marker& to, const item& i, law whose);

void add_items(marker& to, const std::vector<item>& items, law whose) {
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (k > 0) to.plain(", ");
        add_item(to, items[k], whose);
    }
}

void add_item(marker& to, const item& i, law whose) {
    add_ingredient(to, i, whose);
    if (i.percent && whose != law::us) to.plain(" " + said_percent(*i.percent));
    if (i.parts.empty()) return;
    to.plain(" (");
    add_items(to, i.parts, whose);
    to.plain(")");
}

/// 21 CFR 101.4(a)(2): what is 2 % or less by weight may be grouped, in any order. What is not
/// known is not said to be little.
bool is_little(const item& i, const ingredient_list& list) {
    return i.is_some || (i.used && list.finished && *i.used * 50 <= *list.finished);
}

void add_us_items(marker& to, const ingredient_list& list) {
    auto items = list.items;
    const auto first = std::stable_partition(items.begin(), items.end(),
                                             [&](const auto& i) { return !is_little(i, list); });
    add_items(to, {items.begin(), first}, law::us);
    if (first == items.end()) return;
    to.plain(first == items.begin() ? "" : ", ");
    to.plain("contains 2% or less of each of the following: ");
    add_items(to, {first, items.end()}, law::us);
}

} // namespace

marked_text ingredients_in(const ingredient_list& list, law whose) {
    marker to;
    to.plain("Ingredients: ");
    if (whose == law::us)
        add_us_items(to, list);
    else
        add_items(to, in_eu_order(list), whose);
    to.plain(".");
    return to.take();
}

marked_text contains_statement(const ingredient_list& list) {
    marker to;
    std::vector<std::string> said;
    for (const auto& name : list.allergens.contains) {
        const auto* a = safety::allergen_named(name);
        if (!a || !safety::is_on_list(*a, law::us)) continue;
        if (const auto word = called(*a, law::us);
            std::find(said.begin(), said.end(), word) == said.end())
            said.push_back(word);
    }
    for (std::size_t i = 0; i < said.size(); ++i) {
        to.plain(i == 0 ? "Contains: " : ", ");
        to.strong(said[i]);
    }
    if (!said.empty()) to.plain(".");
    return to.take();
}

} // namespace benchcard::label
