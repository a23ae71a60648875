#include "styles/layout/text.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <string_view>

namespace benchcard::layout {

namespace {

bool is_blank(char32_t c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\v' || c == '\f' || c == 0x85 ||
           c == 0x2028 || c == 0x2029;
}

/// Characters that tell where a line may end and leave no ink: they are not printed.
bool is_unseen(char32_t c) {
    return c == 0xAD || (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) ||
           (c >= 0x2060 && c <= 0x2064) || c == 0xFEFF;
}

/// All characters of a text in turn, with blanks made single; and where in it each of the words
/// it is made of ends.
struct flat_text {
    std::u32string codes;
    boost::container::small_vector<std::size_t, 4> ends;

    void add(char32_t code) {
        const bool blank = is_blank(code);
        if (blank && (codes.empty() || codes.back() == ' ')) return;
        if (!blank && (code < 0x20 || (code >= 0x7F && code < 0xA0))) return;
        codes += blank ? U' ' : code;
    }
};

flat_text flattened(const std::vector<words>& text) {
    flat_text out;
    for (const auto& part : text) {
        out.codes.reserve(out.codes.size() + part.text.size());
        if (is_ascii(part.text))
            for (const char c : part.text) out.add(static_cast<unsigned char>(c));
        else
            for (const auto code : characters_of(composed(part.text))) out.add(code);
        out.ends.push_back(out.codes.size());
    }
    while (!out.codes.empty() && out.codes.back() == ' ') out.codes.pop_back();
    return out;
}

double size_of(const slot& s, type_sizes sizes) { return s.minor ? sizes.minor : sizes.main; }

advance between(const ready_text& text, std::size_t from, std::size_t to) {
    const auto &first = text.before[from], &last = text.before[to];
    return {last.main - first.main, last.minor - first.minor};
}

constexpr double thousandth = 0.001; // to multiply by: dividing takes five times as long

double points(advance of, type_sizes sizes) {
    return (static_cast<double>(of.main) * sizes.main +
            static_cast<double>(of.minor) * sizes.minor) *
           thousandth;
}

double width_of(const ready_text& text, std::size_t from, std::size_t to, type_sizes sizes) {
    return points(between(text, from, to), sizes);
}

void raise(ink_height& to, ink_height by) {
    to = {std::max(to.above, by.above), std::max(to.below, by.below)};
}

void raise(piece& of, const slot& by) {
    raise(by.minor ? of.minor : of.main, {by.above, by.below});
}

bool same_run(const slot& a, const slot& b) { return a.face == b.face && a.minor == b.minor; }

/// The first place from `at` on that does not part an accent from its letter.
std::size_t past_marks(const std::vector<slot>& slots, std::size_t at) {
    while (at < slots.size() && stands_on_last(slots[at].code)) ++at;
    return at;
}

constexpr double slack = 1e-6; // sums of doubles are not quite what their parts are

/// As many characters from `from` on as stand in a line, and at least one.
std::size_t broken_inside(const ready_text& text, std::size_t from, std::size_t to,
                          type_sizes sizes, double width) {
    const auto& slots = text.slots;
    auto end = past_marks(slots, from + 1);
    for (auto i = from; i < to; ++i) {
        if (slots[i].code != ' ' && width_of(text, from, i + 1, sizes) > width + slack) break;
        if (past_marks(slots, i + 1) == i + 1) end = std::max(end, i + 1);
    }
    return end;
}

/// The characters of one line, without the blanks at its ends.
struct stretch {
    std::size_t from = 0, to = 0;
};

/// The lines of a text, one after the other.
class line_finder {
  public:
    line_finder(const ready_text& text, type_sizes sizes, double width)
        : text_(text), sizes_(sizes), width_(width) {}

    bool at_end() const { return from_ >= text_.slots.size(); }

    stretch next() {
        const auto from = from_;
        const auto end = end_of_line();
        auto to = end;
        while (to > from && text_.slots[to - 1].code == ' ') --to;
        from_ = end;
        while (!at_end() && text_.slots[from_].code == ' ') ++from_;
        while (piece_ < text_.pieces.size() && text_.pieces[piece_].end <= from_) ++piece_;
        return {from, to};
    }

