#pragma once

#include "styles/layout/page.hpp"
#include "styles/pdf/faces.hpp"
#include "styles/pdf/haru.hpp"

namespace benchcard::pdf {

/// Draws a page on an empty one of a document, in faces that hold all its characters.
void draw(HPDF_Doc document, HPDF_Page on, const layout::page& p, const faces_in_use& faces,
          const font_set& fonts);

} // namespace benchcard::pdf
