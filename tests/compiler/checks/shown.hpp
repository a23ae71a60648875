#pragma once

#include "../recipe/reading.hpp"
#include "compiler/diagnostics/render.hpp"

namespace benchcard::testing {

/// Everything that is said of a recipe, as it is printed.
inline std::string shown(const std::string& text) {
    const auto c = compiled(text);
    return diagnostics::render_all(c->messages, c->files.sources, diagnostics::colour::no);
}

} // namespace benchcard::testing
