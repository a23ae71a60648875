#pragma once

#include "styles/card.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace benchcard::cards {

/// Where a recipe begins in a book.
struct book_entry {
    std::string title;
    std::size_t page = 1;
};

/// The word over the contents of a book.
inline constexpr const char* contents_title = "Contents";

/// The contents of a book, as a card to be laid out in the style of a chart: a table of titles and
/// pages, and a note of the files that had to be left out. Tables that would not stand on some
/// pages are divided into several cards.
std::vector<styles::card> contents_cards(const std::string& book,
                                         const std::vector<book_entry>& entries,
                                         const std::vector<std::string>& left_out);

} // namespace benchcard::cards
