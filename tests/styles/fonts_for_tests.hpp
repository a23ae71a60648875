#pragma once

#include "plain_metrics.hpp"
#include "styles/pdf/fonts.hpp"

#include <catch2/catch.hpp>

namespace benchcard {

/// The fonts of this machine, read once.
inline const pdf::font_set& real_fonts() {
    static const auto fonts = [] {
        grammar::diagnostics messages;
        auto found = pdf::load_fonts(messages);
        for (const auto& m : messages) UNSCOPED_INFO(m.message);
        REQUIRE(messages.empty());
        return found;
    }();
    return fonts;
}

} // namespace benchcard
