#include "compiler/cards/figures.hpp"

#include "compiler/batch/split.hpp"
#include "compiler/batch/whole.hpp"
#include "compiler/cards/counted_name.hpp"
#include "compiler/ingredients/names.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/ranges.hpp"
#include "compiler/recipe/weighing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::cards {

namespace {

using batch::weigh_line;
using measures::grams;
using measures::millilitres;

bool is_whole(const exact& value) { return measures::whole_part(value) == value; }

/// How far the nearest part that a cook cuts is from a number, as a share of it.
exact cut_error(const exact& number) { return abs(measures::as_cut(number) - number) / number; }

/// Whether part of a counted thing is put on the scale: powder in sachets, less than one egg, and
/// less of a lemon than is cut.
bool is_weighed_in_part(const weigh_line& l) {
    constexpr int coarsest = 15; // percent, between the quarters and thirds that a cook cuts
    if (!l.grams || l.of->component || l.low_part != l.high_part || is_whole(l.count->used))
        return false;
    switch (batch::parting_of(*l.of)) {
    case batch::parting::whole:
        return l.count->used < 1;
    case batch::parting::weighed:
        return true;
    case batch::parting::cut:
        return cut_error(l.count->used) * 100 > coarsest;
    }
    return false;
}

/// A range as written, scaled: each end shown for itself, in the unit of the higher.
template <typename Show>
measures::shown shown_range(const weigh_line& l, const exact& used, Show show) {
    if (l.low_part == l.high_part) return show(used);
    const auto low = show(used * l.low_part);
    auto high = show(used * l.high_part);
    if (low.unit == high.unit) high.figure = measures::range_of(low.figure, high.figure, "");
    return high;
}

measures::shown shown_grams(const weigh_line& l, const recipe::recipe& r) {
    return shown_range(l, l.grams->used, [&](const exact& v) {
        return measures::on_a_scale(grams{v}, r.scale_step);
    });
}

measures::shown shown_ml(const weigh_line& l) {
    return shown_range(l, l.ml->used,
                       [](const exact& v) { return measures::in_a_jug(millilitres{v}); });
}

/// A number as a cook cuts it; less than an eighth as it is.
exact cut_number(const exact& v) { return v * 8 < 1 ? v : measures::as_cut(v); }

measures::shown shown_count(const weigh_line& l) {
    // Half a case of a tart is a matter of the order; half a lemon one of the knife.
    const bool is_piece = l.of->component.has_value();
    return shown_range(l, counted_number(l), [&](const exact& v) {
        return measures::shown{measures::with_fraction(is_piece ? v : cut_number(v)), ""};
    });
}

/// The volume a cook would measure of a line, where one would: known density, no more than a jug.
std::optional<exact> cook_volume(const weigh_line& l) {
    if (l.ml) return l.ml->used;
    if (!l.of->what || !l.grams) return std::nullopt;
    const auto density = recipe::density_of(*l.of->what, l.of->description);
    if (!density) return std::nullopt;
    return exact(l.grams->used / density->used);
}

/// Whether a cook would take cups or spoons to it: where the recipe does, where its measures have
/// a cup at all, and for what is too light for most scales.
bool suits_spoons(const weigh_line& l, const recipe::recipe& r) {
    constexpr int lightest_to_weigh = 10; // grams
    return l.ml || measures::volume_of(grammar::unit::cup, r.measures) ||
           (l.grams && (l.grams->used < lightest_to_weigh ||
                        !measures::scale_shows(l.grams->used, r.scale_step)));
}

bool is_packed(const recipe::line& l) {
    const auto& amounts = l.written->amounts;
    return std::any_of(amounts.begin(), amounts.end(),
                       [](const auto& m) { return m.filled == grammar::filling::packed; });
}

std::string spoons_of(const weigh_line& l, const recipe::recipe& r) {
    const auto volume = cook_volume(l);
    constexpr int most_ml = 1200; // above that a cook weighs or uses a jug
    if (!volume || *volume > most_ml || !suits_spoons(l, r)) return "";
    const auto measured = measures::in_cups_and_spoons(millilitres{*volume}, r.measures);
    const exact error =
        measured.relative_error < 0 ? exact(-measured.relative_error) : measured.relative_error;
    if (measured.text.empty() || error > exact(1, 10)) return "";
    // A cup that is not packed holds a third less.
    const auto text = measured.text + (l.ml && is_packed(*l.of) ? " packed" : "");
    return error > exact(3, 100) ? "about " + text : text;
}

} // namespace

