#pragma once

#include "grammar/diagnostic.hpp"
#include "styles/layout/font_metrics.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace benchcard::pdf {

/// A TrueType font cut down to the characters a card can have, ready to be embedded.
struct font_program {
    std::string bytes;
};

/// The fonts that cards are set in: what the layout measures by, and what the PDF embeds.
struct font_set {
    std::vector<font_program> programs; ///< in the order of `metrics.faces`
    layout::font_metrics metrics;
};

/// Finds Noto Sans, its symbols and DejaVu Sans through fontconfig and reads their files. This
/// reads the disk and takes tens of milliseconds: once a process, and not in a stage. Gives
/// nothing and a `missing-font` message when a weight of the text font is not installed.
std::optional<font_set> load_fonts(grammar::diagnostics& messages);

/// The font with no more than those characters: what one document carries. Empty on failure.
std::string cut_to(const font_program& program, const std::set<char16_t>& characters);

/// Cuts a font file down and measures it; nothing when it is no TrueType font.
std::optional<std::pair<font_program, layout::face_metrics>> cut_down(const std::string& file);

} // namespace benchcard::pdf
