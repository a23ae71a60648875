#include "styles/pdf/book.hpp"

#include "styles/pdf/painting.hpp"

namespace benchcard::pdf {

book::book(const font_set& fonts, const document_info& info, const std::string& contents)
    : drawn_(std::make_unique<painting>(fonts, info)), contents_(drawn_->add_bookmark(contents)) {
} // points nowhere until there are contents

book::~book() = default;

void book::add(const std::string& title, const std::vector<layout::page>& sheets) {
    HPDF_Outline recipe = nullptr;
    for (const auto& sheet : sheets) {
        auto* page = drawn_->add(sheet);
        if (!page) return;
        const bool is_first = !recipe;
        if (is_first) drawn_->point(recipe = drawn_->add_bookmark(title), page);
        for (const auto& card : sheet.bookmarks)
            if (!is_first || card != title) drawn_->point(drawn_->add_bookmark(card, recipe), page);
    }
}

std::size_t book::page_count() const { return drawn_->page_count(); }

painted book::finish(const std::vector<layout::page>& contents) {
    if (drawn_->page_count() == 0) {
        painted result;
        result.messages.push_back(failure("nothing-to-print", "there is no card"));
        return result;
    }
    for (std::size_t i = 0; i < contents.size(); ++i) {
        auto* page = drawn_->put_in(i, contents[i]);
        if (i == 0) drawn_->point(contents_, page);
    }
    drawn_->add_numbers(0, HPDF_PAGE_NUM_STYLE_LOWER_ROMAN);
    drawn_->add_numbers(contents.size(), HPDF_PAGE_NUM_STYLE_DECIMAL);
    return drawn_->finish();
}

} // namespace benchcard::pdf
