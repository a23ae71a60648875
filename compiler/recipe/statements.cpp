#include "compiler/recipe/statements.hpp"

#include "compiler/recipe/weighing.hpp"
#include "grammar/settings.hpp"

#include <algorithm>

namespace benchcard::recipe {

using grammar::block;
using grammar::key;

bool has_lines(const block& b) {
    return std::any_of(b.items.begin(), b.items.end(), [](const auto& i) {
        return std::holds_alternative<grammar::ingredient_line>(i.value) ||
               std::holds_alternative<grammar::step>(i.value);
    });
}

std::optional<exact> grams_of(const grammar::measure& m) {
    const auto unit = m.in ? measures::weight_of(*m.in) : std::nullopt;
    return unit ? std::optional<exact>(spread_of(m.quantity).used * unit->value) : std::nullopt;
}

version version_of(const grammar::tree& file) {
    version result;
    for (const auto& b : file.blocks)
        each_setting(b, [&](const grammar::setting& s) {
            if (s.name == key::revision) result.revision = std::get<grammar::words>(s.value).text;
            if (s.name == key::date) result.date = std::get<grammar::words>(s.value).text;
        });
    return result;
}

component stated_component(const block& b) {
    component c;
    c.title = b.title.text;
    c.written = &b;
    c.is_assembly = b.is == block::sort::assembly;
    each_setting(b, [&](const grammar::setting& s) {
        switch (s.name) {
        case key::station:
            if (c.station.empty()) c.station = std::get<grammar::words>(s.value).text;
            break;
        case key::makes:
            c.makes = std::get<grammar::yield>(s.value), c.makes_where = s.value_where;
            break;
        case key::per:
            c.per = std::get<grammar::yield>(s.value), c.per_where = s.value_where;
            break;
        case key::tray:
            c.tray = std::get<grammar::yield>(s.value);
            break;
        case key::tin:
            c.tin = std::get<grammar::tin>(s.value);
            break;
        case key::whole_batch:
            c.whole_batch = std::get<bool>(s.value);
            break;
        case key::at_most:
            c.at_most = grams_of(std::get<grammar::measure>(s.value));
            break;
        case key::at_least:
            c.at_least = grams_of(std::get<grammar::measure>(s.value));
            break;
        case key::accept:
            c.accepts.push_back(accepted_by(s));
            break;
        case key::percent:
            c.percent = std::get<grammar::words>(s.value);
            break;
        case key::note:
            c.notes.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::caution:
            c.cautions.push_back(std::get<grammar::words>(s.value).text);
            break;
        case key::loss:
            for (const auto& l : std::get<std::vector<grammar::loss>>(s.value))
                c.losses.push_back(l);
            break;
        case key::keeps:
            for (const auto& k : std::get<std::vector<grammar::keeping>>(s.value))
                c.keeps.push_back(k);
            break;
        default:
            break;
        }
    });
    return c;
}

bool may_bear_on_weight(std::string_view line) {
    const auto first = line.find_first_not_of(" \t");
    if (first == line.npos) return false;
    line.remove_prefix(first);
    const auto digits = line.find_first_not_of("0123456789");
    const bool is_numbered = digits != 0 && digits != line.npos &&
                             (line[digits] == '.' || line[digits] == ')') &&
                             digits + 1 < line.size() && line[digits + 1] == ' ';
    if (is_numbered || line.front() == '-' || line.front() == '*' || line.starts_with("•"))
        return false;
    const auto* setting = grammar::setting_named(line.substr(0, line.find(':')));
    if (!setting || line.find(':') == line.npos) return true;
    return setting->name == key::makes || setting->name == key::loss || setting->name == key::per;
}

std::vector<std::string> unread_in(const block& b, const grammar::source& file) {
    std::vector<std::string> result;
    for (const auto& item : b.items)
        if (const auto* u = std::get_if<grammar::unread>(&item.value))
            result.emplace_back(file.text_of(u->where));
    return result;
}

accepted accepted_by(const grammar::setting& s) {
    const auto& said = std::get<grammar::words>(s.value);
    const auto comma = std::min(said.text.find(','), said.text.size());
    auto kind = said.text.substr(0, comma);
    kind.erase(kind.find_last_not_of(' ') + 1);
    const auto begin = said.text.find_first_not_of(" ,", comma);
    return {kind,
            begin == said.text.npos ? "" : said.text.substr(begin),
            {said.where.file, said.where.begin,
             said.where.begin + static_cast<std::uint32_t>(kind.size())}};
}

} // namespace benchcard::recipe
