#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace benchcard::styles {

/// A sheet in millimetres: upright, or turned where it is wider than high.
struct paper {
    std::string_view name;
    double width = 0;
    double height = 0;

    bool operator==(const paper&) const = default;
    bool is_turned() const { return width > height; }
};

/// PostScript points in a millimetre: 72 to the inch of exactly 25.4 mm.
inline constexpr double points_per_mm = 72.0 / 25.4;

/// No ink nearer than this to the cut edge, in millimetres: film needs its seal, and cut
/// corners are rounded (common practice).
inline constexpr double least_margin = 6;

/// Every sheet there is, upright: the A series by ISO 216, the others from their inches.
std::span<const paper> papers();

/// The same sheet, the longer edge across.
paper turned(const paper& sheet);

/// The sheet of that name, in capitals or not: `A5`, `half-letter`, `a5 landscape`, `4x6 portrait`;
/// upright where neither is said. Nothing if there is none.
std::optional<paper> paper_named(std::string_view name);

} // namespace benchcard::styles
