#pragma once

#include "styles/pdf/haru.hpp"

namespace benchcard::pdf {

/// Compresses what was drawn on a page now. The library would do it at the end, and keep all pages
/// as they are until then. False after an error.
bool compress(HPDF_Doc document, HPDF_Page drawn);

} // namespace benchcard::pdf
