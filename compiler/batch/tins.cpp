#include "compiler/batch/tins.hpp"
#include "compiler/batch/orders_of.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/tin_pieces.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::batch {

namespace {

/// To twelve figures, which is a hair's breadth on the largest tin.
const exact pi = exact(314159265359, 100000000000);

/// What two tins are compared by.
struct room {
    enum class sort { area, weight, volume, unknown };
    sort is = sort::unknown;
    exact value = 0; ///< cm², grams or ml
};

exact in_cm(const exact& value, grammar::length_unit in) {
    switch (in) {
    case grammar::length_unit::millimetre:
        return value / 10;
    case grammar::length_unit::inch:
        return value * exact(254, 100);
    case grammar::length_unit::centimetre:
        break;
    }
    return value;
}

/// A length alone is a round tin's; a ring's hole is not known.
room room_over(const grammar::length& l, const std::string& shape) {
    const auto shaped = shape + " " + l.shape;
    if (l.sides.empty() || ingredients::has_word(shaped, {"ring", "tube"})) return {};
    const auto a = in_cm(l.sides.front().high, l.in), b = in_cm(l.sides.back().high, l.in);
    if (l.sides.size() > 1 || ingredients::has_word(shaped, {"square"}))
        return {room::sort::area, a * b};
    return {room::sort::area, a * a * pi / 4};
}

room room_of(const grammar::tin& t, measures::system system) {
    if (const auto* l = std::get_if<grammar::length>(&t.size)) return room_over(*l, t.shape.text);
    const auto& m = std::get<grammar::measure>(t.size);
    if (!m.in) return {};
    if (const auto weight = measures::weight_of(*m.in))
        return {room::sort::weight, m.quantity.high * weight->value};
    if (const auto volume = measures::volume_of(*m.in, system))
        return {room::sort::volume, m.quantity.high * volume->value};
    return {};
}

std::string_view said_sort(room::sort is) {
    switch (is) {
    case room::sort::area:
        return "its size across";
    case room::sort::weight:
        return "the weight of its loaf";
    case room::sort::volume:
        return "what it holds";
    case room::sort::unknown:
        break;
    }
    return "a size of which the area is not known";
}

/// The product's tin, or else the only one that a component names.
std::variant<const grammar::tin*, refusal> tin_of(const recipe::recipe& r) {
    if (r.product().tin) return &*r.product().tin;
    std::vector<std::string> named;
    const grammar::tin* found = nullptr;
    for (const auto& c : r.components) {
        if (!c.tin) continue;
        found = &*c.tin;
        if (const auto said = said_tin(*c.tin);
            std::find(named.begin(), named.end(), said) == named.end())
            named.push_back(said);
    }
    if (named.size() == 1) return found;
    if (named.empty())
        return refusal{"the recipe names no tin, so there is none to compare with",
                       {"say in the recipe what it is baked in: `tin: 23 cm round`"}};
    return refusal{
        fmt::format("the recipe names more than one tin ({}), and none for what it makes",
                    fmt::join(named, ", ")),
        {"name the tin of the last component: `tin: 23 cm round`"}};
}

/// Of a tart the number stays and the size changes, and so it does for the parts of it; of buns in
/// a tin the number changes.
std::vector<exact> pieces_in(const recipe::recipe& r, const exact& ratio) {
    std::vector<exact> each(r.components.size(), exact(1));
    for (auto i = r.components.size(); i-- > 0;) {
        const auto& c = r.components[i];
        if (c.made.pieces && recipe::fills_a_tin_alone(c.made.piece)) each[i] = ratio;
        for (const auto& l : c.lines)
            if (l.component && r.components[*l.component].made.pieces)
                each[*l.component] = each[i] != 1 ? each[i] : each[*l.component];
    }
    return each;
}

std::string said_room(const room& holds) {
    return measures::in_decimals(holds.value, 0) + (holds.is == room::sort::area     ? " cm²"
                                                    : holds.is == room::sort::weight ? " g"
                                                                                     : " ml");
}

} // namespace

std::string said_tin(const grammar::tin& t) {
    const auto number = [](const exact& v) { return measures::with_fraction(v); };
    std::string size;
    std::string shape = t.shape.text;
    if (const auto* l = std::get_if<grammar::length>(&t.size)) {
        for (const auto& side : l->sides) size += (size.empty() ? "" : " × ") + number(side.high);
        size += l->in == grammar::length_unit::inch         ? " in"
                : l->in == grammar::length_unit::millimetre ? " mm"
                                                            : " cm";
        if (shape.empty()) shape = l->shape;
    } else {
        const auto& m = std::get<grammar::measure>(t.size);
        size =
            number(m.quantity.high) + (m.in ? " " + std::string(grammar::short_name(*m.in)) : "");
    }
    return shape.empty() ? size : size + " " + shape;
}

std::variant<answer, refusal> answer_in_tin(const recipe::recipe& r, const in_tin& wanted) {
    const auto found = tin_of(r);
    if (const auto* no = std::get_if<refusal>(&found)) return *no;
    const auto& written = *std::get<const grammar::tin*>(found);
    const auto before = room_of(written, r.measures), now = room_of(wanted.tin, r.measures);
    if (before.is != now.is || before.is == room::sort::unknown || before.value <= 0)
        return refusal{fmt::format("{} and {} cannot be compared: the recipe's tin is given by {}, "
                                   "and this one by {}",
                                   said_tin(written), said_tin(wanted.tin), said_sort(before.is),
                                   said_sort(now.is)),
                       {fmt::format("give both in one way, or a factor: --scale {}", "3/4")}};
    const exact ratio = now.value / before.value;
    answer result{
        ratio,
        {fmt::format("{} holds {}, {} {}: × {}, filled as deep", said_tin(written),
                     said_room(before), said_tin(wanted.tin), said_room(now), said_factor(ratio))}};
    result.each = pieces_in(r, ratio);
    result.tin = wanted.tin;
    return result;
}

} // namespace benchcard::batch
