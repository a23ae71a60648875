#include "compiler/label/ingredient_list.hpp"

#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <functional>
#include <set>

namespace benchcard::label {

namespace {

using ingredients::compared_words;
using ingredients::has_word;

/// What is lost from a bowl or a sieve is mix, not water.
bool is_evaporation(const grammar::loss& l) {
    return recipe::is_after_portioning(l) ||
           has_word(l.place.text, {"pot", "pan", "saucepan", "boiling", "simmering", "kettle"});
}

/// Words that say how a measure is filled, how large a piece is or which part is counted: no part
/// of the name on a label.
bool is_of_measure(const std::string& word, const ingredients::entry& what) {
    constexpr std::string_view sizes[] = {"large", "medium", "small",  "cold",   "warm",  "hot",
                                          "soft",  "fine",   "sifted", "packed", "fresh", "ripe"};
    if (std::find(std::begin(sizes), std::end(sizes), word) != std::end(sizes)) return true;
    return std::any_of(what.figures.begin(), what.figures.end(), [&](const auto& f) {
        const auto states = compared_words(f.state);
        return f.piece == word || std::find(states.begin(), states.end(), word) != states.end();
    });
}

bool is_water(const recipe::line& l) {
    return l.what && (l.what->name == "water" || l.what->name == "ice");
}

/// `large eggs` → `eggs`, `cloves garlic` → `garlic`; words that may be part of it are kept.
std::string label_name(const recipe::line& l) {
    if (!l.what) return l.name;
    if (is_water(l)) return "water";
    auto name = l.name;
    for (auto end = name.find(' '); end != name.npos; end = name.find(' ')) {
        const auto first = compared_words(name.substr(0, end));
        if (first.size() != 1 || !is_of_measure(first.front(), *l.what)) break;
        if (l.description.find(name.substr(0, end)) == std::string::npos) break;
        name.erase(0, end + 1);
    }
    return name;
}

void add(std::optional<exact>& to, const std::optional<exact>& more) {
    if (to && more)
        *to += *more;
    else
        to.reset();
}

void add_all(std::vector<std::string>& to, const std::vector<std::string>& more) {
    for (const auto& name : more)
        if (std::find(to.begin(), to.end(), name) == to.end()) to.push_back(name);
}

void add_to(std::vector<item>& items, item more) {
    const auto same = std::find_if(items.begin(), items.end(), [&](const auto& i) {
        return i.name == more.name && i.parts.empty() == more.parts.empty();
    });
    if (same == items.end()) return items.push_back(std::move(more));
    // `some flour, for dusting` beside weighed flour adds nothing that could be weighed.
    if (!more.is_some) {
        if (same->is_some) same->used = same->left = 0;
        same->is_some = false;
        add(same->used, more.used), add(same->left, more.left);
    }
    add_all(same->allergens.contains, more.allergens.contains);
    add_all(same->allergens.may_contain, more.allergens.may_contain);
    for (std::size_t i = 0; i < same->parts.size() && i < more.parts.size(); ++i)
        add(same->parts[i].used, more.parts[i].used), add(same->parts[i].left, more.parts[i].left);
}

void scale(std::vector<item>& items, const std::optional<exact>& by) {
    for (auto& i : items) {
        for (auto* grams : {&i.used, &i.left})
            if (*grams && by)
                **grams *= *by;
            else
                grams->reset();
        scale(i.parts, by);
    }
}

void sort_by(std::vector<item>& items, std::optional<exact> item::*grams) {
    std::stable_sort(items.begin(), items.end(), [&](const auto& a, const auto& b) {
        if (!(a.*grams) || !(b.*grams)) return (a.*grams).has_value();
        return *(a.*grams) > *(b.*grams);
    });
}

void each_ingredient(std::vector<item>& items, const std::function<void(item&)>& visit) {
    for (auto& i : items)
        if (i.parts.empty())
            visit(i);
        else
            each_ingredient(i.parts, visit);
}

/// Takes what evaporates from these waters in proportion, and gives what none of them had.
exact deduct(const std::vector<item*>& waters, const exact& lost) {
    exact there = 0;
    for (const auto* w : waters) there += *w->left;
    if (there == 0) return lost;
    const exact taken = std::min(there, lost);
    for (auto* w : waters) *w->left -= *w->left * taken / there;
    return lost - taken;
}

struct made {
    std::vector<item> items;
    std::optional<exact> finished; ///< grams, less what evaporates
};

class list_maker {
  public:
    explicit list_maker(const batch::batch& b) : b_(b), made_(b.components.size()) {}

    made product() { return of(b_.components.size() - 1); }

  private:
    const batch::batch& b_;
    std::vector<std::optional<made>> made_;

    /// Each component is listed once, wherever it is used.
    const made& of(std::size_t index) {
        if (!made_[index]) made_[index] = make(index);
        return *made_[index];
    }

    made make(std::size_t index) {
        const auto& c = b_.components[index];
        made result;
        std::optional<exact> mix = exact(0);
        for (const auto& l : c.lines) {
            result.items.reserve(c.lines.size());
            if (!l.of->some) add(mix, grams_of(l));
            add_to(result.items, item_of(l));
        }
        if (mix && *mix > 0) evaporate(result, *mix, *c.of);
        sort_by(result.items, &item::used);
        return result;
    }

