#pragma once

#include "styles/pdf/haru.hpp"

#include <memory>
#include <string>

namespace benchcard::pdf {

/// Compresses what a document is made of. The library would do it at the end, in three times the
/// time, and keep all pages as they are until then.
class compressor {
  public:
    compressor();
    ~compressor();

    /// What was drawn on a page. False after an error.
    bool compress_page(HPDF_Page drawn);

    /// What is embedded of a font, once nothing more is set in it. False after an error.
    bool compress_font(HPDF_Font embedded);

  private:
    struct state;
    std::unique_ptr<state> state_;
};

} // namespace benchcard::pdf
