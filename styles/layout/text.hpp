#pragma once

#include "styles/layout/page.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace benchcard::layout {

/// Words in one weight; `minor` ones are set in the second of two sizes.
struct words {
    std::string text;
    weight in = weight::regular;
    bool minor = false;
};

/// Where a line may end after a character.
enum class line_end : std::uint8_t {
    no,
    hardly, ///< between a number and its unit: only when nothing else fits
    yes,
};

/// One character, found and measured, with all that line breaking asks of it.
struct slot {
    char32_t code = 0;
    found_glyph found;
    bool minor = false;
    line_end end = line_end::no;
};

/// A text made ready once and broken into lines at many sizes.
struct ready_text {
    std::vector<slot> slots;

    bool empty() const { return slots.empty(); }
};

/// The two sizes of a text, in points.
struct type_sizes {
    double main = 0;
    double minor = 0;
};

/// One line of type, from x = 0 on the baseline y = 0.
struct type_line {
    std::vector<text_run> runs;
    double width = 0;
    double above = 0; ///< how far its ink stands over the baseline
    double below = 0; ///< how far it hangs under it
};

/// Whether the character at `at` is a blank between a number and its unit, where no line ends.
bool parts_a_measure(std::u32string_view text, std::size_t at);

/// Looks up every character; blanks in a row become one, and those at the ends are left out.
/// Lines may end by the rules of Unicode (UAX 14), save between a number and its unit.
ready_text made_ready(const std::vector<words>& text, const font_metrics& metrics,
                      const std::string& language);

/// Sets a text in lines no wider than `width` points, as many words in each as will go. A word
/// that is wider than a line is broken inside.
std::vector<type_line> broken(const ready_text& text, type_sizes sizes, double width);

/// The same, and where that leaves a last line of hardly a word, in lines a little shorter: as
/// many, but more even.
std::vector<type_line> evenly_broken(const ready_text& text, type_sizes sizes, double width);

/// The width in points of some characters of a text, from `first` to before `last`.
double part_width(const ready_text& text, std::size_t first, std::size_t last, double size);

/// How wide a text is on one line, in points.
double natural_width(const ready_text& text, type_sizes sizes);

/// The width of the widest piece that should not be broken, in points.
double widest_piece(const ready_text& text, type_sizes sizes);

} // namespace benchcard::layout
