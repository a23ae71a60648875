#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/recipe/weighing.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

namespace {

std::string in_grams(const exact& value) {
    const auto s = measures::on_a_scale({value});
    return s.figure + " " + s.unit;
}

/// `281 g (255 to 319 g by how the cup is filled)`
std::string said_weight(const recipe::line& l) {
    auto result = in_grams(l.grams->used);
    if (l.how != recipe::weighed_by::volume || l.grams->low == l.grams->high) return result;
    const auto unit = l.written->amounts.front().in;
    return result + fmt::format(" ({} to {} by how the {} is filled)", in_grams(l.grams->low), in_grams(l.grams->high),
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
    if (!spoons.text.empty()) result += ", " + spoons.text;
    if (!density->figure->source.empty()) result += "; source: " + density->figure->source;
    return result;
}

/// A recipe of one line, so that an amount is read and weighed just as in a recipe.
std::string recipe_of(const std::string& amount) { return "recipe: Convert\n" + amount + "\n"; }

} // namespace

int convert(const convert_options& options) {
    if (options.amount.find('\n') != std::string::npos) {
        fmt::print(stderr, "benchcard: one amount at a time\n");
        return not_run;
    }
    const auto c = compile_text("convert", recipe_of(options.amount), options.measures, read_file);
    print_messages(*c, stderr);
    if (grammar::has_errors(c->messages)) return recipe_errors;
    if (!c->meaning.has_product || c->meaning.product().lines.empty()) {
        fmt::print(stderr, "benchcard: `{}` is not an amount of an ingredient, such as '2 1/4 cups plain flour'\n", options.amount);
        return recipe_errors;
    }
    const auto& l = c->meaning.product().lines.front();
    if (!l.grams) {
        fmt::print(stderr, "benchcard: what `{}` weighs is not known\n", options.amount);
        return recipe_errors;
    }
    const auto line = fmt::format("{} = {}{}{}\n", options.amount, said_weight(l), said_other_ways(l, c->meaning.measures), said_source(l));
    if (const auto failure = write_file("-", line)) {
        fmt::print(stderr, "benchcard: {}\n", *failure);
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
