#include "compiler/cards/batch_rows.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/cards/fingerprint.hpp"
#include "compiler/cards/method.hpp"

#include <algorithm>

namespace benchcard::cards {

namespace {

using styles::card;

class column_dealer {
  public:
    explicit column_dealer(const std::vector<batch::batch>& batches) : batches_(batches) {
        for (const auto& b : batches) cards_.push_back(deal(b));
    }

    std::vector<card> run() const {
        std::vector<card> result;
        for (std::size_t i = 0; i < cards_.front().size(); ++i) result.push_back(card_of(i));
        return result;
    }

  private:
    const std::vector<batch::batch>& batches_;
    std::vector<std::vector<card>> cards_; ///< of each batch

    card card_of(std::size_t i) const {
        auto result = cards_.front()[i];
        result.batch.clear(), result.yield.clear();
        result.weigh_out.clear(), result.totals.clear();
        result.imperial_heading.clear(), result.spoons_heading.clear();
        result.percent_heading.clear();
        result.table = table_of(i);
        result.method = method_of_any(batches_.front().components[i], batches_.front());
        result.cautions = cautions_of(i);
        result.fingerprint = fingerprint_of(result);
        return result;
    }

    styles::table table_of(std::size_t i) const {
        styles::table result;
        for (const auto& of_batch : cards_) result.headings.push_back(of_batch[i].batch);
        for (auto& row : batch_rows(batches_, cards_, i)) {
            for (auto& cell : row.cells) cell = unbroken(cell);
            result.rows.push_back(
                {std::move(row.name), std::move(row.preparation), std::move(row.cells)});
        }
        styles::table_row makes{"makes", "", {}};
        for (const auto& of_batch : cards_)
            makes.figures.push_back(unbroken(made_of(of_batch[i].yield)));
        const bool is_said = std::any_of(makes.figures.begin(), makes.figures.end(),
                                         [](const auto& f) { return !f.empty(); });
        if (is_said) result.rows.push_back(std::move(makes));
        return result;
    }

    /// A number stays beside its unit.
    static std::string unbroken(const std::string& text) {
        std::string result;
        for (const char c : text) result += c == ' ' ? "\u00a0" : std::string(1, c);
        return result;
    }

    /// `24 rounds` of `24 rounds of 22 g · for 12 buns`
    static std::string made_of(const std::string& yield) {
        auto result = yield.substr(0, yield.find(" · "));
        return result.substr(0, result.find(" of "));
    }

    /// Those of every batch once, and before those of one batch which it is.
    std::vector<styles::paragraph> cautions_of(std::size_t i) const {
        std::vector<styles::paragraph> result;
        for (std::size_t b = 0; b < batches_.size(); ++b)
            for (const auto& p : cards_[b][i].cautions) {
                const bool is_of_all =
                    std::all_of(cards_.begin(), cards_.end(), [&](const auto& of_batch) {
                        const auto& all = of_batch[i].cautions;
                        return std::find(all.begin(), all.end(), p) != all.end();
                    });
                auto said = p;
                if (!is_of_all) said.insert(said.begin(), {cards_[b][i].batch + ": ", true});
                if (std::find(result.begin(), result.end(), said) == result.end())
                    result.push_back(std::move(said));
            }
        return result;
    }
};

} // namespace

std::vector<card> deal_columns(const std::vector<batch::batch>& batches) {
    return column_dealer(batches).run();
}

} // namespace benchcard::cards
