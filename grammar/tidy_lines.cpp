#include "grammar/tidy_lines.hpp"

#include "grammar/settings.hpp"

#include <algorithm>

namespace benchcard::grammar {

namespace {

constexpr std::size_t gap = 3; ///< blanks between the measure and the name, as in `2 cups   flour`
constexpr std::size_t indent = 2; ///< of a line that goes on with the one above

bool is_space_or_tab(char c) { return c == ' ' || c == '\t'; }

std::string padded(std::string text, std::size_t width) {
    const auto has = count_characters(text);
    return has < width ? text.append(width - has, ' ') : text;
}

/// One blank on either side of a sign: `2 cups=250 g` is `2 cups = 250 g`.
std::string with_room_around(std::string_view text, char sign) {
    std::string result;
    for (std::size_t begin = 0;;) {
        const auto at = text.find(sign, begin);
        result += trimmed(text.substr(begin, at - begin));
        if (at == text.npos) return result;
        result += result.empty() ? std::string{sign, ' '} : std::string{' ', sign, ' '};
        begin = at + 1;
    }
}

/// A comma behind the word before it and one blank after it.
std::string with_tidy_commas(std::string_view text) {
    std::string result;
    for (std::size_t begin = 0;;) {
        const auto comma = text.find(',', begin);
        result += one_blanked(text.substr(begin, comma - begin));
        if (comma == text.npos) return result;
        result += ", ";
        begin = comma + 1;
    }
}

/// What stands between two places, which may be the wrong way round where there is nothing.
std::string_view between(const source& text, std::uint32_t begin, std::uint32_t end) {
    return text.text_of({text.file(), begin, std::max(begin, end)});
}

std::string comment_behind(const item& line) {
    return line.comments.empty() ? "" : std::string(trimmed(line.comments.front().text));
}

std::uint32_t content_end(const item& line, span where) {
    return line.comments.empty() ? where.end : line.comments.front().where.begin;
}

bool is_list(value_form form) {
    return form == value_form::list || form == value_form::losses || form == value_form::keepings ||
           form == value_form::figures;
}

/// `case` of `1 case   Sweet pastry`: where there is room behind the first word of a name, whoever
/// wrote it took that word for a measure.
std::string_view counted_word(std::string_view name) {
    const auto end = std::find_if(name.begin(), name.end(), is_space_or_tab);
    const auto length = static_cast<std::size_t>(end - name.begin());
    const auto rest = name.substr(length);
    const auto room = rest.find_first_not_of(" \t");
    return room != rest.npos && room >= 2 ? name.substr(0, length) : std::string_view();
}

} // namespace

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == text.npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::string one_blanked(std::string_view text) {
    std::string result;
    for (const char c : trimmed(text))
        if (!is_space_or_tab(c))
            result += c;
        else if (!result.ends_with(' '))
            result += ' ';
    return result;
}

std::string with_comment(std::string line, std::string_view comment) {
    if (comment.empty()) return line;
    if (!line.empty()) line.append(gap, ' ');
    return line.append(comment);
}

line_columns columns_of(const item& line, const ingredient_line& written, const source& text) {
    const auto amount = written.amounts.front().quantity.where;
    const auto name = written.names.front().where;
    const auto counted = counted_word(text.text_of(name));
    auto measure = with_room_around(
        with_room_around(one_blanked(between(text, amount.end, name.begin)), '='), '+');
    if (!counted.empty()) measure += (measure.empty() ? "" : " ") + std::string(counted);
    const auto name_begin = name.begin + static_cast<std::uint32_t>(counted.size());
    return {one_blanked(text.text_of(amount)), std::move(measure),
            with_tidy_commas(between(text, name_begin, content_end(line, written.where))),
            comment_behind(line)};
}

column_widths widths_of(const std::vector<line_columns>& lines) {
    column_widths result;
    for (const auto& l : lines)
        if (!l.measure.empty()) result.amount = std::max(result.amount, count_characters(l.amount));
    for (const auto& l : lines)
        result.before_name =
            std::max(result.before_name, l.measure.empty()
                                             ? count_characters(l.amount)
                                             : result.amount + 1 + count_characters(l.measure));
    result.before_name += gap;
    return result;
}

std::string in_columns(const line_columns& line, const column_widths& widths) {
    auto result =
        line.measure.empty() ? line.amount : padded(line.amount, widths.amount + 1) + line.measure;
    return with_comment(padded(std::move(result), widths.before_name) + line.name, line.comment);
}

std::string tidy_setting(const item& line, const setting& written, const source& text) {
    const auto& entry = setting_of(written.name);
    const auto value = text.text_of(written.value_where);
    return with_comment(std::string(entry.word) + ": " +
                            (is_list(entry.form) ? with_tidy_commas(value) : one_blanked(value)),
                        comment_behind(line));
}

std::vector<std::string> tidy_prose(const item& lines, const std::string& first, span where,
                                    const source& text) {
    std::vector<std::string> result;
    const auto last = text.at(where.end).line;
    auto begin = where.begin;
    for (auto number = text.at(where.begin).line; number <= last; ++number) {
        const auto start = static_cast<std::uint32_t>(text.line_start(number));
        const auto end = start + static_cast<std::uint32_t>(text.line(number).size());
        const auto comment =
            std::find_if(lines.comments.begin(), lines.comments.end(), [&](const auto& c) {
                return c.where.begin >= start && c.where.begin < end;
            });
        const bool has_comment = comment != lines.comments.end();
        begin = std::max(begin, start);
        const std::string words(
            trimmed(between(text, begin, has_comment ? comment->where.begin : end)));
        auto line = result.empty() ? first : std::string(words.empty() ? 0 : indent, ' ');
        line += words;
        line.erase(line.find_last_not_of(' ') + 1);
        line = with_comment(std::move(line), has_comment ? trimmed(comment->text) : "");
        result.push_back(has_comment && words.empty() && !result.empty()
                             ? std::string(indent, ' ') + line
                             : std::move(line));
    }
    return result;
}

} // namespace benchcard::grammar
