#include "compiler/checks/proportions.hpp"

#include "compiler/checks/checks.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace benchcard::checks {

namespace {

/// Whether a phrase stands in a text, and not as a part of longer words.
bool stands_in(std::string_view text, std::string_view phrase) {
    for (auto at = text.find(phrase); at != text.npos; at = text.find(phrase, at + 1)) {
        const auto end = at + phrase.size();
        if ((at == 0 || text[at - 1] == ' ') && (end == text.size() || text[end] == ' '))
            return true;
    }
    return false;
}

} // namespace

bool says_one_of(std::string_view title, std::string_view phrases) {
    const auto compared = ingredients::compared_name(title);
    for (std::size_t begin = 0; begin < phrases.size();) {
        const auto end = std::min(phrases.find('|', begin), phrases.size());
        if (stands_in(compared, phrases.substr(begin, end - begin))) return true;
        begin = end + 1;
    }
    return false;
}

bool ends_in_one_of(std::string_view title, std::string_view words) {
    const auto all = ingredients::compared_words(title);
    return !all.empty() && says_one_of(all.back(), words);
}

bool is_for_one_of(const mix& m, std::string_view phrases) {
    if (says_one_of(m.written().title, phrases) || says_one_of(m.of.title, phrases)) return true;
    return std::any_of(m.users.begin(), m.users.end(), [&](std::size_t user) {
        return says_one_of(m.of.components[user].title, phrases);
    });
}

bool is_minor_part(const mix& m) {
    bool is_used = false;
    for (const auto user : m.users)
        for (const auto& l : m.of.components[user].lines) {
            if (!l.component || *l.component != m.index) continue;
            const auto& whole = m.all[user].total;
            if (!l.grams || whole == 0 || l.grams->used / whole > exact(3, 10)) return false;
            is_used = true;
        }
    return is_used;
}

const recipe::line* main_line(const recipe::component& c, part p) {
    const recipe::line* found = nullptr;
    exact most = 0;
    for (const auto& l : c.lines)
        if (const auto grams = grams_in(l, p); grams > most) found = &l, most = grams;
    return found;
}

grammar::span place_of(const mix& m, part p) {
    if (const auto* own = main_line(m.written(), p)) return own->where;
    const recipe::line* bringing = nullptr;
    for (const auto& l : m.written().lines)
        if (l.component && main_line(m.of.components[*l.component], p) &&
            (!bringing || (l.grams && bringing->grams && l.grams->used > bringing->grams->used)))
            bringing = &l;
    return bringing ? bringing->where : m.written().written->title.where;
}

std::string as_percent(const exact& hundredths) {
    return measures::in_decimals(hundredths, hundredths < 1 ? 2 : 1) + " %";
}

std::string said_part(const mix& m, part p, std::string_view word) {
    const auto* own = main_line(m.written(), p);
    const auto share = [&](const recipe::line& l) {
        return shares_of(*l.what)[static_cast<std::size_t>(p)];
    };
    const bool is_all = own && grams_in(*own, p) == m.grams(p) && share(*own) >= 100;
    if (is_all) return fmt::format("{} of {}", in_grams(own->grams->used), own->name);
    return fmt::format("{} of {}", in_grams(m.grams(p)), word);
}

grammar::diagnostic proportion(std::string_view kind, grammar::span where, std::string message,
                               std::string practice) {
    return {kind,
            grammar::severity::hint,
            where,
            std::move(message),
            {{"common practice" + std::move(practice), {}}},
            {}};
}

namespace {

/// As many of those that use a component, and of those that use these, as anything is known by.
constexpr std::size_t most_users = 100;

/// Those that use a component, and those that use these. Each stands after what it uses.
std::vector<std::vector<std::size_t>> users_of_all(const recipe::recipe& r) {
    const auto count = r.components.size();
    std::vector<std::set<std::size_t>> direct(count);
    for (std::size_t user = 0; user < count; ++user)
        for (const auto& l : r.components[user].lines)
            if (l.component) direct[*l.component].insert(user);
    std::vector<std::vector<std::size_t>> result(count);
    for (auto used = count; used-- > 0;)
        for (const auto user : direct[used]) {
            result[used].push_back(user);
            for (const auto further : result[user])
                if (result[used].size() < most_users) result[used].push_back(further);
        }
    return result;
}

} // namespace

void check_proportions(const recipe::recipe& r, grammar::diagnostics& to) {
    const auto held = makeups_of(r);
    const auto users = users_of_all(r);
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        const mix m{r, i, held, users[i]};
        grammar::diagnostics of_dough, of_name;
        check_dough(m, of_dough);
        check_named_mix(m, of_name);
        // Egg left out of choux paste is water left out as well.
        if (!of_name.empty())
            std::erase_if(of_dough, [](const auto& d) { return d.kind.starts_with("hydration"); });
        std::move(of_dough.begin(), of_dough.end(), std::back_inserter(to));
        std::move(of_name.begin(), of_name.end(), std::back_inserter(to));
        check_flavours(m, to);
    }
}

} // namespace benchcard::checks
