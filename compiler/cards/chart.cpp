#include "compiler/cards/chart.hpp"

#include "compiler/cards/columns.hpp"
#include "compiler/cards/fingerprint.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/ranges.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <set>

namespace benchcard::cards {

namespace {

using grammar::unit;
using ingredients::entry;
using recipe::spread;

constexpr std::array charted_units = {unit::cup, unit::tablespoon, unit::teaspoon};

/// What one of a unit weighs, at a density.
std::optional<spread> weight_of_one(unit u, const recipe::density& d, measures::system system) {
    const auto held = measures::volume_of(u, system);
    if (!held) return std::nullopt;
    return spread{d.low * held->value, d.used * held->value, d.high * held->value};
}

std::string figure_of(const std::optional<spread>& grams) {
    return grams ? measures::on_a_scale({grams->used}).figure : "";
}

std::array<std::string, 3> row_figures(const chart_row& row) {
    return {figure_of(row.cup), figure_of(row.tablespoon), figure_of(row.teaspoon)};
}

/// How far the filling can change the largest measure there is, where that is more than 5 %.
std::string range_of(const chart_row& row) {
    const auto& of = row.cup ? row.cup : row.tablespoon;
    if (!of || (of->high - of->low) * 20 <= of->used) return "";
    return measures::range_of(measures::on_a_scale({of->low}).figure,
                              measures::on_a_scale({of->high}).figure, "");
}

/// `cup 236.6 ml, tbsp 14.8 ml, tsp 4.9 ml`
std::string said_sizes(measures::system system) {
    std::string result;
    for (const auto u : charted_units)
        if (const auto held = measures::volume_of(u, system))
            result += fmt::format("{}{} {} ml", result.empty() ? "" : ", ", grammar::short_name(u),
                                  measures::in_decimals(held->value, 1));
    return result;
}

/// The publications that most figures are from, and the short words for them.
constexpr std::pair<std::string_view, std::string_view> publications[] = {
    {"USDA National Nutrient Database for Standard Reference, Release 28 (2015)", "SR28"},
    {"GNU units 3.15 (2022)", "GNU"},
};

std::string in_short(const std::string& source) {
    for (const auto& [whole, brief] : publications)
        if (source.starts_with(whole)) return std::string(brief) + source.substr(whole.size());
    return source;
}

/// A source on a line of its own, what the short words in it stand for.
std::string legend_of(const std::vector<chart_row>& rows) {
    std::string result;
    for (const auto& [whole, brief] : publications)
        if (std::any_of(rows.begin(), rows.end(),
                        [&](const auto& row) { return row.source.starts_with(whole); }))
            result += fmt::format("{}: {}\n", brief, whole);
    return result;
}

constexpr std::string_view how_to_read =
    "Level measures. A range is what filling the {} in other ways gives, where that is more than "
    "5 %.";

} // namespace

std::vector<chart_row> chart_of(std::vector<const entry*> entries, measures::system system) {
    const auto place = [](const entry* e) {
        return std::pair(ingredients::compared_name(e->name), e->where.begin);
    };
    std::sort(entries.begin(), entries.end(),
              [&](const auto* a, const auto* b) { return place(a) < place(b); });
    std::vector<chart_row> rows;
    std::set<const entry*> seen;
    for (const auto* e : entries) {
        const auto density = recipe::density_of(*e, "");
        if (!density || !seen.insert(e).second) continue;
        rows.push_back({e, weight_of_one(unit::cup, *density, system),
                        weight_of_one(unit::tablespoon, *density, system),
                        weight_of_one(unit::teaspoon, *density, system), density->figure->source});
    }
    return rows;
}

std::string chart_text(const std::vector<chart_row>& rows, measures::system system) {
    const bool has_cup = measures::volume_of(unit::cup, system).has_value();
    const std::string_view largest = has_cup ? "cup" : "tbsp";
    std::size_t name_width = 10;
    for (const auto& row : rows) name_width = std::max(name_width, width_of(row.what->name));
    const auto line = [&](const std::string& name, const std::array<std::string, 3>& figures,
                          const std::string& range, const std::string& source) {
        auto text = padded(name, name_width);
        for (const auto& figure : figures) text += fmt::format(" {:>6}", figure);
        text += "  " + padded(range, 9) + "  " + source;
        return text.substr(0, text.find_last_not_of(' ') + 1) + "\n";
    };
    auto result =
        fmt::format("What a measure weighs, in grams ({})\n", said_sizes(system)) +
        wrapped(fmt::format(how_to_read, largest), 0) + "\n\n" +
        line("", {has_cup ? "cup" : "", "tbsp", "tsp"}, fmt::format("a {}", largest), "source");
    for (const auto& row : rows)
        result += line(row.what->name, row_figures(row), range_of(row), in_short(row.source));
    const auto legend = legend_of(rows);
    return result + (legend.empty() ? "" : "\n" + legend);
}

styles::card chart_card(const std::vector<chart_row>& rows, measures::system system,
                        const std::string& title) {
    const bool has_cup = measures::volume_of(unit::cup, system).has_value();
    const std::string largest = has_cup ? "cup" : "tbsp";
    styles::card card;
    card.title = "Grams in a measure";
    card.recipe = title;
    card.yield = said_sizes(system);
    card.table.headings = {"g a tbsp", "g a tsp"};
    if (has_cup) card.table.headings.insert(card.table.headings.begin(), "g a cup");
    for (const auto& row : rows) {
        const auto figures = row_figures(row);
        const auto range = range_of(row);
        card.table.rows.push_back({row.what->name,
                                   range.empty() ? "" : fmt::format("({} a {})", range, largest),
                                   {figures.begin() + (has_cup ? 0 : 1), figures.end()}});
    }
    card.notes.push_back({{fmt::format(how_to_read, largest), false}});
    card.footnote = "benchcard convert --list names each figure's source";
    card.number = "chart";
    card.language = "en";
    card.fingerprint = fingerprint_of(card);
    return card;
}

} // namespace benchcard::cards
