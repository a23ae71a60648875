#include "styles/layout/text.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <linebreak.h>
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

bool is_figure(char32_t c) {
    return (c >= '0' && c <= '9') || (c >= 0xBC && c <= 0xBE) || (c >= 0x2150 && c <= 0x215E);
}

bool is_end_of_word(char32_t c) {
    return c == ',' || c == '.' || c == ';' || c == ':' || c == ')' || c == '!' || c == '?';
}

/// The word that ends before `end`, and the one that begins at `begin`.
std::u32string_view word_before(std::u32string_view text, std::size_t end) {
    auto begin = end;
    while (begin > 0 && text[begin - 1] != ' ') --begin;
    return text.substr(begin, end - begin);
}
std::u32string_view word_from(std::u32string_view text, std::size_t begin) {
    auto end = begin;
    while (end < text.size() && text[end] != ' ') ++end;
    while (end > begin && is_end_of_word(text[end - 1])) --end;
    return text.substr(begin, end - begin);
}

/// Whether the blank at `at` belongs to a measure: `400 g`, `160 °C`, `2 × 400`, `fl oz`.
/// Any short word after a number counts, so that the layout need not know what units there are.
bool inside_measure(std::u32string_view text, std::size_t at) {
    constexpr std::size_t longest_unit = 4;
    const auto before = word_before(text, at);
    const auto after = word_from(text, at + 1);
    if (before.empty() || after.empty()) return false;
    if (before == U"fl" && after == U"oz") return true;
    if (before == U"×" && is_figure(after.front())) return true;
    return is_figure(before.back()) && after.size() <= longest_unit;
}

struct marked {
    char32_t code;
    weight in;
    bool minor;
};

/// All characters in turn, with blanks made single.
std::vector<marked> flattened(const std::vector<words>& text) {
    std::vector<marked> out;
    for (const auto& part : text)
        for (const auto code : characters_of(composed(part.text))) {
            const bool blank = is_blank(code);
            if (blank && (out.empty() || out.back().code == ' ')) continue;
            if (!blank && (code < 0x20 || (code >= 0x7F && code < 0xA0))) continue;
            out.push_back({blank ? U' ' : code, part.in, part.minor});
        }
    while (!out.empty() && out.back().code == ' ') out.pop_back();
    return out;
}

std::vector<char> unicode_breaks(std::u32string_view text, const std::string& language) {
    static const bool ready = (init_linebreak(), true);
    (void)ready;
    const std::vector<utf32_t> codes(text.begin(), text.end());
    std::vector<char> breaks(text.size(), LINEBREAK_NOBREAK);
    if (!text.empty())
        set_linebreaks_utf32(codes.data(), codes.size(), language.c_str(), breaks.data());
    return breaks;
}

/// Whether the dash at `at` stands in a range of numbers: `35–40`.
bool inside_range(std::u32string_view text, std::size_t at) {
    const bool dash = text[at] == U'–' || text[at] == '-';
    return dash && at > 0 && at + 1 < text.size() && is_figure(text[at - 1]) &&
           is_figure(text[at + 1]);
}

line_end end_after(std::u32string_view text, std::size_t at, char unicode) {
    if (unicode != LINEBREAK_ALLOWBREAK) return line_end::no;
    const bool bound = inside_range(text, at) || (text[at] == ' ' && inside_measure(text, at));
    return bound ? line_end::hardly : line_end::yes;
}

double size_of(const slot& s, type_sizes sizes) { return s.minor ? sizes.minor : sizes.main; }

/// The widths of a stretch of text, summed as whole numbers and multiplied once.
struct width_sum {
    std::int64_t main = 0, minor = 0;

    void add(const slot& s) { (s.minor ? minor : main) += s.found.measures.advance; }
    double points(type_sizes sizes) const {
        return (static_cast<double>(main) * sizes.main + static_cast<double>(minor) * sizes.minor) /
               1000;
    }
};

bool same_run(const slot& a, const slot& b) {
    return a.found.face == b.found.face && a.minor == b.minor;
}

type_line line_of(const std::vector<slot>& slots, std::size_t from, std::size_t to,
                  type_sizes sizes) {
    type_line made;
    width_sum sum;
    for (auto i = from; i < to; ++i) {
        const auto& s = slots[i];
        const auto size = size_of(s, sizes);
        if (i == from || !same_run(slots[i - 1], s))
            made.runs.push_back({.x = sum.points(sizes), .size = size, .face = s.found.face});
        append(made.runs.back().text, s.code);
        sum.add(s);
        made.above = std::max(made.above, s.found.measures.above * size / 1000);
        made.below = std::max(made.below, s.found.measures.below * size / 1000);
    }
    made.width = sum.points(sizes);
    return made;
}

