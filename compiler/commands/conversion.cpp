#include "compiler/commands/conversion.hpp"

#include "compiler/batch/batch.hpp"
#include "compiler/cards/why.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"
#include "grammar/parse.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

std::string in_grams(const exact& value) {
    const auto s = measures::on_a_scale({value});
    return s.figure + " " + s.unit;
}

bool is_range(const recipe::line& l) {
    const auto& amounts = l.written->amounts;
    return std::any_of(amounts.begin(), amounts.end(),
                       [](const auto& a) { return a.quantity.low != a.quantity.high; });
}

/// What is read off a scale of millilitres can hardly be filled in two ways.
bool is_in_a_jug(grammar::unit u) {
    using grammar::unit;
    return u == unit::millilitre || u == unit::centilitre || u == unit::decilitre ||
           u == unit::litre;
}

/// What makes the weight of a line a range; empty where nothing does.
std::string why_a_range(const recipe::line& l) {
    std::string why = is_range(l) ? "how much is meant" : "";
    const auto add = [&](const std::string& more) { why += (why.empty() ? "" : " and ") + more; };
    const auto unit = l.written->amounts.front().in;
    if (l.how == recipe::weighed_by::volume)
        add(unit && is_in_a_jug(*unit)
                ? "source"
                : fmt::format("how the {} is filled",
                              unit ? grammar::short_name(*unit) : "measure"));
    if (l.how == recipe::weighed_by::piece && l.figure && l.figure->low < l.figure->high)
        add("what one weighs");
    return l.how == recipe::weighed_by::weight ? "" : why;
}

/// `281 g (255 to 319 g by how the cup is filled)`
std::string said_weight(const recipe::line& l) {
    auto result = in_grams(l.grams->used);
    if (!l.written->equals.empty()) return result + ", as stated";
    const auto low = in_grams(l.grams->low), high = in_grams(l.grams->high);
    const auto why = why_a_range(l);
    return why.empty() || low == high ? result
                                      : result + fmt::format(" ({} to {} by {})", low, high, why);
}

std::string said_source(const recipe::line& l) {
    if (!l.figure || l.figure->source.empty()) return "";
    return "; source: " + l.figure->source;
}

/// How far cups and spoons are off what was asked: ` (0.4 % over)`; empty under a twentieth of 1 %.
std::string said_error(const exact& relative) {
    const exact percent = measures::rounded_to(abs(relative) * 100, exact(1, 10));
    if (percent == 0) return "";
    return fmt::format(" ({} % {})", measures::in_decimals(percent, 1),
                       relative > 0 ? "over" : "under");
}

/// A weight the other way: in ounces, and in cups and spoons where its density is known.
std::string said_other_ways(const recipe::line& l, measures::system system) {
    std::string result;
    const auto ounces = measures::in_ounces({l.grams->used});
    if (!ounces.empty()) result += ", " + ounces;
    if (l.how != recipe::weighed_by::weight || !l.what) return result;
    const auto density = recipe::density_of(*l.what, l.description);
    if (!density) return result;
    const auto spoons = measures::in_cups_and_spoons({l.grams->used / density->used}, system);
    if (spoons.text.empty()) return result;
    result += ", " + spoons.text + said_error(spoons.relative_error);
    if (!density->figure->source.empty()) result += "; source: " + density->figure->source;
    return result;
}

constexpr std::string_view head = "recipe: Convert\n";

/// A place in the recipe of one line, as a place in that line.
void shift(grammar::span& where) {
    const auto back = static_cast<std::uint32_t>(head.size());
    where.begin -= std::min(where.begin, back);
    where.end -= std::min(where.end, back);
}

/// What helps in a recipe does not help on a command line: there is no head, and nothing is
/// defined.
void help_here(grammar::diagnostic& message, const std::string& amount) {
    if (message.kind == "unsettled-measure")
        message.helps = {{fmt::format("say whose: benchcard convert '{}' --measures us", amount)}};
    for (auto& help : message.helps)
        if (help.text.find("`ingredient: ") != help.text.npos)
            help.text = "in a recipe " + help.text.substr(help.text.starts_with("or ") ? 3 : 0);
}

/// The amount compiled as a recipe of that one line, so that it is weighed just as in a recipe,
/// with its messages at their places in the amount.
std::unique_ptr<compiled> compile_amount(const std::string& amount, measures::system measures) {
    auto result = compile_text("amount", std::string(head) + amount + "\n", measures, read_file);
    for (auto& message : result->messages) {
        shift(message.where);
        for (auto& note : message.notes)
            if (note.where) shift(*note.where);
        for (auto& help : message.helps)
            for (auto& edit : help.edits) shift(edit.where);
        help_here(message, amount);
    }
    return result;
}

} // namespace

std::string said_every_way(const recipe::line& l, measures::system system) {
    return said_weight(l) + said_other_ways(l, system) +
           (l.how == recipe::weighed_by::weight ? "" : said_source(l));
}

conversion convert_amount(const std::string& amount, measures::system measures) {
    const grammar::source text(0, "amount", amount);
    auto alone = grammar::parse_ingredient_line(text);
    if (!alone.line) return {{}, {}, false, std::move(alone.messages)};

    const auto c = compile_amount(amount, measures);
    const bool is_line = c->meaning.has_product && !c->meaning.product().lines.empty();
    conversion result{{}, {}, is_line, std::move(c->messages)};
    if (!is_line || grammar::has_errors(result.messages)) return result;
    const auto& l = c->meaning.product().lines.front();
    if (!l.grams) return result;
    result.weight = said_every_way(l, c->meaning.measures);
    const auto batch = batch::scale(c->meaning, 1);
    const auto& made = batch.components.back();
    result.why = cards::why_of(made.lines.front(), made, batch);
    return result;
}

} // namespace benchcard::commands
