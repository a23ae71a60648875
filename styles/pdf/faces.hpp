#pragma once

#include "styles/layout/page.hpp"
#include "styles/pdf/fonts.hpp"
#include "styles/pdf/haru.hpp"

#include <cstddef>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace benchcard::pdf {

/// The characters of some pages.
struct characters_used {
    std::vector<std::set<char16_t>> by_face; ///< in the order of `font_set::faces`
    /// Those that their font lacks, each once, with a text it stands in.
    std::vector<std::pair<char32_t, std::string>> missing;
};

characters_used characters_of(const std::vector<layout::page>& pages, const font_set& fonts);

/// Whether the fonts have every character of some pages.
bool have_all(const std::vector<layout::page>& pages, const font_set& fonts);

/// A face as one document has it; no font where the face is drawn or not used.
struct face_in_use {
    HPDF_Font font = nullptr;
    std::function<std::string(std::string_view)> encoded = {}; ///< a text as its bytes
};

using faces_in_use = std::vector<face_in_use>;

/// Puts a face into a document, cut down to some characters. The font is null after an error, which
/// the document has reported.
face_in_use put_in(HPDF_Doc document, std::size_t face, const std::set<char16_t>& characters,
                   const font_set& fonts);

} // namespace benchcard::pdf
