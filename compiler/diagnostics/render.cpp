#include "compiler/diagnostics/render.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utf8proc.h>

namespace benchcard::diagnostics {

using grammar::severity;

namespace {

std::string_view name_of(severity level) {
    switch (level) {
    case severity::error: return "error";
    case severity::warning: return "warning";
    case severity::hint: return "hint";
    }
    return "";
}

std::string_view colour_of(severity level) {
    switch (level) {
    case severity::error: return "\x1b[1;31m";
    case severity::warning: return "\x1b[1;35m";
    case severity::hint: return "\x1b[1;36m";
    }
    return "";
}

std::string painted(std::string_view text, std::string_view escape, colour use) {
    return use == colour::yes ? fmt::format("{}{}\x1b[0m", escape, text) : std::string(text);
}

/// One character of a line as it is shown, and how many columns of a terminal it takes.
struct cell {
    std::string text;
    std::size_t width;
    std::size_t bytes; ///< in the source
};

cell next_cell(std::string_view rest) {
    utf8proc_int32_t code = 0;
    const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(rest.data()),
                                         static_cast<utf8proc_ssize_t>(rest.size()), &code);
    if (length <= 0) return {"\xEF\xBF\xBD", 1, 1};
    if (code == '\t') return {"    ", 4, 1};
    if (code < 0x20 || code == 0x7F) return {"\xEF\xBF\xBD", 1, 1};
    const auto width = utf8proc_charwidth(code);
    return {std::string(rest.substr(0, static_cast<std::size_t>(length))),
            static_cast<std::size_t>(std::max(width, 0)), static_cast<std::size_t>(length)};
}

/// A line cut to what is worth showing around a range, with the carets under it.
struct excerpt {
    std::string line;
    std::string carets;
};

constexpr std::size_t widest_excerpt = 160;
constexpr std::size_t before_range = 60;

excerpt excerpt_of(std::string_view line, std::size_t from, std::size_t to) {
    excerpt result;
    std::size_t shown = 0;
    const auto start = from > widest_excerpt - before_range ? from - before_range : 0;
    bool began = start == 0;
    if (!began) result.line = "…", result.carets = " ";
    for (std::size_t i = 0; i < line.size();) {
        const auto c = next_cell(line.substr(i));
        if (i >= start) {
            if (shown + c.width > widest_excerpt) {
                result.line += "…";
                break;
            }
            const bool marked = i >= from && i < to;
            result.line += c.text;
            result.carets.append(c.width, marked ? '^' : ' ');
            shown += c.width;
        }
        i += c.bytes;
    }
    if (from >= line.size() || from == to) {
        result.carets.erase(std::min(result.carets.size(), result.carets.find_last_not_of(' ') + 1));
        std::size_t width = 0;
        for (std::size_t i = start; i < std::min(from, line.size());) {
            const auto c = next_cell(line.substr(i));
            width += c.width;
            i += c.bytes;
        }
        result.carets = std::string(width + (began ? 0 : 1), ' ') + "^";
    }
    result.carets.erase(result.carets.find_last_not_of(' ') + 1);
    return result;
}

std::string place_of(grammar::span where, const source& text) {
    const auto at = text.at(where.begin);
    return fmt::format("{}:{}:{}", text.name(), at.line, at.column);
}

std::string quoted_line(grammar::span where, const source& text, std::string_view escape, colour use) {
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

std::string render(const grammar::diagnostic& message, const std::vector<source>& sources, colour use) {
    const auto& text = sources.at(message.where.file);
    const auto escape = colour_of(message.level);
    auto result = fmt::format("{}: {}: {} [{}]\n", place_of(message.where, text),
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

std::string render_all(const grammar::diagnostics& messages, const std::vector<source>& sources, colour use) {
    std::string result;
    std::size_t errors = 0, warnings = 0, hints = 0;
    for (const auto& m : messages) {
        result += render(m, sources, use);
        ++(m.level == severity::error ? errors : m.level == severity::warning ? warnings : hints);
    }
    if (result.empty()) return result;
    const auto counted = [](std::size_t n, std::string_view word) { return fmt::format("{} {}{}", n, word, n == 1 ? "" : "s"); };
    std::string total;
    for (const auto& [n, word] : {std::pair{errors, "error"}, {warnings, "warning"}, {hints, "hint"}})
        if (n > 0) total += (total.empty() ? "" : ", ") + counted(n, word);
    return result + total + "\n";
}

} // namespace benchcard::diagnostics
