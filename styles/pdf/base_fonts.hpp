#pragma once

#include "styles/layout/font_metrics.hpp"

#include <string>
#include <string_view>

/// The fonts that every reader of PDF has and a file need not carry (ISO 32000-1, 9.6.2.2): what
/// cards are set in where the font of the cards is not installed.
namespace benchcard::pdf {

/// The measures of a base font such as `Helvetica`, for the characters of WinAnsiEncoding
/// (ISO 32000-1, annex D). The widths are exact. The library has the boxes of the whole font alone,
/// so the ink of each character is the box of its kind: small, tall, accented, or hanging down.
layout::face_metrics measures_of_base(const char* name);

/// A text as the bytes of WinAnsiEncoding; characters that it lacks are left out.
std::string in_win_ansi(std::string_view text);

} // namespace benchcard::pdf
