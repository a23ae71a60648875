#include "styles/style.hpp"

#include "grammar/nearest.hpp"
#include "grammar/style_rules.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <set>
#include <tao/pegtl.hpp>

namespace benchcard::styles {

const std::vector<std::pair<std::string_view, std::string_view>>& built_in_style_files();

namespace {

namespace rules = grammar::style_rules;
namespace pegtl = tao::pegtl;
using grammar::diagnostic;
using grammar::diagnostics;
using grammar::span;

/// A stretch of text found by a rule.
struct found {
    std::string text;
    std::size_t at = 0; ///< bytes from the start of what was parsed
};

struct line_parts {
    found name, value;
};
struct numbers {
    std::string least, most;
};
using items = std::vector<found>;

template <typename Rule> struct action : pegtl::nothing<Rule> {};
template <typename In> found taken(const In& in) { return {in.string(), in.position().byte}; }

template <> struct action<rules::setting_name> {
    template <typename In> static void apply(const In& in, line_parts& to) { to.name = taken(in); }
};
template <> struct action<rules::setting_value> {
    template <typename In> static void apply(const In& in, line_parts& to) { to.value = taken(in); }
};
template <> struct action<rules::least> {
    template <typename In> static void apply(const In& in, numbers& to) { to.least = in.string(); }
};
template <> struct action<rules::most> {
    template <typename In> static void apply(const In& in, numbers& to) { to.most = in.string(); }
};
template <> struct action<rules::list_item> {
    template <typename In> static void apply(const In& in, items& to) { to.push_back(taken(in)); }
};

template <typename Rule, typename State> bool matches(std::string_view text, State& state) {
    pegtl::memory_input in(text.data(), text.size(), "");
    return pegtl::parse<Rule, action>(in, state);
}

/// The number of a text that matched `rules::number`; digits without end are infinity.
double value_of(const std::string& text) {
    double value = 0;
    const auto end = text.data() + text.size();
    const auto result = std::from_chars(text.data(), end, value);
    return result.ec == std::errc{} ? value : INFINITY;
}

struct reading {
    style made;
    diagnostics& messages;
};

/// What a setting's value is read with: its text, and where that stands.
struct value_at {
    const std::string& text;
    span where;
};

void report(reading& r, std::string_view kind, span where, std::string message,
            std::string help = {}) {
    diagnostic d{.kind = kind, .where = where, .message = std::move(message)};
    if (!help.empty()) d.helps.push_back({.text = std::move(help)});
    r.messages.push_back(std::move(d));
}

/// A word that is none of those there are: names the nearest, or all of them.
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

template <typename T> struct named {
    std::string_view name;
    T is;
};

constexpr named<column> columns_by_name[] = {
    {"tick", column::tick},         {"amount", column::amount}, {"name", column::name},
    {"imperial", column::imperial}, {"spoons", column::spoons}, {"percent", column::percent},
};
constexpr named<block> blocks_by_name[] = {
    {"weigh-out", block::weigh_out}, {"totals", block::totals}, {"table", block::table},
    {"method", block::method},       {"oven", block::oven},     {"allergens", block::allergens},
    {"cautions", block::cautions},   {"notes", block::notes},   {"keeping", block::keeping},
};

template <typename Table> std::vector<std::string> names_of(const Table& table) {
    std::vector<std::string> out;
    for (const auto& entry : table) out.emplace_back(entry.name);
    return out;
}

span part_of(const value_at& value, const found& part) {
    const auto begin = value.where.begin + static_cast<std::uint32_t>(part.at);
    return {value.where.file, begin, begin + static_cast<std::uint32_t>(part.text.size())};
}

/// A list of words out of a table, each at most once.
template <typename T, std::size_t Size>
void read_list(reading& r, const value_at& value, const named<T> (&table)[Size], const char* what,
               std::vector<T>& into) {
    items parts;
    if (!matches<rules::list>(value.text, parts)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where {}s with commas between them should stand", value.text,
                           what),
               fmt::format("write some of: {}", fmt::join(names_of(table), ", ")));
        return;
    }
    std::vector<T> list;
    for (const auto& part : parts) {
        const auto at = std::ranges::find(table, part.text, &named<T>::name);
        if (at == std::end(table)) {
            report_word(r, "style-word", part_of(value, part),
                        fmt::format("“{}” is not a {} of a card", part.text, what), part.text,
                        names_of(table));
        } else if (std::ranges::find(list, at->is) != list.end()) {
            report(r, "style-repeated", part_of(value, part),
                   fmt::format("“{}” stands here twice", part.text));
        } else {
            list.push_back(at->is);
        }
    }
    into = std::move(list);
}

void read_paper(reading& r, const value_at& value) {
    if (const auto sheet = paper_named(value.text)) {
        r.made.sheet = *sheet;
        return;
    }
    std::vector<std::string> names;
    for (const auto& p : papers()) names.emplace_back(p.name);
    report_word(r, "style-word", value.where,
                fmt::format("“{}” is not a paper that benchcard knows", value.text), value.text,
                names);
}

