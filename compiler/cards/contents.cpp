#include "compiler/cards/contents.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

styles::card empty_card(const std::string& book) {
    styles::card card;
    card.title = contents_title;
    card.recipe = book;
    card.language = "en";
    card.table.headings = {"page"};
    return card;
}

styles::paragraph left_out_note(const std::vector<std::string>& left_out) {
    return {{"Left out, for they have errors: ", true},
            {fmt::format("{}", fmt::join(left_out, ", ")), false}};
}

} // namespace

std::vector<styles::card> contents_cards(const std::string& book,
                                         const std::vector<book_entry>& entries,
                                         const std::vector<std::string>& left_out) {
    // A table is set at many sizes before it is broken: one that fills pages gains nothing by that.
    constexpr std::size_t most_rows = 200;
    std::vector<styles::card> result;
    for (std::size_t from = 0; from < entries.size(); from += most_rows) {
        auto card = empty_card(book);
        for (auto i = from; i < std::min(entries.size(), from + most_rows); ++i)
            card.table.rows.push_back({entries[i].title, "", {std::to_string(entries[i].page)}});
        result.push_back(std::move(card));
    }
    if (!left_out.empty() && !result.empty())
        result.back().notes.push_back(left_out_note(left_out));
    return result;
}

} // namespace benchcard::cards
