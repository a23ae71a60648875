#pragma once

#include "styles/pdf/compress.hpp"
#include "styles/pdf/draw.hpp"
#include "styles/pdf/page_labels.hpp"
#include "styles/pdf/paint.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::pdf {

grammar::diagnostic failure(std::string_view kind, std::string message);

/// A PDF that grows page by page. After a first error nothing more is drawn.
class painting {
  public:
    /// A font is embedded when something is first set in it, cut down to its `characters`; with all
    /// it has where none are given, for the PDF library leaves out what was not set.
    painting(const font_set& fonts, const document_info& info,
             std::vector<std::set<char16_t>> characters = {});

    std::size_t page_count() const { return pages_.size(); }

    /// Adds a page at the end, or puts it before the page `at`; null after an error.
    HPDF_Page add(const layout::page& p);
    HPDF_Page put_in(std::size_t at, const layout::page& p);

    /// Adds a bookmark under another, or at the top level; null after an error.
    HPDF_Outline add_bookmark(const std::string& title, HPDF_Outline under = nullptr);
    void point(HPDF_Outline bookmark, HPDF_Page to);
    /// Makes the page `at`, and those after it, be called so; page by page.
    void add_label(std::size_t at, const std::string& label);
    void add_numbers(std::size_t at, HPDF_PageNumStyle style);

    painted finish();

  private:
    const font_set& fonts_;
    std::vector<std::set<char16_t>> characters_;
    faces_in_use faces_;
    first_error error_;
    owned_document made_;
    std::vector<HPDF_Page> pages_;
    std::vector<page_label> labels_;
    compressor compressor_;
    bool is_whole_ = true; ///< nothing that was to be drawn is missing

    bool is_well() const { return made_ && error_.code == 0; }
    void need(layout::face_id face);
    bool embed_faces_of(const layout::page& p);
    bool compress_fonts();
    HPDF_Page drawn(HPDF_Page on, const layout::page& p);
};

} // namespace benchcard::pdf