void read_margin(reading& r, const value_at& value) {
    constexpr double most = 25; // on the smallest card wider ones leave no line to write on
    numbers n;
    if (!matches<rules::length>(value.text, n)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where a width in millimetres should stand", value.text),
               "write it as in: 8 mm");
        return;
    }
    const double margin = value_of(n.least);
    if (margin < least_margin || margin > most) {
        report(r, "style-margin", value.where,
               fmt::format("a margin of {} mm is {}", n.least,
                           margin < least_margin ? "too narrow to laminate" : "too wide"),
               fmt::format("set it between {} mm and {} mm", least_margin, most));
        return;
    }
    r.made.margin = margin;
}

void read_type(reading& r, const value_at& value, type_range& into) {
    constexpr double least = 6, most = 144;
    numbers n;
    if (!matches<rules::type_sizes>(value.text, n)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where the smallest and the largest type should stand",
                           value.text),
               "write them as in: 14-30 pt");
        return;
    }
    const type_range range{value_of(n.least), value_of(n.most)};
    if (range.least > range.most)
        report(r, "style-type", value.where,
               fmt::format("the smallest type, {} pt, is larger than the largest, {} pt", n.least,
                           n.most));
    else if (range.least < least || range.most > most)
        report(r, "style-type", value.where,
               fmt::format("type from {} to {} pt goes beyond what can be read or set", n.least,
                           n.most),
               fmt::format("set both between {} and {} pt", least, most));
    else
        into = range;
}

using reader = void (*)(reading&, const value_at&);

template <type_range style::*Range> void read_type_of(reading& r, const value_at& value) {
    read_type(r, value, r.made.*Range);
}
template <std::string layout_words::*Word> void read_word(reading& r, const value_at& value) {
    r.made.words.*Word = value.text;
}
void read_columns(reading& r, const value_at& value) {
    read_list(r, value, columns_by_name, "column", r.made.columns);
}
template <std::vector<block> style::*Blocks> void read_blocks(reading& r, const value_at& value) {
    read_list(r, value, blocks_by_name, "part", r.made.*Blocks);
}

constexpr named<reader> settings[] = {
    {"paper", read_paper},
    {"margin", read_margin},
    {"title", read_type_of<&style::title>},
    {"amounts", read_type_of<&style::amounts>},
    {"names", read_type_of<&style::names>},
    {"text", read_type_of<&style::text>},
    {"small print", read_type_of<&style::small_print>},
    {"columns", read_columns},
    {"top", read_blocks<&style::top>},
    {"bottom", read_blocks<&style::bottom>},
    {"word oven", read_word<&layout_words::oven>},
    {"word fan", read_word<&layout_words::fan>},
    {"word fahrenheit", read_word<&layout_words::fahrenheit>},
    {"word gas", read_word<&layout_words::gas>},
    {"word time", read_word<&layout_words::time>},
    {"word continues", read_word<&layout_words::continues>},
};

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
    if (parts.name.text.empty()) return;
    const auto name_span = span_at(text, start + parts.name.at, parts.name.text.size());
    const auto setting = std::ranges::find(settings, parts.name.text, &named<reader>::name);
    if (setting == std::end(settings)) {
        report_word(r, "style-setting", name_span,
                    fmt::format("a style has no setting “{}”", parts.name.text), parts.name.text,
                    names_of(settings));
        return;
    }
    if (!seen.insert(parts.name.text).second) {
        report(r, "style-repeated", name_span, fmt::format("“{}” was set before", parts.name.text));
        return;
    }
    setting->is(r,
                {parts.value.text, span_at(text, start + parts.value.at, parts.value.text.size())});
}

/// Every part stands once on a card: at its head or at its foot. Only a chart has a table, so a
/// style need not say where; it then stands first.
void check_blocks(reading& r, const grammar::source& text) {
    const bool has_table = std::ranges::find(r.made.top, block::table) != r.made.top.end() ||
                           std::ranges::find(r.made.bottom, block::table) != r.made.bottom.end();
    if (!has_table) r.made.top.insert(r.made.top.begin(), block::table);
    for (const auto& entry : blocks_by_name) {
        const auto has = [&](const std::vector<block>& list) {
            return std::ranges::find(list, entry.is) != list.end();
        };
        if (has(r.made.top) && has(r.made.bottom))
            report(r, "style-repeated", span_at(text, 0, 0),
                   fmt::format("“{}” stands both under top and under bottom", entry.name));
        else if (!has(r.made.top) && !has(r.made.bottom))
            report(r, "style-part-missing", span_at(text, 0, 0),
                   fmt::format("“{}” stands neither under top nor under bottom, and a card may "
                               "not lose a part",
                               entry.name));
    }
}

constexpr std::string_view extension = ".style";

} // namespace

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
        {"style-type", error, "a style's bounds of type cannot be kept"},
        {"style-repeated", error, "a style file says something twice"},
        {"style-part-missing", error, "a style leaves a part of the card out"},
        {"missing-font", error, "the font of the cards is not installed"},
        {"missing-character", error, "a card has a character that no font has"},
        {"nothing-to-print", error, "there is no card to print"},
        {"pdf-failed", error, "the PDF could not be made"},
    };
    return all;
}

} // namespace benchcard::styles
