#include "compiler/recipe/demand.hpp"

#include <algorithm>
#include <tuple>

namespace benchcard::recipe {

namespace {

demand::user user_of(const recipe& r, std::size_t component_index, std::size_t line_index) {
    const auto& c = r.components[component_index];
    const auto& l = c.lines[line_index];
    const auto& [made, baked] =
        std::tie(r.components[*l.component].made, r.components[*l.component].baked);
    demand::user u{component_index, line_index, {}, {}, {}};
    if (l.grams) u.grams = l.grams->used * c.times;
    if (l.share) {
        u.share = *l.share * c.times;
        if (made.pieces) u.pieces = made.pieces->used * *u.share;
    } else if (l.count && made.pieces) {
        u.pieces = l.count->used * c.times;
    } else if (l.count && made.piece.empty()) {
        u.share = l.count->used * c.times; // `1 Custard`: the whole of it
        if (baked) u.grams = baked->used * *u.share;
    } else if (l.ml && made.ml) {
        u.share = l.ml->used * c.times / *made.ml;
    }
    return u;
}

template <typename Get>
std::optional<exact> total_of(const std::vector<demand::user>& users, Get get) {
    exact total = 0;
    for (const auto& u : users) {
        const auto value = get(u);
        if (!value) return std::nullopt;
        total += *value;
    }
    return total;
}

} // namespace

std::vector<demand> demands_of(const recipe& r) {
    std::vector<demand> result(r.components.size());
    for (std::size_t c = 0; c < r.components.size(); ++c)
        for (std::size_t l = 0; l < r.components[c].lines.size(); ++l) {
            const auto& line = r.components[c].lines[l];
            if (line.component && !line.some)
                result[*line.component].users.push_back(user_of(r, c, l));
        }
    for (std::size_t i = 0; i < result.size(); ++i) {
        auto& d = result[i];
        const auto& made = r.components[i].made;
        d.pieces = total_of(d.users, [](const auto& u) { return u.pieces; });
        d.grams = total_of(d.users, [](const auto& u) { return u.grams; });
        if (made.pieces) d.made_pieces = made.pieces->used;
        if (r.components[i].baked) d.made_grams = r.components[i].baked->used;
        if (d.pieces && d.made_pieces) d.left_pieces = *d.made_pieces - *d.pieces;
        if (d.grams && d.made_grams) d.left_grams = *d.made_grams - *d.grams;
        if (const auto share = total_of(d.users, [](const auto& u) { return u.share; });
            share && !d.left_grams && d.made_grams)
            d.left_grams = *d.made_grams * (1 - *share);
    }
    return result;
}

} // namespace benchcard::recipe