    static std::optional<exact> grams_of(const batch::weigh_line& l) {
        return l.grams ? std::optional(l.grams->used) : std::nullopt;
    }

    item item_of(const batch::weigh_line& l) {
        item result;
        result.used = result.left = grams_of(l);
        result.is_some = l.of->some;
        if (!l.of->component) {
            result.name = label_name(*l.of);
            result.is_water = is_water(*l.of);
            result.is_choice = !l.of->others.empty();
            result.allergens = safety::allergens_of(*l.of);
            result.from_packet = !result.allergens.check_packet.empty();
            return result;
        }
        result.name = b_.of->components[*l.of->component].title;
        const auto& part = of(*l.of->component);
        const bool is_known = result.used && part.finished && *part.finished > 0;
        result.parts = part.items;
        scale(result.parts,
              is_known ? std::optional<exact>(*result.used / *part.finished) : std::nullopt);
        return result;
    }

    static void evaporate(made& m, const exact& mix, const recipe::component& c) {
        exact kept = 1;
        for (const auto& l : c.losses)
            if (is_evaporation(l)) kept *= recipe::kept_after(l).used;
        m.finished = mix * kept;
        std::vector<item*> own, others;
        for (auto& i : m.items) {
            if (i.is_water && i.left) own.push_back(&i);
            each_ingredient(i.parts, [&](item& part) {
                if (part.is_water && part.left) others.push_back(&part);
            });
        }
        deduct(others, deduct(own, mix - *m.finished));
    }
};

/// Words of a title that name no ingredient by themselves.
bool says_nothing(const std::string& word) {
    constexpr std::string_view words[] = {
        "and",  "with",   "of",     "on",    "in",    "the",   "a",    "or",    "red",   "white",
        "dark", "brown",  "black",  "green", "plain", "sweet", "hot",  "cold",  "ice",   "small",
        "big",  "strong", "ground", "whole", "dried", "fresh", "oven", "house", "baked", "milky"};
    return std::find(std::begin(words), std::end(words), word) != std::end(words);
}

/// The word that says what kind of food it is: the last of `Red lentil and celery soup`, and `cake`
/// of `Cake with custard`.
std::string kind_in(const std::vector<std::string>& words) {
    constexpr std::string_view joining[] = {"with", "on", "in", "of"};
    const auto end =
        std::find_first_of(words.begin(), words.end(), std::begin(joining), std::end(joining));
    return end == words.begin() ? "" : *std::prev(end);
}

void set_percentages(ingredient_list& list) {
    if (!list.finished || *list.finished == 0) return;
    const auto words = compared_words(list.title);
    const auto kind = kind_in(words);
    for (const auto& word : words) {
        if (says_nothing(word)) continue;
        std::vector<item*> named;
        exact grams = 0;
        const auto visit = [&](item& i) {
            if (!i.used || i.is_water || !has_word(i.name, {word})) return;
            named.push_back(&i), grams += *i.used;
        };
        each_ingredient(list.items, visit);
        // `Custard tart`: where no ingredient is meant, a component is.
        if (named.empty() && word != kind)
            std::for_each(list.items.begin(), list.items.end(), visit);
        const exact percent = grams / *list.finished * 100;
        if (named.size() == 1)
            named.front()->percent = percent;
        else if (named.size() > 1)
            list.totals.push_back({word, percent});
    }
}

} // namespace

std::size_t entries_in(const recipe::recipe& r) {
    std::vector<std::size_t> counts;
    for (const auto& c : r.components) {
        std::set<std::size_t> used;
        for (const auto& l : c.lines)
            if (l.component) used.insert(*l.component);
        auto count = c.lines.size();
        for (const auto i : used) count = std::min(count + counts[i], most_entries + 1);
        counts.push_back(count);
    }
    return counts.empty() ? 0 : counts.back();
}

ingredient_list ingredients_of(const batch::batch& b) {
    auto product = list_maker(b).product();
    ingredient_list result;
    result.title = b.of->title;
    result.items = std::move(product.items);
    result.finished = product.finished;
    result.allergens = safety::allergens_of(*b.of).back();
    set_percentages(result);
    return result;
}

exact water_percent(const ingredient_list& list) {
    if (!list.finished || *list.finished == 0) return 0;
    exact water = 0;
    auto items = list.items;
    each_ingredient(items, [&](const item& i) {
        if (i.is_water && i.left) water += *i.left;
    });
    return water / *list.finished * 100;
}

namespace {

void set_in_eu_order(std::vector<item>& items, bool drop_water) {
    std::erase_if(
        items, [&](const item& i) { return i.is_water && i.left && (drop_water || *i.left == 0); });
    for (auto& i : items) set_in_eu_order(i.parts, drop_water);
    sort_by(items, &item::left);
}

} // namespace

std::vector<item> in_eu_order(const ingredient_list& list) {
    auto items = list.items;
    set_in_eu_order(items, list.finished && water_percent(list) <= 5);
    return items;
}

} // namespace benchcard::label