  private:
    /// Just past the last character of the line that begins at `from_`, blanks counted.
    std::size_t end_of_line() const {
        std::size_t good = from_, poor = from_;
        for (auto i = piece_; i < text_.pieces.size(); ++i) {
            const auto& p = text_.pieces[i];
            const bool fits =
                p.ink_end <= from_ || width_of(text_, from_, p.ink_end, sizes_) <= width_ + slack;
            if (!fits && good > from_) return good;
            if (!fits && poor > from_) return poor;
            if (!fits) return broken_inside(text_, from_, p.ink_end, sizes_, width_);
            (p.at_end == line_end::yes ? good : poor) = p.end;
        }
        return text_.slots.size();
    }

    const ready_text& text_;
    type_sizes sizes_;
    double width_;
    std::size_t from_ = 0, piece_ = 0;
};

/// Most texts of a card take a few lines.
using stretches = boost::container::small_vector<stretch, 8>;

stretches stretches_of(const ready_text& text, type_sizes sizes, double width) {
    stretches result;
    line_finder finder(text, sizes, width);
    while (!finder.at_end()) result.push_back(finder.next());
    return result;
}

double width_of(const ready_text& text, stretch of, type_sizes sizes) {
    return width_of(text, of.from, of.to, sizes);
}

void set_heights(type_line& line, ink_height main, ink_height minor) {
    const auto& s = line.sizes;
    line.above = std::max(main.above * s.main, minor.above * s.minor) * thousandth;
    line.below = std::max(main.below * s.main, minor.below * s.minor) * thousandth;
}

/// Measures the ink of lines, which come in the order of the text.
class ink_finder {
  public:
    explicit ink_finder(const ready_text& text) : text_(text) {}

    void measure(type_line& line) {
        piece ink;
        while (text_.pieces[piece_].end <= line.from) ++piece_;
        for (auto i = piece_; i < text_.pieces.size() && text_.pieces[i].begin < line.to; ++i)
            add(text_.pieces[i], line, ink);
        set_heights(line, ink.main, ink.minor);
    }

  private:
    void add(const piece& p, const type_line& line, piece& ink) const {
        if (line.from <= p.begin && p.ink_end <= line.to) {
            raise(ink.main, p.main);
            raise(ink.minor, p.minor);
            return;
        }
        const auto last = std::min(p.ink_end, line.to);
        for (auto i = std::max(p.begin, line.from); i < last; ++i) raise(ink, text_.slots[i]);
    }

    const ready_text& text_;
    std::size_t piece_ = 0;
};

type_lines lines_of(const ready_text& text, const stretches& of, type_sizes sizes) {
    type_lines lines;
    lines.reserve(of.size());
    ink_finder ink(text);
    for (const auto& s : of) {
        lines.push_back({.of = &text,
                         .from = s.from,
                         .to = s.to,
                         .sizes = sizes,
                         .width = width_of(text, s, sizes)});
        ink.measure(lines.back());
    }
    return lines;
}

bool takes_one_line(const ready_text& text, type_sizes sizes, double width) {
    return !text.empty() && natural_width(text, sizes) <= width + slack;
}

type_lines one_line(const ready_text& text, type_sizes sizes) {
    type_lines lines;
    auto& line = lines.emplace_back();
    line.of = &text;
    line.to = text.slots.size();
    line.sizes = sizes;
    line.width = natural_width(text, sizes);
    set_heights(line, text.main, text.minor);
    return lines;
}

/// The characters of a text cut where a line may end.
std::vector<piece> pieces_of(const std::vector<slot>& slots) {
    std::vector<piece> pieces;
    piece p;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        raise(p, slots[i]);
        p.end = i + 1;
        if (slots[i].code != ' ') p.ink_end = i + 1;
        if (slots[i].end == line_end::no && i + 1 < slots.size()) continue;
        if (slots[i].end != line_end::no) p.at_end = slots[i].end;
        pieces.push_back(p);
        p = {.begin = i + 1, .ink_end = i + 1};
    }
    return pieces;
}

} // namespace

