#include "compiler/diagnostics/render.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utf8proc.h>

namespace benchcard::diagnostics {

using grammar::severity;

namespace {

std::string_view colour_of(severity level) {
    switch (level) {
    case severity::error:
        return "\x1b[1;31m";
    case severity::warning:
        return "\x1b[1;35m";
    case severity::hint:
        return "\x1b[1;36m";
    }
    return "";
}

std::string painted(std::string_view text, std::string_view escape, colour use) {
    return use == colour::yes ? fmt::format("{}{}\x1b[0m", escape, text) : std::string(text);
}

/// One character of a line as it is shown, and how many columns of a terminal it takes.
struct cell {
    std::string_view text;
    std::size_t width;
    std::size_t begin; ///< the byte of the line at which it stands
};

constexpr std::string_view replacement = "\xEF\xBF\xBD"; // for what cannot be shown

cell cell_at(std::string_view line, std::size_t begin, std::size_t& next) {
    utf8proc_int32_t code = 0;
    const auto length =
        utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(line.data() + begin),
                         static_cast<utf8proc_ssize_t>(line.size() - begin), &code);
    next = begin + static_cast<std::size_t>(std::max<utf8proc_ssize_t>(length, 1));
    if (code == '\t') return {"    ", 4, begin};
    if (length <= 0 || code < 0x20 || code == 0x7F) return {replacement, 1, begin};
    return {line.substr(begin, next - begin),
            static_cast<std::size_t>(std::max(utf8proc_charwidth(code), 0)), begin};
}

std::vector<cell> cells_of(std::string_view line) {
    std::vector<cell> cells;
    for (std::size_t i = 0; i < line.size();) cells.push_back(cell_at(line, i, i));
    return cells;
}

/// A line cut to what is worth showing around a range, with the carets under it.
struct excerpt {
    std::string line;
    std::string carets;
};

constexpr std::size_t widest_excerpt = 100; ///< columns
constexpr std::size_t before_range = 40; ///< of these, kept before the range where the line is cut

std::size_t width_of(const std::vector<cell>& cells, std::size_t first, std::size_t last) {
    std::size_t width = 0;
    for (; first < last; ++first) width += cells[first].width;
    return width;
}

/// The cells to show, from the first to before the last: all of them, or as many as there is
/// room for from a little before the range on.
std::pair<std::size_t, std::size_t> window_around(const std::vector<cell>& cells,
                                                  std::size_t range) {
    if (width_of(cells, 0, cells.size()) <= widest_excerpt) return {0, cells.size()};
    auto first = range;
    for (std::size_t width = 0; first > 0 && width < before_range; width += cells[first].width)
        --first;
    auto last = first;
    for (std::size_t width = 0; last < cells.size(); ++last) {
        width += cells[last].width;
        if (width > widest_excerpt) break;
    }
    return {first, last};
}

/// `from` and `to` are bytes of the line; a place without an extent is given one caret.
excerpt excerpt_of(std::string_view line, std::size_t from, std::size_t to) {
    const auto cells = cells_of(line);
    const auto cell_of = [&](std::size_t byte) {
        const auto found = std::find_if(cells.begin(), cells.end(),
                                        [&](const cell& c) { return c.begin >= byte; });
        return static_cast<std::size_t>(found - cells.begin());
    };
    const auto range_begin = cell_of(from);
    const auto range_end = std::max(cell_of(to), range_begin);
    const auto [first, last] = window_around(cells, range_begin);

    excerpt result;
    if (first > 0) result.line += "…";
    for (auto i = first; i < last; ++i) result.line += cells[i].text;
    if (last < cells.size()) result.line += "…";
    const auto before = width_of(cells, first, range_begin) + (first > 0 ? 1 : 0);
    const auto marked = width_of(cells, range_begin, std::min(range_end, last));
    result.carets = std::string(before, ' ') + std::string(std::max<std::size_t>(marked, 1), '^');
    return result;
}

std::string place_of(grammar::span where, const source& text) {
    const auto at = text.at(where.begin);
    return fmt::format("{}:{}:{}", text.name(), at.line, at.column);
}

std::string quoted_line(grammar::span where, const source& text, std::string_view escape,
                        colour use) {
    const auto at = text.at(where.begin);
    const auto line = text.line(at.line);
    const auto start = text.line_start(at.line);
    const auto from = where.begin - start;
    const auto to = std::min<std::size_t>(std::max(where.end, where.begin) - start, line.size());
    const auto shown = excerpt_of(line, from, std::max(from, to));
    const auto number = fmt::format("{:>4}", at.line);
    return fmt::format("{} | {}\n{} | {}\n", number, shown.line, std::string(number.size(), ' '),
                       painted(shown.carets, escape, use));
}

} // namespace

std::string render(const grammar::diagnostic& message, const std::vector<source>& sources,
                   colour use) {
    const auto& text = sources.at(message.where.file);
    const auto escape = colour_of(message.level);
    auto result =
        fmt::format("{}: {}: {} [{}]\n", place_of(message.where, text),
                    painted(name_of(message.level), escape, use), message.message, message.kind);
    result += quoted_line(message.where, text, escape, use);
    for (const auto& n : message.notes) {
        if (!n.where) {
            result += fmt::format("     = note: {}\n", n.text);
            continue;
        }
        const auto& other = sources.at(n.where->file);
        result += fmt::format("{}: note: {}\n", place_of(*n.where, other), n.text);
        result += quoted_line(*n.where, other, "\x1b[1m", use);
    }
    for (const auto& h : message.helps) result += fmt::format("     = help: {}\n", h.text);
    return result;
}

std::string render_all(const grammar::diagnostics& messages, const std::vector<source>& sources,
                       colour use) {
    std::string result;
    std::size_t errors = 0, warnings = 0, hints = 0;
    for (const auto& m : messages) {
        result += render(m, sources, use);
        ++(m.level == severity::error ? errors : m.level == severity::warning ? warnings : hints);
    }
    if (result.empty()) return result;
    const auto counted = [](std::size_t n, std::string_view word) {
        return fmt::format("{} {}{}", n, word, n == 1 ? "" : "s");
    };
    std::string total;
    for (const auto& [n, level] : {std::pair{errors, severity::error},
                                   {warnings, severity::warning},
                                   {hints, severity::hint}})
        if (n > 0) total += (total.empty() ? "" : ", ") + counted(n, name_of(level));
    return result + total + "\n";
}

} // namespace benchcard::diagnostics
