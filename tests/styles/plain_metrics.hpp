#pragma once

#include "styles/layout/font_metrics.hpp"

#include <string_view>

namespace benchcard {

/// Measures made by a rule, so that goldens do not change with a machine's fonts.
inline const layout::font_metrics& plain_metrics() {
    static const auto metrics = [] {
        const auto face = [](int wider) {
            layout::face_metrics f;
            for (char32_t c = 0x20; c < 0x2200; ++c) {
                const bool narrow =
                    c < 0x80 && std::string_view(" .,:;!'()ijl").find(static_cast<char>(c)) !=
                                    std::string_view::npos;
                const bool wide = c == 'm' || c == 'w' || (c >= 'A' && c <= 'Z') || c == '%';
                const int advance = (narrow ? 270 : wide ? 680 : 560) + (c == ' ' ? 0 : wider);
                if (c == ' ')
                    f.glyphs.push_back({.code = c, .advance = advance});
                else
                    f.glyphs.push_back({c, advance, 40, advance - 40, 200, 714});
            }
            return f;
        };
        return layout::font_metrics{{face(0), face(40)}, {{{0}, {1}}}};
    }();
    return metrics;
}

} // namespace benchcard
