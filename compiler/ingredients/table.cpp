#include "compiler/ingredients/table.hpp"

#include "compiler/ingredients/names.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>

namespace benchcard::ingredients {

namespace {

/// A remark in brackets behind a name is no part of it: `dark chocolate (70 %)`.
std::string_view without_remark(std::string_view name) {
    if (!name.ends_with(')')) return name;
    const auto open = name.rfind('(');
    if (open == name.npos || open == 0) return name;
    const auto last = name.find_last_not_of(' ', open - 1);
    return last == name.npos ? name : name.substr(0, last + 1);
}

std::string joined(const std::vector<std::string>& words, std::size_t from) {
    std::string result;
    for (std::size_t i = from; i < words.size(); ++i) result += (i == from ? "" : " ") + words[i];
    return result;
}

/// The first `count` words as they are written, hyphens counting as blanks.
std::string first_words(std::string_view name, std::size_t count) {
    std::size_t i = 0;
    for (std::size_t word = 0; word < count && i < name.size(); ++word) {
        while (i < name.size() && (name[i] == ' ' || name[i] == '-')) ++i;
        while (i < name.size() && name[i] != ' ' && name[i] != '-') ++i;
    }
    return std::string(name.substr(0, i));
}

void add_once(std::vector<const entry*>& list, const entry* what) {
    if (std::find(list.begin(), list.end(), what) == list.end()) list.push_back(what);
}

} // namespace

country country_of(measures::system s) {
    using measures::system;
    switch (s) {
    case system::us:
    case system::us_label:
    case system::canadian:
        return country::us;
    case system::uk:
    case system::imperial:
    case system::australian:
        return country::uk;
    default:
        return country::any;
    }
}

void table::add(entry what) {
    std::vector<std::string> names = what.also;
    names.insert(names.begin(), what.name);
    for (const auto& written : names) {
        const auto [name, where] = name_and_country(written);
        auto compared = compared_name(name);
        word_counts_.insert(words_in(compared));
        by_name_.emplace(std::move(compared), naming{slots_.size(), where});
    }
    what.compared = compared_name(what.name);
    slots_.emplace_back().what = std::make_unique<const entry>(std::move(what));
}

table::table(const built_in_index& index)
    : index_(&index), slots_(index.blocks.size()),
      word_counts_(index.word_counts.begin(), index.word_counts.end()) {}

const entry* table::entry_at(std::size_t index) const {
    auto& s = slots_[index];
    if (index_)
        std::call_once(s.is_read, [&] {
            auto what = read_built_in(index_->blocks[index]);
            what.compared = compared_name(what.name);
            s.what = std::make_unique<const entry>(std::move(what));
        });
    return s.what.get();
}

std::vector<table::naming> table::namings_of(const std::string& compared) const {
    std::vector<naming> result;
    if (index_) {
        for (const auto& n : index_->called(compared)) result.push_back({n.block, n.where});
        return result;
    }
    const auto [begin, end] = by_name_.equal_range(compared);
    for (auto i = begin; i != end; ++i) result.push_back(i->second);
    std::ranges::sort(result, {}, &naming::index);
    return result;
}

std::vector<table::naming> table::named(const std::string& compared, const table** holder) const {
    for (const table* t = this; t; t = t->below_) {
        auto result = t->namings_of(compared);
        if (result.empty()) continue;
        *holder = t;
        return result;
    }
    return {};
}

bool table::has_name_of(std::size_t words) const {
    for (const table* t = this; t; t = t->below_)
        if (t->word_counts_.contains(words)) return true;
    return false;
}

lookup table::find(std::string_view name, country from) const {
    const auto bare = without_remark(name);
    const auto words = compared_words(bare);
    for (std::size_t first = 0; first < words.size(); ++first) {
        if (!has_name_of(words.size() - first)) continue;
        const table* holder = nullptr;
        const auto namings = named(joined(words, first), &holder);
        if (namings.empty()) continue;
        lookup result;
        result.description = first_words(bare, first);
        const auto fits = [&](const naming& n) {
            return n.where == country::any || n.where == from;
        };
        const auto own = std::count_if(namings.begin(), namings.end(), [&](const naming& n) {
            return n.where == from && from != country::any;
        });
        const bool open = own > 1; // two things in one country: `cream` is single or double
        // The last definition of a name counts, as a later line does.
        for (const auto& n : namings)
            if (fits(n) && !open) result.match = holder->entry_at(n.index);
        if (!result.match)
            for (const auto& n : namings)
                if (!open || fits(n)) add_once(result.readings, holder->entry_at(n.index));
        return result;
    }
    return {};
}

void table::collect_names(std::vector<std::string>& names) const {
    for (const auto* e : entries()) {
        names.push_back(e->name);
        for (const auto& other : e->also) names.emplace_back(name_and_country(other).first);
    }
    if (below_) below_->collect_names(names);
}

std::vector<std::string> table::near(std::string_view name, std::size_t most) const {
    std::vector<std::string> names;
    collect_names(names);
    auto found = grammar::nearest(name, names, most);
    // A name that holds one of the words may be meant too: `rye` for `rye flour`.
    const auto wanted = compared_words(name);
    for (const auto& candidate : names) {
        constexpr std::size_t too_short_to_tell = 3;
        if (found.size() >= most || wanted.empty() || wanted.back().size() < too_short_to_tell)
            break;
        const auto words = compared_words(candidate);
        const bool holds = std::find(words.begin(), words.end(), wanted.back()) != words.end();
        if (holds && std::find(found.begin(), found.end(), candidate) == found.end())
            found.push_back(candidate);
    }
    return found;
}

std::vector<const entry*> table::entries() const {
    std::vector<const entry*> result;
    for (std::size_t i = 0; i < slots_.size(); ++i) result.push_back(entry_at(i));
    return result;
}

} // namespace benchcard::ingredients
