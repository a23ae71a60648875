#pragma once

#include "styles/pdf/haru.hpp"
#include "styles/pdf/paint.hpp"

#include <memory>
#include <string>
#include <vector>

namespace benchcard::pdf {

class painting;

/// A PDF of many recipes, drawn one after the other, with one set of fonts for all and contents in
/// front. It keeps what was drawn and not the pages, which can be thrown away.
class book {
  public:
    /// The fonts must outlive it; `contents` is the word for what stands in front.
    book(const font_set& fonts, const document_info& info, const std::string& contents);
    ~book();
    book(const book&) = delete;
    book& operator=(const book&) = delete;

    /// Adds the sheets of one recipe, which were looked over: a bookmark of the recipe, and under
    /// it one of each card, but for one there that is called the same.
    void add(const std::string& title, const std::vector<layout::page>& sheets);

    /// The pages there are, which are numbered from 1.
    std::size_t page_count() const;

    /// The finished PDF, with contents, which may not be none, in front, numbered in Roman
    /// numerals.
    painted finish(const std::vector<layout::page>& contents);

  private:
    std::unique_ptr<painting> drawn_;
    HPDF_Outline contents_ = nullptr;
};

} // namespace benchcard::pdf
