#include "compiler/cards/equipment.hpp"

#include "compiler/cards/figures.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/duration.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <fmt/format.h>

namespace benchcard::cards {

namespace {

std::string said_size(const grammar::tin& t) {
    if (const auto* l = std::get_if<grammar::length>(&t.size))
        return measures::shown_length(l->sides, l->in);
    const auto& m = std::get<grammar::measure>(t.size);
    return fmt::format("{} {}", measures::with_fraction(m.quantity.low),
                       grammar::short_name(*m.in));
}

std::string said_tray(const grammar::yield& y) {
    if (!y.count) return "";
    const auto number = recipe::spread_of(*y.count).used;
    return y.piece ? said_pieces(number, ingredients::singular(y.piece->text))
                   : measures::with_fraction(number);
}

} // namespace

styles::paragraph equipment_of(const recipe::component& c,
                               const std::optional<grammar::tin>& instead) {
    styles::paragraph p;
    if (c.tin) {
        const auto& tin = instead ? *instead : *c.tin;
        const auto& shape = tin.shape.text;
        p.push_back({"Tin ", false});
        p.push_back({said_size(tin) + (shape.empty() ? "" : " " + shape), true});
    }
    const auto tray = c.tray ? said_tray(*c.tray) : "";
    if (tray.empty()) return p;
    if (!p.empty()) p.push_back({" · ", false});
    p.push_back({tray, true});
    p.push_back({" a tray", false});
    return p;
}

} // namespace benchcard::cards