std::string said_pieces(const exact& number, const std::string& piece) {
    return measures::with_fraction(number) + " " +
           (number > 1 ? ingredients::plural(piece) : piece);
}

std::string said_grams(const exact& value) {
    const auto s = measures::on_a_scale(grams{value});
    return s.figure + " " + s.unit;
}

given how_given(const weigh_line& l) {
    if (l.of->some) return given::nothing;
    if (l.count) return is_weighed_in_part(l) ? given::weighed : given::counted;
    if (l.ml && (!l.grams || l.of->component || (l.of->what && l.of->what->poured)))
        return given::poured;
    return l.grams ? given::weighed : given::nothing;
}

exact counted_number(const weigh_line& l) {
    if (const auto parts = batch::whole_and_rest_of(l)) return parts->whole;
    const bool is_cut = !l.of->component && l.low_part == l.high_part;
    return is_cut ? cut_number(l.count->used) : l.count->used;
}

std::string rest_of(const weigh_line& l, const recipe::recipe& r) {
    const auto parts = batch::whole_and_rest_of(l);
    if (!parts || how_given(l) != given::counted) return "";
    const auto s = measures::on_a_scale({parts->rest_grams}, r.scale_step);
    return fmt::format("{} {} {}", s.figure, s.unit, name_of_part(*l.of));
}

