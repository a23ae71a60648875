#include "compiler/label/dates.hpp"

#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::label {

namespace {

/// So many digits and nothing else; -1 for anything else.
int digits(std::string_view text) {
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return -1;
        value = value * 10 + (c - '0');
    }
    return text.empty() ? -1 : value;
}

} // namespace

bool is_chilled(const grammar::keeping& k) {
    const auto words = ingredients::compared_words(k.place.text);
    return std::any_of(words.begin(), words.end(), [](const auto& w) {
        return w.starts_with("chill") || w.starts_with("refrigerat") || w == "fridge";
    });
}

std::optional<date> date_in(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const int year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
              day = digits(text.substr(8, 2));
    if (year < 0 || month < 0 || day < 0) return std::nullopt;
    const std::chrono::year_month_day read{std::chrono::year{year},
                                           std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    return read.ok() ? std::optional(date(read)) : std::nullopt;
}

std::string said(date day) {
    const std::chrono::year_month_day d(day);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(d.year()),
                       static_cast<unsigned>(d.month()), static_cast<unsigned>(d.day()));
}

std::optional<frozen> frozen_in(std::string_view text) {
    const auto slash = text.find('/');
    if (slash == text.npos) return std::nullopt;
    const auto from = date_in(text.substr(0, slash)), to = date_in(text.substr(slash + 1));
    if (!from || !to || *to < *from) return std::nullopt;
    return frozen{*from, *to};
}

date last_day(date made, int days, std::vector<frozen> in_freezer) {
    auto last = made + std::chrono::days(days - 1);
    std::sort(in_freezer.begin(), in_freezer.end(),
              [](const auto& a, const auto& b) { return a.from < b.from; });
    auto counted_to = made;
    for (const auto& f : in_freezer) {
        if (f.from < made || f.from > last) continue;
        last += std::max(f.to - std::max(f.from, counted_to), std::chrono::days(0));
        counted_to = std::max(counted_to, f.to);
    }
    return last;
}

std::optional<int> days_by_rule(safety::law whose) {
    return whose == safety::law::eu ? std::nullopt : std::optional(7);
}

std::optional<int> days_chilled(const recipe::component& c) {
    for (const auto& k : c.keeps) {
        if (!is_chilled(k) || k.low_hours <= 0) continue;
        const exact days = measures::whole_part(k.low_hours / 24);
        return std::max(1, static_cast<int>(approximately(std::min(days, exact(36500)))));
    }
    return std::nullopt;
}

use_by use_by_of(const recipe::recipe& r, const std::vector<date>& made,
                 const std::vector<frozen>& in_freezer) {
    const auto own = days_chilled(r.product());
    const auto rule = days_by_rule(safety::law_named(r.labels));
    if (!own)
        return {std::nullopt,
                fmt::format("{} does not say how long it keeps chilled: set its date by what is "
                            "known of it; the rule of 7 days is for what needs the cold",
                            r.product().title)};
    const int days = rule ? std::min(*own, *rule) : *own;
    auto day = date::max();
    for (const auto& m : made) day = std::min(day, last_day(m, days, in_freezer));
    const bool is_by_rule = rule && *rule < *own;
    auto reason = fmt::format("day {} of {}, the day it was made being the first, by ", days, days);
    reason += is_by_rule ? "the FDA Food Code, 3-501.17: at 5 °C (41 °F) or below at most 7 days"
                         : "its `keeps:`";
    if (rule && !is_by_rule) reason += ", within the 7 days of the FDA Food Code, 3-501.17";
    if (!in_freezer.empty()) reason += "; days in the freezer do not count";
    return {day, reason};
}

} // namespace benchcard::label
