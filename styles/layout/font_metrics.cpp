#include "styles/layout/font_metrics.hpp"

#include <algorithm>

namespace benchcard::layout {

const glyph* face_metrics::find_beyond(char32_t code) const {
    const auto at = std::ranges::lower_bound(glyphs, code, {}, &glyph::code);
    return at != glyphs.end() && at->code == code ? &*at : nullptr;
}

found_glyph font_metrics::look_up(char32_t code, weight w) const {
    const auto& chain = chains[static_cast<std::size_t>(w)];
    for (const auto face : chain)
        if (const auto* g = faces[face].find(code)) return {face, *g, true};
    return {chain.front(), {.code = code, .advance = 600, .right = 600, .above = 714}, false};
}

} // namespace benchcard::layout
