#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace benchcard::layout {

enum class weight : std::uint8_t { regular, bold };

/// Which font a run is set in: a place in `font_metrics::faces`, and in the font set it is of.
using face_id = std::uint8_t;

/// One character in one font, in whole thousandths of the type size, as a PDF counts them:
/// how far it moves on, and the box of its ink from the baseline.
struct glyph {
    char32_t code = 0;
    int advance = 0;
    int left = 0;
    int right = 0;
    int below = 0; ///< how far the ink goes under the baseline; negative when it stands above
    int above = 0;
};

/// The glyphs of one font, in the order of their code points.
struct face_metrics {
    std::vector<glyph> glyphs;

    /// The glyph of a character, or null when the font lacks it.
    const glyph* find(char32_t code) const {
        // The first glyphs of a font are those of ASCII, with none left out.
        const auto guess = glyphs.empty() ? 0 : code - glyphs.front().code;
        if (guess < glyphs.size() && glyphs[guess].code == code) return &glyphs[guess];
        return find_beyond(code);
    }

    bool has_all_ascii() const {
        constexpr std::size_t count = '~' - ' ' + 1;
        return glyphs.size() >= count && glyphs.front().code == ' ' &&
               glyphs[count - 1].code == '~';
    }

  private:
    const glyph* find_beyond(char32_t code) const;
};

/// A character found: in which font, and its measures; `known` is false when no font has it.
struct found_glyph {
    face_id face = 0;
    glyph measures;
    bool known = false;
};

/// All that the layout knows of fonts: a plain table of measures.
struct font_metrics {
    std::vector<face_metrics> faces;
    /// The fonts to try for each weight, in turn; never empty.
    std::array<std::vector<face_id>, 2> chains;

    /// Looks a character up along the chain of its weight. One that no font has gets the first
    /// font and a made-up width, so that the painter can name it.
    found_glyph look_up(char32_t code, weight w) const;
};

} // namespace benchcard::layout
