#include "compiler/checks/places.hpp"

#include <algorithm>

namespace benchcard::checks {

bool overlap(grammar::span a, grammar::span b) {
    return a.file == b.file && a.begin < b.end && b.begin < a.end;
}

place_set::place_set(std::vector<grammar::span> places) {
    std::sort(places.begin(), places.end(),
              [](const auto& a, const auto& b) { return a.begin < b.begin; });
    for (const auto& p : places) {
        auto& in_file = by_file_[p.file];
        const auto before = in_file.empty() ? 0 : in_file.back().last_end;
        in_file.push_back({p.begin, std::max(before, p.end)});
    }
}

bool place_set::meets(grammar::span where) const {
    const auto file = by_file_.find(where.file);
    if (file == by_file_.end()) return false;
    const auto& all = file->second;
    const auto behind = std::partition_point(all.begin(), all.end(),
                                             [&](const auto& s) { return s.begin < where.end; });
    return behind != all.begin() && (behind - 1)->last_end > where.begin;
}

line_places::line_places(const recipe::recipe& r) {
    for (std::size_t i = 0; i < r.components.size(); ++i)
        for (const auto& l : r.components[i].lines)
            by_begin_.insert({{l.where.file, l.where.begin}, {l.where, i}});
}

std::optional<std::size_t> line_places::component_at(grammar::span where) const {
    auto behind = by_begin_.lower_bound({where.file, where.end});
    if (behind == by_begin_.begin()) return std::nullopt;
    const auto& last = std::prev(behind)->second;
    if (!overlap(last.where, where)) return std::nullopt;
    return last.component;
}

} // namespace benchcard::checks
