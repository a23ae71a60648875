#include "compiler/batch/fit.hpp"
#include "compiler/batch/orders_of.hpp"
#include "compiler/checks/composition.hpp"
#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace benchcard::batch {

bool is_of_base(const recipe::line& l, const std::vector<std::string>& wanted) {
    auto words = ingredients::compared_words(l.name);
    if (l.what)
        for (auto& w : ingredients::compared_words(l.what->name)) words.push_back(std::move(w));
    return std::all_of(wanted.begin(), wanted.end(), [&](const auto& w) {
        return std::find(words.begin(), words.end(), w) != words.end();
    });
}

namespace {

std::set<std::string> bases_of(const recipe::recipe& r) {
    std::set<std::string> result;
    for (const auto& c : r.components)
        if (c.percent) result.insert(c.percent->text);
    return result;
}

/// The components with percentages, and the preferments that go into them unbaked.
std::vector<bool> doughs_of(const recipe::recipe& r) {
    std::vector<bool> result(r.components.size(), false);
    for (auto i = r.components.size(); i-- > 0;) { // each after all that use it
        const auto& c = r.components[i];
        if (c.percent) result[i] = true;
        if (!result[i]) continue;
        for (const auto& l : c.lines) {
            if (!l.component) continue;
            const auto& losses = r.components[*l.component].losses;
            if (std::none_of(losses.begin(), losses.end(), recipe::is_after_portioning))
                result[*l.component] = true;
        }
    }
    return result;
}

} // namespace

std::variant<answer, refusal> answer_of_base(const recipe::recipe& r, const of_base& wanted_base,
                                             fit how) {
    const auto bases = bases_of(r);
    if (bases.empty())
        return refusal{"no component says what its percentages are of, so there is no flour to "
                       "order by",
                       {"say it in the component with the dough: `percent: flour`"}};
    if (bases.size() > 1)
        return refusal{fmt::format("the percentages here are of {}, and an order is by one of them",
                                   fmt::join(bases, " and of ")),
                       {"order by a factor: --scale 2"}};
    const auto& base = *bases.begin();
    const auto wanted = ingredients::compared_words(base);
    const auto factors = exact_factors_for(r, 1, how);
    const auto doughs = doughs_of(r);
    exact total = 0;
    for (std::size_t i = 0; i < r.components.size(); ++i)
        if (doughs[i])
            for (const auto& l : r.components[i].lines)
                if (l.grams && !l.component && is_of_base(l, wanted) && !checks::is_set_aside(l))
                    total += l.grams->used * r.components[i].times * factors[i];
    if (total == 0) return refusal{fmt::format("what the {} here weighs is not known", base), {}};
    const exact factor = wanted_base.grams / total;
    return answer{
        factor,
        {fmt::format("{}: {}, where the recipe takes {}: × {}", base,
                     said_weight(wanted_base.grams), said_weight(total), said_factor(factor))}};
}

} // namespace benchcard::batch
