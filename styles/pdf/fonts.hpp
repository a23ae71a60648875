#pragma once

#include "grammar/diagnostic.hpp"
#include "styles/layout/font_metrics.hpp"
#include "styles/pdf/signs.hpp"

#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace benchcard::pdf {

/// A TrueType font, as its file has it.
struct font_program {
    std::string bytes;
};

/// A font that every reader has and no file carries: one of those in base_fonts.hpp.
struct base_font {
    std::string name;
};

/// Where the shapes of a face come from.
using face_source = std::variant<font_program, base_font, lettering>;

/// The fonts that cards are set in: what the layout measures by, and what the PDF draws.
struct font_set {
    std::vector<face_source> faces; ///< in the order of `metrics.faces`
    layout::font_metrics metrics;
    bool is_complete = true; ///< whether there are no further fonts to look in for a character
};

/// How many of the fonts: those of the text are enough for nearly all cards, and take half the
/// time.
enum class reach { text, all };

/// Finds Noto Sans, its symbols and DejaVu Sans and reads their files. This reads the disk and
/// takes milliseconds: once a process, and not in a stage. Where a weight of Noto Sans is not
/// installed, cards are set in Helvetica and a `missing-font` message says so; one that cannot be
/// read is an `unreadable-font` error. Signs that no font has, such as fractions and boxes, are
/// drawn; not in the fonts of the text alone, which lack what others have.
font_set load_fonts(grammar::diagnostics& messages, reach wanted = reach::all);

/// What cards are set in where no font at all is installed: Helvetica, and signs that are drawn.
font_set fonts_of_readers();

/// The font with no more than those characters: what one document carries. Empty on failure.
std::string cut_to(const font_program& program, const std::set<char16_t>& characters);

/// What the layout must know of a font's characters; nothing when it is no TrueType font.
std::optional<layout::face_metrics> measures_of(const font_program& program);

} // namespace benchcard::pdf
