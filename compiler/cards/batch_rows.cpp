#include "compiler/cards/batch_rows.hpp"

#include "compiler/measures/kitchen.hpp"

namespace benchcard::cards {

namespace {

std::string amount_of(const styles::weigh_row& row) {
    return row.amount + (row.amount.empty() || row.unit.empty() ? "" : " ") + row.unit;
}

std::string mix_of(const batch::component_batch& c) {
    if (!c.mix) return "";
    const auto s = measures::on_a_scale({*c.mix});
    return s.figure + " " + s.unit;
}

} // namespace

std::vector<batch_row> batch_rows(const std::vector<batch::batch>& batches,
                                  const std::vector<std::vector<styles::card>>& cards,
                                  std::size_t component) {
    const auto& all = batches.front().of->components;
    const auto& lines = all[component].lines;
    std::vector<batch_row> rows;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto& l = lines[i];
        batch_row row{l.component ? all[*l.component].title : l.name, l.preparation, {}};
        for (const auto& of_batch : cards) {
            const auto& weigh_out = of_batch[component].weigh_out;
            row.cells.push_back(i < weigh_out.size() ? amount_of(weigh_out[i]) : "");
        }
        rows.push_back(std::move(row));
    }
    batch_row mix{"mix", "", {}};
    for (const auto& b : batches) mix.cells.push_back(mix_of(b.components[component]));
    rows.push_back(std::move(mix));
    return rows;
}

} // namespace benchcard::cards
