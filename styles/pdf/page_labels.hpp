#pragma once

#include "styles/pdf/haru.hpp"

#include <string>
#include <vector>

namespace benchcard::pdf {

/// What a page, and those after it, is called: `2a`.
struct page_label {
    std::size_t at = 0; ///< the page, from 0
    std::string text;
};

/// Writes the labels of a document, in the order of its pages, as a number tree (ISO 32000-1, 7.9.7
/// and 12.4.2). What goes wrong is reported by the document.
void put_labels(HPDF_Doc document, const std::vector<page_label>& labels);

} // namespace benchcard::pdf
