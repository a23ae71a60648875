#pragma once

#include "styles/layout/line_ends.hpp"
#include "styles/layout/page.hpp"

#include <boost/container/small_vector.hpp>
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

/// One character, found and measured, with all that line breaking asks of it.
struct slot {
    char32_t code = 0;
    face_id face = 0;
    bool minor = false;
    line_end end = line_end::no;
    int advance = 0;          ///< in thousandths of the type size
    int above = 0, below = 0; ///< its ink, as in `ink_height`
};

/// How far some characters move on, in thousandths of their two type sizes: whole numbers, that
/// are summed and multiplied once.
struct advance {
    std::int64_t main = 0, minor = 0;
};

/// How far ink stands over the baseline and hangs under it, in thousandths of the type size.
struct ink_height {
    int above = 0, below = 0;
};

/// Characters between which no line should end, and the blanks behind them.
struct piece {
    std::size_t begin = 0;
    std::size_t ink_end = 0; ///< past the last that is no blank
    std::size_t end = 0;
    line_end at_end = line_end::yes;
    ink_height main = {}, minor = {};
};

/// A text made ready once, to be broken into lines at many sizes.
struct ready_text {
    std::vector<slot> slots;
    std::vector<advance> before; ///< the advance up to each slot, and that of all
    std::vector<piece> pieces;
    advance all = {};                 ///< of all characters
    ink_height main = {}, minor = {}; ///< the same

    ready_text() = default;
    explicit ready_text(std::vector<slot> of);

    bool empty() const { return slots.empty(); }
};

/// The two sizes of a text, in points.
struct type_sizes {
    double main = 0;
    double minor = 0;
};

inline type_sizes one_size(double size) { return {size, size}; }

/// One line of type: the characters `from` to before `to` of a text, which must outlive it.
struct type_line {
    const ready_text* of = nullptr;
    std::size_t from = 0, to = 0;
    type_sizes sizes = {};
    double width = 0;
    double above = 0; ///< how far its ink stands over the baseline
    double below = 0; ///< how far it hangs under it
    styles::colour ink = styles::black;
};

/// Most texts of a card are one line or two.
using type_lines = boost::container::small_vector<type_line, 2>;

/// Adds the runs of a line, from `x` on the baseline `y`.
void add_runs(const type_line& line, double x, double y, std::vector<text_run>& to);

/// Looks up every character; blanks in a row become one, and those at the ends are left out.
/// Lines may end by the rules of Unicode (UAX 14), save between a number and its unit.
ready_text made_ready(const std::vector<words>& text, const font_metrics& metrics,
                      const std::string& language);

/// Sets a text in lines no wider than `width` points, as many words in each as will go. A word
/// that is wider than a line is broken inside.
type_lines broken(const ready_text& text, type_sizes sizes, double width);
type_lines broken(ready_text&& gone, type_sizes sizes, double width) = delete;

/// The same, and where that leaves a last line of hardly a word, in lines a little shorter: as
/// many, but more even.
type_lines evenly_broken(const ready_text& text, type_sizes sizes, double width);
type_lines evenly_broken(ready_text&& gone, type_sizes sizes, double width) = delete;

/// The width in points of some characters of a text, from `first` to before `last`.
double part_width(const ready_text& text, std::size_t first, std::size_t last, double size);

/// How wide a text is on one line, in points.
double natural_width(const ready_text& text, type_sizes sizes);

/// The width of the widest piece that should not be broken, in points.
double widest_piece(const ready_text& text, type_sizes sizes);

} // namespace benchcard::layout
