#include "compiler/batch/fit.hpp"

#include "compiler/measures/kitchen.hpp"

namespace benchcard::batch {

namespace {

using recipe::demand;

/// What a bowl keeps, of a batch that is meant to be used up: as `left-over` on the cards.
const exact kept_by_the_bowl = exact(1, 50);

exact rounded_up(const exact& value) {
    const auto whole = measures::whole_part(value);
    return whole == value ? whole : exact(whole + 1);
}

/// What one use takes of a component, as a share of its written batch.
std::optional<exact> share_of(const demand& d, const demand::user& u) {
    if (d.pieces && d.made_pieces && *d.made_pieces > 0) return exact(*u.pieces / *d.made_pieces);
    if (d.grams && d.made_grams && *d.made_grams > 0) return exact(*u.grams / *d.made_grams);
    return u.share;
}

/// How often the written batch is needed, by what uses it; nothing where that is not known.
std::optional<exact> needed(const demand& d, const std::vector<exact>& factors, bool keeps_margin) {
    exact written = 0, now = 0;
    for (const auto& u : d.users) {
        const auto share = share_of(d, u);
        if (!share) return std::nullopt;
        written += *share;
        now += *share * factors[u.component];
    }
    if (written == 0) return std::nullopt;
    const bool is_used_up = written <= 1 && written >= 1 - kept_by_the_bowl;
    return is_used_up && keeps_margin ? exact(now / written) : now;
}

std::vector<exact> worked_out(const recipe::recipe& r, const exact& factor, fit how,
                              bool in_proportion) {
    std::vector<exact> result(r.components.size(), factor);
    const auto demands = recipe::demands_of(r);
    for (auto i = r.components.size(); i-- > 0;) { // each after all that use it
        const auto& c = r.components[i];
        const bool is_whole = c.whole_batch || (how == fit::whole && !c.is_assembly);
        if (how != fit::written)
            if (const auto share = needed(demands[i], result, in_proportion || !is_whole))
                result[i] = *share;
        if (is_whole && how != fit::written && !in_proportion) result[i] = rounded_up(result[i]);
    }
    return result;
}

} // namespace

std::vector<exact> factors_for(const recipe::recipe& r, const exact& factor, fit how) {
    return worked_out(r, factor, how, false);
}

std::vector<exact> exact_factors_for(const recipe::recipe& r, const exact& factor, fit how) {
    return worked_out(r, factor, how, true);
}

} // namespace benchcard::batch
