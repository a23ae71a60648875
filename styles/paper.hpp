#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace benchcard::styles {

/// A sheet, upright, in millimetres.
struct paper {
    std::string_view name;
    double width = 0;
    double height = 0;

    bool operator==(const paper&) const = default;
};

/// PostScript points in a millimetre: 72 to the inch of exactly 25.4 mm.
inline constexpr double points_per_mm = 72.0 / 25.4;

/// No ink nearer than this to the cut edge, in millimetres: film needs its seal, and cut
/// corners are rounded (common practice).
inline constexpr double least_margin = 6;

/// Every sheet there is: the A series by ISO 216, the others from their inches.
std::span<const paper> papers();

/// The sheet of that name, in capitals or not (`A5`, `half-letter`); nothing if there is none.
std::optional<paper> paper_named(std::string_view name);

} // namespace benchcard::styles
