#pragma once

#include "grammar/diagnostic.hpp"
#include "styles/layout/impose.hpp"
#include "styles/layout/page.hpp"
#include "styles/pdf/fonts.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace benchcard::pdf {

/// What a PDF says of itself. No date unless one is given, and no number of its own: the same pages
/// give the same bytes.
struct document_info {
    std::string title;
    std::string language = "en"; ///< as in BCP 47
    std::string producer = "benchcard";
    std::optional<std::int64_t> date = {};   ///< seconds since 1970-01-01 in UTC
    std::optional<layout::flip> duplex = {}; ///< how a printer should turn the sheets
};

/// A PDF, or the messages that say why there is none.
struct painted {
    std::string bytes; ///< empty when there is an error among the messages
    grammar::diagnostics messages;
    std::vector<char32_t> missing; ///< the characters that no font has, each once, a message each

    explicit operator bool() const { return !bytes.empty(); }
};

/// Draws pages that were laid out with the metrics of `fonts`. A character that no font has is
/// a `missing-character` error that names it, never an empty box; where it stands in a recipe only
/// who has the recipe can say.
painted paint(std::vector<layout::page> pages, const font_set& fonts, const document_info& info);

/// What would keep `paint` from drawing these pages: its messages, and no PDF.
painted look_over(const std::vector<layout::page>& pages, const font_set& fonts);

} // namespace benchcard::pdf
