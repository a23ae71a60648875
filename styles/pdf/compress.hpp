#pragma once

#include "styles/pdf/haru.hpp"

#include <memory>
#include <string>

namespace benchcard::pdf {

/// Compresses the pages of a document.
class compressor {
  public:
    compressor();
    ~compressor();

    /// Compresses what was drawn on a page now. The library would do it at the end, and keep all
    /// pages as they are until then. False after an error.
    bool compress(HPDF_Doc document, HPDF_Page drawn);

  private:
    struct state;
    std::unique_ptr<state> state_;
};

} // namespace benchcard::pdf
