#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/wrong_line.hpp"
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

/// `281 g (255 to 319 g by how the cup is filled)`
std::string said_weight(const recipe::line& l) {
    auto result = in_grams(l.grams->used);
    const auto low = in_grams(l.grams->low), high = in_grams(l.grams->high);
    if (l.how != recipe::weighed_by::volume || low == high) return result;
    const auto unit = l.written->amounts.front().in;
    return result + fmt::format(" ({} to {} by {}how the {} is filled)", low, high,
                                is_range(l) ? "how much is meant and " : "",
                                unit ? grammar::short_name(*unit) : "measure");
}

std::string said_source(const recipe::line& l) {
    if (!l.figure || l.figure->source.empty()) return "";
    return "; source: " + l.figure->source;
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
    result += ", " + spoons.text;
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
std::unique_ptr<compiled> compile_amount(const convert_options& options) {
    auto result = compile_text("amount", std::string(head) + options.amount + "\n",
                               options.measures, read_file);
    for (auto& message : result->messages) {
        shift(message.where);
        for (auto& note : message.notes)
            if (note.where) shift(*note.where);
        help_here(message, options.amount);
    }
    return result;
}

/// Prints messages whose places are in the amount itself.
void print_in(const grammar::source& text, grammar::diagnostics messages) {
    compiled shown;
    shown.files.sources.push_back(text);
    shown.messages = std::move(messages);
    print_messages(shown);
}

/// Says what is wrong with a text that is not read as an amount of an ingredient.
int refuse(const grammar::source& text, const grammar::diagnostics& messages) {
    // That there is no amount at all is better said as one sentence without a place.
    const bool is_other = messages.empty() || messages.front().kind == "unreadable-line" ||
                          messages.front().kind == "unreadable-amount";
    if (is_other)
        print_wrong_line({fmt::format("`{}` is not an amount of an ingredient", text.text()),
                          {"the amount comes first, then the ingredient: benchcard convert '2 1/4 "
                           "cups plain flour'"}});
    else
        print_in(text, messages);
    return not_run;
}

int refuse_line(std::string message) {
    print_wrong_line(
        {std::move(message), {"for example: benchcard convert '2 1/4 cups plain flour'"}});
    return not_run;
}

} // namespace

int convert(const convert_options& options) {
    if (options.amount.find('\n') != std::string::npos)
        return refuse_line("convert takes one amount, on one line");
    if (grammar::first_not_utf8(options.amount) != std::string::npos)
        return refuse_line("the amount is not UTF-8 text");
    const grammar::source text(0, "amount", options.amount);
    const auto alone = grammar::parse_ingredient_line(text);
    if (!alone.line) return refuse(text, alone.messages);

    const auto c = compile_amount(options);
    print_in(text, c->messages);
    if (grammar::has_errors(c->messages)) return recipe_errors;
    if (!c->meaning.has_product || c->meaning.product().lines.empty()) return refuse(text, {});
    const auto& l = c->meaning.product().lines.front();
    if (!l.grams) {
        complain(fmt::format("benchcard: what `{}` weighs is not known\n", options.amount));
        return recipe_errors;
    }
    const auto line = fmt::format("{} = {}{}{}\n", options.amount, said_weight(l),
                                  said_other_ways(l, c->meaning.measures),
                                  l.how == recipe::weighed_by::weight ? "" : said_source(l));
    if (const auto failure = write_file("-", line)) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