/// The first place from `at` on that does not part an accent from its letter.
std::size_t past_marks(const std::vector<slot>& slots, std::size_t at) {
    while (at < slots.size() && stands_on_last(slots[at].code)) ++at;
    return at;
}

/// The end of the line that begins at `from`: just past its last character, blanks counted.
std::size_t end_of_line(const std::vector<slot>& slots, std::size_t from, type_sizes sizes,
                        double width) {
    constexpr double slack = 1e-6; // sums of doubles are not quite what their parts are
    const auto least = past_marks(slots, from + 1);
    std::size_t good = from, poor = from, any = from;
    width_sum sum;
    for (auto i = from; i < slots.size(); ++i) {
        const auto& s = slots[i];
        sum.add(s);
        const bool fits = s.code == ' ' || sum.points(sizes) <= width + slack;
        if (!fits) return good > from ? good : poor > from ? poor : std::max(any, least);
        if (s.end == line_end::yes) good = i + 1;
        if (s.end == line_end::hardly) poor = i + 1;
        if (past_marks(slots, i + 1) == i + 1) any = i + 1;
    }
    return slots.size();
}

/// The characters of one line, without the blanks at its ends.
struct stretch {
    std::size_t from = 0, to = 0;
};

std::vector<stretch> stretches_of(const std::vector<slot>& slots, type_sizes sizes, double width) {
    std::vector<stretch> result;
    std::size_t from = 0;
    while (from < slots.size()) {
        const auto next = end_of_line(slots, from, sizes, width);
        auto to = next;
        while (to > from && slots[to - 1].code == ' ') --to;
        result.push_back({from, to});
        from = next;
        while (from < slots.size() && slots[from].code == ' ') ++from;
    }
    return result;
}

double width_of(const std::vector<slot>& slots, stretch of, type_sizes sizes) {
    width_sum sum;
    for (auto i = of.from; i < of.to; ++i) sum.add(slots[i]);
    return sum.points(sizes);
}

std::vector<type_line> lines_of(const std::vector<slot>& slots,
                                const std::vector<stretch>& stretches, type_sizes sizes) {
    std::vector<type_line> lines;
    lines.reserve(stretches.size());
    for (const auto& s : stretches) lines.push_back(line_of(slots, s.from, s.to, sizes));
    return lines;
}

} // namespace

bool parts_a_measure(std::u32string_view text, std::size_t at) {
    return text[at] == ' ' && inside_measure(text, at);
}

ready_text made_ready(const std::vector<words>& text, const font_metrics& metrics,
                      const std::string& language) {
    const auto marks = flattened(text);
    std::u32string codes;
    for (const auto& m : marks) codes += m.code;
    const auto breaks = unicode_breaks(codes, language);
    ready_text ready;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto end = end_after(codes, i, breaks[i]);
        if (is_unseen(marks[i].code)) {
            if (!ready.slots.empty())
                ready.slots.back().end = std::max(ready.slots.back().end, end);
            continue;
        }
        ready.slots.push_back({.code = marks[i].code,
                               .found = metrics.look_up(marks[i].code, marks[i].in),
                               .minor = marks[i].minor,
                               .end = end});
    }
    return ready;
}

std::vector<type_line> broken(const ready_text& text, type_sizes sizes, double width) {
    return lines_of(text.slots, stretches_of(text.slots, sizes, width), sizes);
}

std::vector<type_line> evenly_broken(const ready_text& text, type_sizes sizes, double width) {
    constexpr double least_last = 0.22, least_share = 0.76, step = 0.04;
    const auto& slots = text.slots;
    auto best = stretches_of(slots, sizes, width);
    if (best.size() < 2 || best.size() > 6) return lines_of(slots, best, sizes);
    for (double share = 1; share >= least_share; share -= step) {
        auto narrower = stretches_of(slots, sizes, width * share);
        if (narrower.size() > best.size()) break;
        if (width_of(slots, narrower.back(), sizes) < width * least_last) continue;
        best = std::move(narrower);
        break;
    }
    return lines_of(slots, best, sizes);
}

double part_width(const ready_text& text, std::size_t first, std::size_t last, double size) {
    std::int64_t sum = 0;
    for (auto i = first; i < std::min(last, text.slots.size()); ++i)
        sum += text.slots[i].found.measures.advance;
    return static_cast<double>(sum) * size / 1000;
}

double natural_width(const ready_text& text, type_sizes sizes) {
    width_sum sum;
    for (const auto& s : text.slots) sum.add(s);
    return sum.points(sizes);
}

double widest_piece(const ready_text& text, type_sizes sizes) {
    double widest = 0;
    width_sum sum;
    for (const auto& s : text.slots) {
        if (s.code != ' ' || s.end != line_end::yes) sum.add(s);
        widest = std::max(widest, sum.points(sizes));
        if (s.end == line_end::yes) sum = {};
    }
    return widest;
}

} // namespace benchcard::layout
