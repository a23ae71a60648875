#include "compiler/diagnostics/formats.hpp"

#include <fmt/format.h>

namespace benchcard::diagnostics {

using grammar::source;
using grammar::span;

namespace {

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

/// A message is one line whatever is quoted in it.
std::string on_one_line(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (is_control(c))
            result += "\xEF\xBF\xBD";
        else
            result += c;
    }
    return result;
}

std::string line_of(span where, const source& text, std::string_view level,
                    std::string_view words) {
    const auto at = text.at(where.begin);
    return fmt::format("{}:{}:{}: {}: {}\n", on_one_line(text.name()), at.line, at.column, level,
                       on_one_line(words));
}

/// In quotes, with what could be mistaken for their end, or cannot be seen, written as C does.
std::string in_quotes(std::string_view text) {
    std::string result = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') result += '\\';
        if (is_control(c))
            result += fmt::format("\\{:03o}", static_cast<unsigned char>(c));
        else
            result += c;
    }
    return result + '"';
}

/// Columns of edits are bytes from 1 in this form.
std::string place_in_bytes(std::size_t offset, const source& text) {
    const auto line = text.at(offset).line;
    return fmt::format("{}:{}", line, offset - text.line_start(line) + 1);
}

std::string line_of(const grammar::edit& e, const source& text) {
    return fmt::format("fix-it:{}:{{{}-{}}}:{}\n", in_quotes(text.name()),
                       place_in_bytes(e.where.begin, text), place_in_bytes(e.where.end, text),
                       in_quotes(e.text));
}

std::string lines_of(const grammar::diagnostic& m, const std::vector<source>& sources) {
    const auto& own = sources.at(m.where.file);
    auto result =
        line_of(m.where, own, grammar::name_of(m.level), fmt::format("{} [{}]", m.message, m.kind));
    for (const auto& n : m.notes) {
        const auto where = n.where.value_or(m.where);
        result += line_of(where, sources.at(where.file), "note", n.text);
    }
    for (const auto& h : m.helps) {
        result += line_of(m.where, own, "note", "help: " + h.text);
        for (const auto& e : h.edits) result += line_of(e, sources.at(e.where.file));
    }
    return result;
}

} // namespace

std::string as_gcc(std::span<const report> reports) {
    std::string result;
    for (const auto& r : reports)
        for (const auto& m : *r.messages) result += lines_of(m, *r.sources);
    return result;
}

} // namespace benchcard::diagnostics