namespace {

/// What a piece weighs as it comes to this bench: after its oven, where it has been in one.
std::string said_each(const weigh_line& l, const recipe::component& used) {
    if (!l.grams) return said_grams(used.made.each->used) + " each";
    const bool is_baked =
        used.baked && used.made.grams && used.baked->used != used.made.grams->used;
    return said_grams(l.grams->used / l.count->used) + (is_baked ? " each, baked" : " each");
}

/// What is counted is named: the pieces of a component, or what stands before an equals sign.
std::string counted_unit(const weigh_line& l, const recipe::recipe& r) {
    if (l.of->component && !l.of->description.empty()) {
        const auto& piece = r.components[*l.of->component].made.piece;
        return l.count->used > 1 ? ingredients::plural(piece) : piece;
    }
    const auto& piece = l.of->written->piece;
    return piece ? in_number(piece->text, counted_number(l) > 1) : "";
}

measures::shown shown_amount(const weigh_line& l, const recipe::recipe& r) {
    switch (how_given(l)) {
    case given::counted:
        return {shown_count(l).figure, counted_unit(l, r)};
    case given::poured:
        return shown_ml(l);
    case given::weighed:
        return shown_grams(l, r);
    case given::nothing:
        return {};
    }
    return {};
}

/// A range that is wider than 5 % of what is reckoned with; empty for a narrower one, and for one
/// that rounding closes.
template <typename Show> std::string wide_range(const recipe::spread& of, Show show) {
    if ((of.high - of.low) * 20 <= of.used) return "";
    const auto low = show(of.low), high = show(of.high);
    if (low == high) return "";
    if (low.unit != high.unit)
        return fmt::format("{} {} to {} {}", low.figure, low.unit, high.figure, high.unit);
    return measures::range_of(low.figure, high.figure, " " + high.unit);
}

std::string wide_grams(const recipe::spread& of) {
    return wide_range(of, [](const exact& v) { return measures::on_a_scale(grams{v}); });
}

std::string wide_ml(const recipe::spread& of) {
    return wide_range(of, [](const exact& v) { return measures::in_a_jug(millilitres{v}); });
}

/// The range that filling the measure in other ways gives.
std::string said_spread(const weigh_line& l, given how) {
    const bool is_stated = !l.of->written->equals.empty();
    if (l.of->how != recipe::weighed_by::volume || is_stated || l.low_part != l.high_part)
        return "";
    const auto range = how == given::poured ? wide_ml(*l.ml) : wide_grams(*l.grams);
    return range.empty() ? "" : range + " as filled";
}

/// What counted things weigh, with the range where their weights differ.
std::string said_counted(const weigh_line& l) {
    const auto range = l.low_part == l.high_part ? wide_grams(*l.grams) : "";
    return range.empty() ? said_grams(l.grams->used) : range;
}

/// What is opened for a weight that is part of a counted thing: `1 beaten, then weighed`.
std::string said_opened(const weigh_line& l) {
    const auto whole = measures::whole_part(l.count->used) + 1;
    const auto number = measures::in_decimals(whole, 0);
    return is_beaten(*l.of) ? number + " beaten, then weighed" : "from " + number;
}

/// What counted things weigh, and that their number is a near one.
std::string said_counted_as_cut(const weigh_line& l) {
    const auto weight = l.grams ? said_counted(l) : "";
    const bool is_near = l.low_part != l.high_part || batch::whole_and_rest_of(l) ||
                         cut_error(l.count->used) * 100 <= 3;
    if (is_near) return weight;
    return "about this many" + (weight.empty() ? "" : ", " + weight + " in all");
}

std::string remark_of(const weigh_line& l, const recipe::recipe& r, given how) {
    const bool is_about = l.of->written->amounts.front().quantity.about && how != given::nothing;
    if (is_about && !l.count && l.of->how != recipe::weighed_by::volume) return "about this much";
    if (how == given::weighed) return l.count ? said_opened(l) : said_spread(l, how);
    if (how == given::poured) return said_spread(l, how);
    if (how != given::counted) return "";
    if (l.of->component && !l.of->description.empty()) {
        const auto& used = r.components[*l.of->component];
        return used.made.each ? said_each(l, used) : "";
    }
    return said_counted_as_cut(l);
}

/// That the scale of the house cannot show a weight, where no spoon can measure it either.
bool is_too_fine(const weigh_line& l, const recipe::recipe& r, const figures& f, given how) {
    return how == given::weighed && f.spoons.empty() &&
           !measures::scale_shows(l.grams->used, r.scale_step);
}

std::string imperial_of(const weigh_line& l, const recipe::recipe& r, given how) {
    if (how == given::poured)
        if (auto fluid = measures::in_fluid_ounces(millilitres{l.ml->used}, r.measures);
            !fluid.empty())
            return fluid;
    const bool by_weight = how == given::poured || how == given::weighed;
    return by_weight && l.grams ? measures::in_ounces(grams{l.grams->used}) : "";
}

} // namespace

figures figures_of(const weigh_line& l, const recipe::recipe& r) {
    const auto how = how_given(l);
    auto shown = shown_amount(l, r);
    figures result{std::move(shown.figure), std::move(shown.unit), imperial_of(l, r, how), "",
                   remark_of(l, r, how),    rest_of(l, r)};
    if (how == given::poured || (how == given::weighed && !l.count))
        result.spoons = spoons_of(l, r);
    // Ounces and cups are of the middle of a range.
    if (l.low_part != l.high_part)
        for (auto* text : {&result.imperial, &result.spoons})
            if (!text->empty() && !text->starts_with("about ")) *text = "about " + *text;
    if (is_too_fine(l, r, result, how))
        result.remark += (result.remark.empty() ? "" : "; ") +
                         fmt::format("finer than the scale's {}", said_grams(*r.scale_step));
    return result;
}

std::string said(const weigh_line& l, const recipe::recipe& r) {
    const auto s = shown_amount(l, r);
    const auto amount = s.unit.empty() ? s.figure : s.figure + " " + s.unit;
    const auto rest = rest_of(l, r);
    return rest.empty() ? amount : amount + " + " + rest;
}

weigh_line part_of(const weigh_line& l, const exact& factor) {
    auto result = l;
    for (auto* value : {&result.grams, &result.ml, &result.count})
        if (*value) *value = **value * factor;
    return result;
}

} // namespace benchcard::cards
