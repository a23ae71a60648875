#include "compiler/cards/weigh_columns.hpp"

#include "compiler/cards/batch_cautions.hpp"
#include "compiler/cards/batch_rows.hpp"
#include "compiler/cards/columns.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/measures/kitchen.hpp"

#include <algorithm>

namespace benchcard::cards {

namespace {

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

    std::vector<batch_row> rows_with_heading(std::size_t i) const {
        auto rows = batch_rows(batches_, cards_, i);
        batch_row heading;
        for (const auto& of_batch : cards_) heading.cells.push_back(of_batch[i].batch);
        rows.insert(rows.begin(), std::move(heading));
        return rows;
    }

    std::string shown(std::size_t i) const {
        const auto& first = cards_.front()[i];
        auto result = first.title + (first.station.empty() ? "" : " · " + first.station) + "\n";
        const auto rows = rows_with_heading(i);
        std::vector<std::size_t> widths(batches_.size(), 0);
        for (const auto& r : rows)
            for (std::size_t b = 0; b < r.cells.size(); ++b)
                widths[b] = std::max(widths[b], width_of(r.cells[b]));
        for (const auto& r : rows) {
            std::string line;
            for (std::size_t b = 0; b < r.cells.size(); ++b)
                line += "  " + std::string(widths[b] - width_of(r.cells[b]), ' ') + r.cells[b];
            const auto name = r.preparation.empty() ? r.name : r.name + ", " + r.preparation;
            if (!name.empty()) line += "  " + wrapped(name, width_of(line) + 2);
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
