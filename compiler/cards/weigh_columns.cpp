#include "compiler/cards/weigh_columns.hpp"

#include "compiler/cards/batch_cautions.hpp"
#include "compiler/cards/columns.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>

namespace benchcard::cards {

namespace {

/// One line of the table: a text a batch, and what it is of.
struct row {
    std::vector<std::string> cells;
    std::string name;
};

std::string amount_of(const styles::weigh_row& row) {
    return row.amount + (row.amount.empty() || row.unit.empty() ? "" : " ") + row.unit;
}

class table {
  public:
    explicit table(const std::vector<batch::batch>& batches) : batches_(batches) {
        for (const auto& b : batches) cards_.push_back(deal(b));
    }

    std::string run() const {
        auto result = batches_.front().of->title + "\n";
        for (std::size_t i = 0; i < cards_.front().size(); ++i) result += "\n" + shown(i);
        return result;
    }

  private:
    const std::vector<batch::batch>& batches_;
    std::vector<std::vector<styles::card>> cards_; ///< of each batch

    template <typename Cell> row row_of(std::string name, Cell cell) const {
        row result{{}, std::move(name)};
        for (std::size_t b = 0; b < batches_.size(); ++b)
            result.cells.push_back(cell(cards_[b], batches_[b]));
        return result;
    }

    std::vector<row> rows_of(std::size_t i) const {
        std::vector<row> rows = {
            row_of("", [&](const auto& cards, const auto&) { return cards[i].batch; })};
        const auto& lines = batches_.front().components[i].of->lines;
        for (std::size_t l = 0; l < lines.size(); ++l)
            rows.push_back(row_of(name_of(lines[l]), [&](const auto& cards, const auto&) {
                return l < cards[i].weigh_out.size() ? amount_of(cards[i].weigh_out[l])
                                                     : std::string();
            }));
        rows.push_back(row_of("mix", [&](const auto&, const auto& b) { return mix_of(b, i); }));
        return rows;
    }

    std::string name_of(const recipe::line& l) const {
        const auto name =
            l.component ? batches_.front().of->components[*l.component].title : l.name;
        return l.preparation.empty() ? name : name + ", " + l.preparation;
    }

    static std::string mix_of(const batch::batch& b, std::size_t i) {
        const auto& mix = b.components[i].mix;
        if (!mix) return "";
        const auto s = measures::on_a_scale({*mix});
        return s.figure + " " + s.unit;
    }

    std::string shown(std::size_t i) const {
        const auto& first = cards_.front()[i];
        auto result = first.title + (first.station.empty() ? "" : " · " + first.station) + "\n";
        const auto rows = rows_of(i);
        std::vector<std::size_t> widths(batches_.size(), 0);
        for (const auto& r : rows)
            for (std::size_t b = 0; b < r.cells.size(); ++b)
                widths[b] = std::max(widths[b], width_of(r.cells[b]));
        for (const auto& r : rows) {
            std::string line;
            for (std::size_t b = 0; b < r.cells.size(); ++b)
                line += "  " + std::string(widths[b] - width_of(r.cells[b]), ' ') + r.cells[b];
            if (!r.name.empty()) line += "  " + wrapped(r.name, width_of(line) + 2);
            result += line + "\n";
        }
        return result + cautions(i);
    }

    std::string cautions(std::size_t i) const {
        std::string result;
        for (std::size_t b = 0; b < batches_.size(); ++b)
            for (const auto& text : order_cautions(batches_[b].components[i], batches_[b]))
                result += "  ! " + wrapped(cards_[b].back().batch + ": " + text, 4) + "\n";
        return result;
    }
};

} // namespace

std::string weigh_columns(const std::vector<batch::batch>& batches) { return table(batches).run(); }

} // namespace benchcard::cards
