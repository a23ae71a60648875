#include "compiler/cards/weigh_table.hpp"

#include "compiler/batch/whole.hpp"
#include "compiler/cards/batch_cautions.hpp"
#include "compiler/cards/columns.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

struct columns {
    std::size_t before_point = 0, after_point = 0, unit = 0, imperial = 0, spoons = 0, percent = 0;
};

/// A number's part before its decimal point and the rest, for lining up on the point.
std::pair<std::string, std::string> split_at_point(const std::string& figure) {
    const auto point = figure.find('.');
    if (point == figure.npos || figure.find("–") != figure.npos) return {figure, ""};
    return {figure.substr(0, point), figure.substr(point)};
}

columns measured(const styles::card& c) {
    columns w;
    const auto widen = [](std::size_t& width, const std::string& text) {
        width = std::max(width, width_of(text));
    };
    const auto widen_amount = [&](const std::string& amount, const std::string& unit) {
        const auto [before, after] = split_at_point(amount);
        widen(w.before_point, before), widen(w.after_point, after), widen(w.unit, unit);
    };
    for (const auto& row : c.weigh_out) {
        widen_amount(row.amount, row.unit);
        widen(w.imperial, row.imperial), widen(w.spoons, row.spoons), widen(w.percent, row.percent);
    }
    for (const auto& t : c.totals) widen_amount(t.amount, t.unit);
    return w;
}

std::string shown_amount(const std::string& amount, const std::string& unit, const columns& w) {
    const auto [before, after] = split_at_point(amount);
    return std::string(2 + w.before_point - width_of(before), ' ') + before +
           padded(after, w.after_point) + " " + padded(unit, w.unit);
}

std::string shown_row(const styles::weigh_row& row, const columns& w) {
    auto line = shown_amount(row.amount, row.unit, w);
    for (const auto& [text, width] : {std::pair{row.imperial, w.imperial}, {row.spoons, w.spoons}})
        if (width > 0) line += "  " + padded(text, width);
    if (w.percent > 0)
        line += "  " + std::string(w.percent - width_of(row.percent), ' ') + row.percent;
    line += "  ";
    const auto indent = width_of(line);
    const bool joined = row.preparation.empty() || row.preparation.starts_with('(');
    const auto name =
        row.name + (row.preparation.empty() ? "" : (joined ? " " : ", ") + row.preparation);
    return line + wrapped(name, indent) + "\n";
}

std::string headed(const styles::card& c) {
    std::string result = c.title;
    for (const auto& part : {c.station, c.yield})
        if (!part.empty()) result += " · " + part;
    return wrapped(result, 2) + "\n";
}

std::string shown_card(const styles::card& c) {
    const auto w = measured(c);
    auto result = headed(c);
    for (const auto& row : c.weigh_out) result += shown_row(row, w);
    for (const auto& t : c.totals) {
        const auto line = shown_amount(t.amount, t.unit, w) + "  ";
        result += line + wrapped(t.text, width_of(line)) + "\n";
    }
    return result;
}

/// `whole eggs at 24, 48, 72 buns`: orders near one for which part of an egg is needed.
std::string said_whole_orders(const batch::batch& b) {
    std::string result;
    const auto& product = b.components.back();
    for (const auto& whole : batch::whole_orders_of(b)) {
        std::string numbers;
        for (const auto& n : whole.numbers)
            numbers += (numbers.empty() ? "" : ", ") + std::string(product.pieces ? "" : "× ") +
                       measures::with_fraction(n);
        if (product.pieces) numbers += " " + ingredients::plural(product.of->made.piece);
        result += (result.empty() ? "\n" : "") +
                  wrapped(fmt::format("whole {} at {}", whole.things, numbers), 2) + "\n";
    }
    return result;
}

} // namespace

std::string weigh_table(const batch::batch& b) {
    const auto cards = deal(b);
    std::string result =
        fmt::format("{} {}\n", b.of->title, cards.empty() ? "" : cards.back().batch);
    for (const auto& text : b.reckoning) result.append("  ").append(wrapped(text, 4)).append("\n");
    for (std::size_t i = 0; i < cards.size(); ++i) {
        result.append("\n").append(shown_card(cards[i]));
        for (const auto& text : order_cautions(b.components[i], b))
            result.append("  ! ").append(wrapped(text, 4)).append("\n");
        for (const auto& a : b.components[i].of->accepts)
            result.append("  accepted: ")
                .append(wrapped(fmt::format("{}, {}", a.kind, a.reason), 4))
                .append("\n");
    }
    // In another tin the pieces are of another size: no number of them says when eggs are whole.
    return b.tin ? result : result + said_whole_orders(b);
}

} // namespace benchcard::cards