ready_text made_ready(const std::vector<words>& text, const font_metrics& metrics,
                      const std::string& language) {
    const auto flat = flattened(text);
    const auto& codes = flat.codes;
    const auto ends = line_ends(codes, language);
    std::vector<slot> slots;
    slots.reserve(codes.size());
    std::size_t part = 0;
    for (std::size_t i = 0; i < codes.size(); ++i) {
        while (i >= flat.ends[part]) ++part;
        if (is_unseen(codes[i])) {
            if (!slots.empty()) slots.back().end = std::max(slots.back().end, ends[i]);
            continue;
        }
        const auto found = metrics.look_up(codes[i], text[part].in);
        slots.push_back({.code = codes[i],
                         .face = found.face,
                         .minor = text[part].minor,
                         .end = ends[i],
                         .advance = found.measures.advance,
                         .above = found.measures.above,
                         .below = found.measures.below});
    }
    return ready_text(std::move(slots));
}

ready_text::ready_text(std::vector<slot> of) : slots(std::move(of)), pieces(pieces_of(slots)) {
    before.reserve(slots.size() + 1);
    before.emplace_back();
    for (const auto& s : slots) {
        (s.minor ? all.minor : all.main) += s.advance;
        before.push_back(all);
    }
    for (const auto& p : pieces) {
        raise(main, p.main);
        raise(minor, p.minor);
    }
}

void add_runs(const type_line& line, double x, double y, std::vector<text_run>& to) {
    const auto& slots = line.of->slots;
    for (auto i = line.from; i < line.to;) {
        auto end = i + 1;
        while (end < line.to && same_run(slots[i], slots[end])) ++end;
        auto& run = to.emplace_back();
        run = {.x = width_of(*line.of, line.from, i, line.sizes) + x,
               .y = y,
               .size = size_of(slots[i], line.sizes),
               .face = slots[i].face,
               .ink = line.ink};
        run.text.reserve(end - i);
        for (; i < end; ++i) append(run.text, slots[i].code);
    }
}

type_lines broken(const ready_text& text, type_sizes sizes, double width) {
    if (takes_one_line(text, sizes, width)) return one_line(text, sizes);
    return lines_of(text, stretches_of(text, sizes, width), sizes);
}

type_lines evenly_broken(const ready_text& text, type_sizes sizes, double width) {
    constexpr double least_last = 0.22, least_share = 0.76, step = 0.04;
    if (takes_one_line(text, sizes, width)) return one_line(text, sizes);
    const auto widest = stretches_of(text, sizes, width);
    if (widest.size() < 2 || widest.size() > 6) return lines_of(text, widest, sizes);
    const auto is_even = [&](const stretches& lines) {
        return width_of(text, lines.back(), sizes) >= width * least_last;
    };
    auto best = widest;
    for (double share = 1 - step; !is_even(best) && share >= least_share; share -= step) {
        best = stretches_of(text, sizes, width * share);
        if (best.size() > widest.size()) return lines_of(text, widest, sizes);
    }
    return lines_of(text, is_even(best) ? best : widest, sizes);
}

double part_width(const ready_text& text, std::size_t first, std::size_t last, double size) {
    if (text.empty()) return 0;
    const auto end = text.slots.size();
    const auto sum = between(text, std::min(first, end), std::min(last, end));
    return static_cast<double>(sum.main + sum.minor) * size * thousandth;
}

double natural_width(const ready_text& text, type_sizes sizes) { return points(text.all, sizes); }

double widest_piece(const ready_text& text, type_sizes sizes) {
    double widest = 0;
    std::size_t begin = 0;
    for (const auto& p : text.pieces) {
        // The blank at the end of a line is not seen; one inside what stays together is.
        const bool ends = p.at_end == line_end::yes;
        const bool unseen = ends && text.slots[p.end - 1].code == ' ';
        widest = std::max(widest, width_of(text, begin, unseen ? p.end - 1 : p.end, sizes));
        if (ends) begin = p.end;
    }
    return widest;
}

} // namespace benchcard::layout
