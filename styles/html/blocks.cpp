#include "styles/html/blocks.hpp"

#include "styles/html/markup.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <functional>

namespace benchcard::html {

namespace {

using styles::block;
using styles::card;
using styles::column;
using styles::style;

/// A figure's part up to its decimal point, and the rest.
std::pair<std::string, std::string> at_point(const std::string& figure) {
    const auto point = std::min(figure.find('.'), figure.size());
    return {figure.substr(0, point), figure.substr(point)};
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](const char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

/// How many characters the longest figures of a column have before and behind their points.
struct extent {
    std::size_t whole = 0, part = 0;

    void add(const std::string& figure) {
        const auto [before, behind] = at_point(figure);
        whole = std::max(whole, characters(before)), part = std::max(part, characters(behind));
    }
};

/// A figure with its point where the others of its column have theirs.
std::string figure(const std::string& text, const extent& column) {
    if (text.empty()) return "";
    if (column.part == 0) return "<b>" + worded(text) + "</b>";
    const auto [before, behind] = at_point(text);
    return fmt::format("<b>{}<span class=\"part\" style=\"--part:{}\">{}</span></b>",
                       escaped(before), column.part, escaped(behind));
}

std::string cell(std::string_view kind, const std::string& text) {
    return fmt::format("<td role=\"cell\" class=\"{}\">{}</td>", kind, text);
}

/// The columns of the weigh-out that a row needs, in the style's order.
std::vector<column> needed_columns(const card& c, const style& look) {
    const auto any = [&](std::string styles::weigh_row::*text) {
        return std::any_of(c.weigh_out.begin(), c.weigh_out.end(),
                           [&](const auto& row) { return !(row.*text).empty(); });
    };
    std::vector<column> result;
    for (const auto which : look.columns)
        if ((which != column::imperial || any(&styles::weigh_row::imperial)) &&
            (which != column::spoons || any(&styles::weigh_row::spoons)) &&
            (which != column::percent || any(&styles::weigh_row::percent)))
            result.push_back(which);
    return result;
}

std::string heading_cell(std::string_view kind, const std::string& text) {
    if (text.empty()) return cell(kind, "");
    return fmt::format("<th role=\"columnheader\" scope=\"col\" class=\"{}\">{}</th>", kind,
                       escaped(text));
}

std::string heading_of(column which, const card& c) {
    switch (which) {
    case column::tick:
        return cell("tick", "");
    case column::amount:
        return cell("amount", "") + cell("unit", "");
    case column::name:
        return cell("name", "");
    case column::imperial:
        return heading_cell("imperial", c.imperial_heading);
    case column::spoons:
        return heading_cell("spoons", c.spoons_heading);
    case column::percent:
        return heading_cell("percent", c.percent_heading);
    }
    return "";
}

std::string name_of(const styles::weigh_row& row, const std::string& id, bool can_be_ticked) {
    auto text = "<b>" + escaped(row.name) + "</b>";
    if (!row.preparation.empty())
        text += (row.preparation.starts_with('(') ? " " : ", ") + worded(row.preparation);
    if (can_be_ticked) text = fmt::format("<label for=\"{}\">{}</label>", id, text);
    return fmt::format("<th role=\"rowheader\" scope=\"row\" class=\"name\">{}</th>", text);
}

/// What all rows of a weigh-out share.
struct weigh_columns {
    std::vector<column> needed;
    extent amounts;
    std::size_t unit = 0; ///< characters of the longest

    bool can_be_ticked() const {
        return std::find(needed.begin(), needed.end(), column::tick) != needed.end();
    }
};

weigh_columns columns_of(const card& c, const style& look) {
    weigh_columns result{needed_columns(c, look), {}, 0};
    for (const auto& row : c.weigh_out) {
        result.amounts.add(row.amount);
        if (!row.amount.empty()) result.unit = std::max(result.unit, characters(row.unit));
    }
    return result;
}

/// `some` takes the room of both, as it is neither.
std::string amount_cells(const styles::weigh_row& row, const extent& amounts) {
    if (row.amount.empty())
        return fmt::format("<td role=\"cell\" class=\"amount\" colspan=\"2\">{}</td>",
                           escaped(row.unit));
    return cell("amount", figure(row.amount, amounts)) + cell("unit", escaped(row.unit));
}

std::string cell_of(column which, const styles::weigh_row& row, const weigh_columns& columns,
                    const std::string& id) {
    switch (which) {
    case column::tick:
        return cell("tick", fmt::format("<input type=\"checkbox\" id=\"{}\">", id));
    case column::amount:
        return amount_cells(row, columns.amounts);
    case column::name:
        return name_of(row, id, columns.can_be_ticked());
    case column::imperial:
        return cell("imperial", escaped(row.imperial));
    case column::spoons:
        return cell("spoons", escaped(row.spoons));
    case column::percent:
        return cell("percent", escaped(row.percent));
    }
    return "";
}

std::string weigh_out(const card& c, const style& look, const std::string& id) {
    if (c.weigh_out.empty()) return "";
    const auto columns = columns_of(c, look);
    std::string headings, rows;
    for (const auto which : columns.needed) headings += heading_of(which, c);
    if (headings.find("<th") != headings.npos)
        headings = "<thead role=\"rowgroup\"><tr role=\"row\">" + headings + "</tr></thead>\n";
    else
        headings.clear();
    for (std::size_t i = 0; i < c.weigh_out.size(); ++i) {
        rows += "<tr role=\"row\">";
        for (const auto which : columns.needed)
            rows += cell_of(which, c.weigh_out[i], columns, fmt::format("{}-line-{}", id, i + 1));
        rows += "</tr>\n";
    }
    return fmt::format("<table role=\"table\" class=\"weigh-out\" style=\"--whole:{};--part:{};"
                       "--unit:{}\" aria-labelledby=\"{}-title\">\n{}<tbody role=\"rowgroup\">\n"
                       "{}</tbody></table>\n",
                       columns.amounts.whole, columns.amounts.part, columns.unit, id, headings,
                       rows);
}

std::string totals(const card& c) {
    std::string result;
    for (const auto& t : c.totals)
        result += fmt::format("<p><b>{}{}{}</b> {}</p>\n", escaped(t.amount),
                              t.amount.empty() || t.unit.empty() ? "" : " ", escaped(t.unit),
                              worded(t.text));
    return result.empty() ? "" : "<div class=\"totals\">\n" + result + "</div>\n";
}

std::string table(const card& c, const std::string& id) {
    if (c.table.rows.empty()) return "";
    // Figures with units stand on their ends, bare ones on their points.
    bool has_units = false;
    std::vector<extent> columns;
    for (const auto& row : c.table.rows) {
        columns.resize(std::max(columns.size(), row.figures.size()));
        for (std::size_t i = 0; i < row.figures.size(); ++i) {
            columns[i].add(row.figures[i]);
            has_units = has_units || row.figures[i].find(' ') != std::string::npos;
        }
    }
    if (has_units) columns.assign(columns.size(), {});
    auto result = fmt::format("<table role=\"table\" class=\"chart\" aria-labelledby=\"{}-title\">"
                              "\n<thead role=\"rowgroup\"><tr role=\"row\">{}",
                              id, cell("name", ""));
    for (const auto& heading : c.table.headings) result += heading_cell("figure", heading);
    result += "</tr></thead>\n<tbody role=\"rowgroup\">\n";
    for (const auto& row : c.table.rows) {
        result += "<tr role=\"row\"><th role=\"rowheader\" scope=\"row\" class=\"name\"><b>" +
                  worded(row.name) + "</b>" + (row.remark.empty() ? "" : " " + worded(row.remark)) +
                  "</th>";
        for (std::size_t i = 0; i < row.figures.size(); ++i)
            result += cell("figure", figure(row.figures[i], columns[i]));
        result += "</tr>\n";
    }
    return result + "</tbody></table>\n";
}

std::string method(const card& c, const std::string& id) {
    if (c.method.empty()) return "";
    auto result = fmt::format("<ol class=\"method\" aria-labelledby=\"{}-title\">\n", id);
    for (const auto& step : c.method) result += "<li>" + marked_up(step) + "</li>\n";
    return result + "</ol>\n";
}

std::string oven(const card& c, const style& look, const std::string& id) {
    if (c.oven.empty()) return "";
    const bool has_time = std::any_of(c.oven.begin(), c.oven.end(),
                                      [](const auto& row) { return !row.time.empty(); });
    auto result =
        fmt::format("<table class=\"oven\" aria-labelledby=\"{}-title\">\n<thead><tr>", id);
    std::vector<std::string> headings = {look.words.oven, look.words.fan, look.words.fahrenheit,
                                         look.words.gas};
    if (has_time) headings.push_back(look.words.time);
    for (const auto& heading : headings)
        result += "<th scope=\"col\">" + escaped(heading) + "</th>";
    result += "</tr></thead>\n<tbody>\n";
    for (const auto& row : c.oven) {
        std::vector<std::string> values = {row.celsius, row.fan, row.fahrenheit, row.gas};
        if (has_time) values.push_back(row.time);
        result += "<tr>";
        for (const auto& value : values) result += "<td>" + escaped(value) + "</td>";
        result += "</tr>\n";
    }
    return result + "</tbody></table>\n";
}

/// A triangle with a mark of exclamation: the words say what it means.
constexpr std::string_view warning_sign =
    "<svg viewBox=\"0 0 24 22\" aria-hidden=\"true\"><path d=\"M12 2 22.5 20.5h-21z\" "
    "fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.2\" stroke-linejoin=\"round\"/><path "
    "d=\"M12 8.4v6M12 16.6v2\" stroke=\"currentColor\" stroke-width=\"2.2\"/></svg>";

std::string paragraphs(const std::vector<styles::paragraph>& all, std::string_view kind,
                       std::string_view sign) {
    std::string result;
    for (const auto& p : all)
        if (!p.empty())
            result +=
                fmt::format("<p class=\"{}\">{}<span>{}</span></p>\n", kind, sign, marked_up(p));
    return result;
}

std::string keeping(const card& c) {
    if (c.keeping.empty() && c.made_label.empty()) return "";
    std::string result = "<p class=\"keeping\"><span>" + marked_up(c.keeping) + "</span>";
    if (!c.made_label.empty())
        result += " <span class=\"made\">" + escaped(c.made_label) + "</span>";
    return result + "</p>\n";
}

/// Where the amounts come from.
std::string figures(const card& c) {
    std::string result;
    for (const auto& f : c.figures) {
        result += "<section class=\"figures\">\n<h3>" + worded(f.title) + "</h3>\n";
        for (const auto& line : f.lines)
            result +=
                fmt::format("<p style=\"--depth:{}\">{}</p>\n", line.depth, worded(line.text));
        result += "</section>\n";
    }
    return result;
}

} // namespace

std::string block_of(block which, const card& c, const style& look, const std::string& id) {
    switch (which) {
    case block::weigh_out:
        return weigh_out(c, look, id);
    case block::totals:
        return totals(c);
    case block::table:
        return table(c, id);
    case block::method:
        return method(c, id);
    case block::oven:
        return oven(c, look, id);
    case block::allergens:
        return c.allergens.empty() ? "" : paragraphs({c.allergens}, "allergens", "");
    case block::cautions:
        return paragraphs(c.cautions, "caution", warning_sign);
    case block::notes:
        return paragraphs(c.notes, "note", "");
    case block::keeping:
        return keeping(c);
    case block::figures:
        return figures(c);
    }
    return "";
}

} // namespace benchcard::html
