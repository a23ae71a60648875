#include "compiler/batch/batch.hpp"

#include "compiler/recipe/weighing.hpp"

namespace benchcard::batch {

namespace {

using recipe::spread;

std::optional<spread> times(const std::optional<spread>& s, const exact& factor) {
    return s ? std::optional(*s * factor) : std::nullopt;
}

std::optional<exact> used(const std::optional<spread>& s, const exact& factor) {
    return s ? std::optional<exact>(s->used * factor) : std::nullopt;
}

weigh_line weighed(const recipe::line& l, const exact& factor) {
    weigh_line result{&l, times(l.grams, factor), times(l.ml, factor), times(l.count, factor), 1,
                      1};
    const auto& amounts = l.written->equals.empty() ? l.written->amounts : l.written->equals;
    if (amounts.size() != 1 || l.some) return result;
    const auto s = recipe::spread_of(amounts.front().quantity);
    if (s.used > 0) result.low_part = s.low / s.used, result.high_part = s.high / s.used;
    return result;
}

/// What all that use a component take of it, in this batch; nothing where one of them does not say.
struct taken {
    std::optional<exact> pieces = exact(0), grams = exact(0), share = exact(0);
};

void add(std::optional<exact>& total, const std::optional<exact>& more, const exact& factor) {
    if (total) total = more ? std::optional<exact>(*total + *more * factor) : std::nullopt;
}

taken taken_of(const recipe::demand& d, const std::vector<exact>& factors, const exact& each) {
    taken all;
    for (const auto& u : d.users) {
        const auto& factor = factors[u.component];
        add(all.pieces, u.pieces, factor / each);
        add(all.grams, u.grams, factor);
        add(all.share, u.share, factor);
    }
    return all;
}

void leave_over(component_batch& b, const recipe::demand& d, const taken& all) {
    if (d.users.empty()) return;
    if (b.pieces && all.pieces) b.left_pieces = *b.pieces - *all.pieces;
    if (b.baked && all.grams)
        b.left_grams = *b.baked - *all.grams;
    else if (b.baked && all.share)
        b.left_grams = *b.baked / b.factor * (b.factor - *all.share);
}

component_batch one_of(const recipe::component& c, const exact& factor,
                       const std::vector<exact>& each, std::size_t index) {
    component_batch b;
    b.of = &c;
    b.factor = factor;
    b.each = each[index];
    b.times = c.times * factor;
    for (const auto& l : c.lines) {
        b.lines.push_back(weighed(l, b.times));
        auto& count = b.lines.back().count;
        if (l.component && count) count = *count * exact(1 / each[*l.component]);
    }
    b.mix = used(c.mix, factor);
    b.ready = used(c.ready, factor);
    b.baked = used(c.baked, factor);
    b.pieces = used(c.made.pieces, factor / b.each);
    b.made_grams = used(c.made.grams, factor);
    return b;
}

} // namespace

batch scale_each(const recipe::recipe& r, const std::vector<exact>& factors,
                 const std::vector<exact>& each) {
    const auto pieces = each.empty() ? std::vector<exact>(factors.size(), exact(1)) : each;
    batch result{&r, factors.back(), {}, {}, {}};
    const auto demands = recipe::demands_of(r);
    for (std::size_t i = 0; i < r.components.size(); ++i) {
        auto b = one_of(r.components[i], factors[i], pieces, i);
        leave_over(b, demands[i], taken_of(demands[i], factors, pieces[i]));
        result.components.push_back(std::move(b));
    }
    return result;
}

batch scale(const recipe::recipe& r, const exact& factor) {
    return scale_each(r, std::vector<exact>(r.components.size(), factor));
}

} // namespace benchcard::batch
