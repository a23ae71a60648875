#include "styles/style.hpp"

#include "grammar/nearest.hpp"
#include "grammar/style_rules.hpp"
#include "styles/style_reading.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>
#include <set>

namespace benchcard::styles {

const std::vector<std::pair<std::string_view, std::string_view>>& built_in_style_files();

namespace {

namespace rules = grammar::style_rules;
using grammar::diagnostic;
using grammar::diagnostics;
using grammar::span;

struct line_parts {
    found name, value;
};

} // namespace

template <> struct style_action<rules::setting_name> {
    template <typename In> static void apply(const In& in, line_parts& to) { to.name = taken(in); }
};
template <> struct style_action<rules::setting_value> {
    template <typename In> static void apply(const In& in, line_parts& to) { to.value = taken(in); }
};

void report(reading& r, std::string_view kind, span where, std::string message, std::string help) {
    diagnostic d{.kind = kind, .where = where, .message = std::move(message)};
    if (!help.empty()) d.helps.push_back({.text = std::move(help)});
    r.messages.push_back(std::move(d));
}

void report_word(reading& r, std::string_view kind, span where, std::string message,
                 const std::string& word, const std::vector<std::string>& candidates) {
    diagnostic d{.kind = kind, .where = where, .message = std::move(message)};
    const auto near = grammar::nearest(word, candidates, 1);
    if (!near.empty())
        d.helps.push_back({.text = fmt::format("did you mean “{}”?", near.front()),
                           .edits = {{where, near.front()}}});
    else
        d.helps.push_back({.text = fmt::format("write one of: {}", fmt::join(candidates, ", "))});
    r.messages.push_back(std::move(d));
}

namespace {

span span_at(const grammar::source& text, std::size_t begin, std::size_t length) {
    return {text.file(), static_cast<std::uint32_t>(begin),
            static_cast<std::uint32_t>(begin + length)};
}

void trim(found& part) {
    while (!part.text.empty() && (part.text.back() == ' ' || part.text.back() == '\t'))
        part.text.pop_back();
}

void read_line(reading& r, const grammar::source& text, std::size_t number,
               std::set<std::string>& seen) {
    const auto line = text.line(number);
    const auto start = text.line_start(number);
    line_parts parts;
    if (!matches<rules::line>(line, parts)) {
        report(r, "style-line", span_at(text, start, line.size()),
               "this line is neither a setting nor a comment",
               "write it as in: paper: a5; a comment begins with #");
        return;
    }
    trim(parts.name), trim(parts.value);
    const auto& name = parts.name.text;
    if (name.empty()) return;
    const auto name_span = span_at(text, start + parts.name.at, name.size());
    if (seen.contains(name)) {
        report(r, "style-repeated", name_span, fmt::format("“{}” was set before", name));
        return;
    }
    const value_at value{parts.value.text,
                         span_at(text, start + parts.value.at, parts.value.text.size())};
    if (read_setting(r, name, value))
        seen.insert(name);
    else
        report_word(r, "style-setting", name_span, fmt::format("a style has no setting “{}”", name),
                    name, setting_names());
}

bool has(const std::vector<block>& list, block part) {
    return std::ranges::find(list, part) != list.end();
}

/// Every part stands once on a card: at its head or at its foot. Only a chart has a table, so a
/// style need not say where; it then stands first. Figures are for who asks for them.
void check_blocks(reading& r, const grammar::source& text) {
    auto& [made, messages] = r;
    if (!shows(made, block::table)) made.top.insert(made.top.begin(), block::table);
    for (auto i = 0; i <= static_cast<int>(block::figures); ++i) {
        const auto part = static_cast<block>(i);
        if (has(made.top, part) && has(made.bottom, part))
            report(r, "style-repeated", span_at(text, 0, 0),
                   fmt::format("“{}” stands both under top and under bottom", name_of(part)));
        else if (!shows(made, part) && part != block::figures)
            report(r, "style-part-missing", span_at(text, 0, 0),
                   fmt::format("“{}” stands neither under top nor under bottom, and a card may "
                               "not lose a part",
                               name_of(part)));
    }
}

constexpr std::string_view extension = ".style";

std::string in_small_letters(std::string_view text) {
    std::string out(text);
    std::ranges::transform(out, out.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return out;
}

} // namespace

bool shows(const style& look, block part) { return has(look.top, part) || has(look.bottom, part); }

colour accent_for(const style& look, std::string_view station) {
    const auto name = in_small_letters(station);
    const auto own = std::ranges::find_if(
        look.accents, [&](const auto& a) { return in_small_letters(a.station) == name; });
    return own == look.accents.end() ? look.accent : own->ink;
}

double clear_at(const style& look, edge at) {
    // The corner of what is printed lies on the line between the corner of the card and the
    // middle of the arc: there it must be `least_margin` from the arc too.
    const double r = look.corners;
    const double in_corners = r - (r - least_margin) / std::numbers::sqrt2;
    double clear = std::max({look.margin, least_margin, r > least_margin ? in_corners : 0});
    if (look.hole && look.hole->at == at) clear = std::max(clear, look.hole->clear);
    return clear;
}

style read_style(const grammar::source& text, diagnostics& messages) {
    diagnostics found_here;
    reading r{{}, found_here};
    std::set<std::string> seen;
    for (std::size_t number = 1; number <= text.line_count(); ++number)
        read_line(r, text, number, seen);
    if (found_here.empty()) check_blocks(r, text);
    messages.insert(messages.end(), found_here.begin(), found_here.end());
    return r.made;
}

std::optional<style> built_in_style(std::string_view name) {
    for (const auto& [file, text] : built_in_style_files()) {
        if (!file.ends_with(extension)) continue;
        if (file.substr(0, file.size() - extension.size()) != name) continue;
        diagnostics ignored; // a test reads every built-in style and wants none
        return read_style(grammar::source(0, std::string(file), std::string(text)), ignored);
    }
    return std::nullopt;
}

std::vector<std::string> built_in_style_names() {
    std::vector<std::string> names;
    for (const auto& [file, text] : built_in_style_files())
        names.emplace_back(file.substr(0, file.size() - extension.size()));
    std::ranges::sort(names);
    return names;
}

std::span<const grammar::kind_entry> kinds() {
    using enum grammar::severity;
    static constexpr grammar::kind_entry all[] = {
        {"style-line", error, "a line of a style that is no setting"},
        {"style-setting", error, "a style file sets something that no style has"},
        {"style-value", error, "a value of another form than its setting needs"},
        {"style-word", error, "a paper, column or part that does not exist"},
        {"style-margin", error, "a margin too narrow to laminate, or too wide"},
        {"style-length", error, "a length beyond what a card can have"},
        {"style-contrast", error, "a colour too light to be read in grey"},
        {"style-type", error, "a style's bounds of type cannot be kept"},
        {"style-repeated", error, "a style file says something twice"},
        {"style-part-missing", error, "a style leaves a part of the card out"},
        {"missing-font", warning, "the font of the cards is not installed"},
        {"unreadable-font", error, "a font is installed and cannot be read"},
        {"missing-character", error, "a card has a character that no font has"},
        {"nothing-to-print", error, "there is no card to print"},
        {"pdf-failed", error, "the PDF could not be made"},
    };
    return all;
}

} // namespace benchcard::styles
