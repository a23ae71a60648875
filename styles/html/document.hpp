#pragma once

#include "styles/card.hpp"
#include "styles/paper.hpp"
#include "styles/style.hpp"

#include <string>
#include <vector>

/// Cards as one page for a screen at the bench, which prints to the same sheets as the PDF.
namespace benchcard::html {

/// The whole document: nothing else need be loaded, and no script runs. The parts of a card stand
/// in the style's order; columns that no row needs are left out, as on paper.
std::string document_of(const std::vector<styles::card>& cards, const std::string& title,
                        const styles::style& look, const styles::paper& sheet);

} // namespace benchcard::html
