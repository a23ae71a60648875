#include "compiler/checks/shorten.hpp"

#include "grammar/limits.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::checks {

namespace {

void sort_by_place(grammar::diagnostics& messages) {
    std::stable_sort(messages.begin(), messages.end(), [](const auto& a, const auto& b) {
        return std::pair(a.where.file, a.where.begin) < std::pair(b.where.file, b.where.begin);
    });
}

} // namespace

void put_in_order(grammar::diagnostics& messages) {
    sort_by_place(messages);
    constexpr auto most = grammar::limits::messages;
    if (messages.size() <= most) return;
    std::ranges::stable_sort(messages, {}, &grammar::diagnostic::level);
    const auto more = messages.size() - most;
    const grammar::diagnostic last{
        "too-many-messages",
        messages[most].level,
        messages[most].where,
        fmt::format("{} more messages are not said, the first of them about this place", more),
        {},
        {{"mend the first, and the others may follow from them", {}}}};
    messages.resize(most);
    sort_by_place(messages);
    messages.push_back(last);
}

} // namespace benchcard::checks
