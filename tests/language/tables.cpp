#include "tables.hpp"

#include "compiler/diagnostics/kinds.hpp"
#include "compiler/measures/kitchen.hpp"
#include "compiler/measures/systems.hpp"
#include "compiler/measures/temperatures.hpp"
#include "grammar/limits.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>

namespace benchcard::language {

namespace {

std::string places_of(unsigned places) {
    std::string result;
    for (const auto& [place, word] : {std::pair{grammar::in_recipe, "head"},
                                      {grammar::in_component, "component"},
                                      {grammar::in_assembly, "assembly"},
                                      {grammar::in_ingredient, "ingredient"}})
        if (places & place) result += (result.empty() ? "" : ", ") + std::string(word);
    return result;
}

std::string settings_table() {
    std::string result =
        "| setting | where | what it says | for example |\n| --- | --- | --- | --- |\n";
    for (const auto& s : grammar::all_settings()) {
        const bool opens = grammar::opened_by(s.name) != grammar::block::sort::before;
        result += fmt::format("| `{}:` | {} | {} | `{}` |\n", s.word,
                              opens ? "opens one" : places_of(s.places), s.says, s.example);
    }
    return result;
}

std::string measures_table() {
    using grammar::unit;
    constexpr unit units[] = {unit::teaspoon,    unit::dessertspoon, unit::tablespoon,
                              unit::fluid_ounce, unit::gill,         unit::cup,
                              unit::pint,        unit::quart,        unit::gallon};
    std::string result = "| `measures:` |";
    for (const auto u : units) result += fmt::format(" {} |", grammar::short_name(u));
    result += "\n| --- |";
    for (std::size_t i = 0; i < std::size(units); ++i) result += " --- |";
    result += "\n";
    const auto row = [&](std::string_view name, measures::system s) {
        result += fmt::format("| {} |", name);
        for (const auto u : units) {
            const auto held = measures::volume_of(u, s);
            result +=
                fmt::format(" {} |", held ? measures::in_decimals(held->value, 1) + " ml" : "–");
        }
        result += "\n";
    };
    row("not said", measures::system::unstated);
    for (const auto s : measures::all_systems) row(fmt::format("`{}`", measures::name_of(s)), s);
    return result;
}

std::string oven_table() {
    std::string result = "| gas | oven °C | fan oven °C | oven °F |\n| --- | --- | --- | --- |\n";
    const exact marks[] = {exact(1, 4), exact(1, 2), 1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    for (const auto& mark : marks) {
        const auto d = measures::dial_settings(mark, mark, grammar::oven_scale::gas_mark);
        result += fmt::format("| {} | {} | {} | {} |\n", d.gas, d.celsius, d.fan, d.fahrenheit);
    }
    return result;
}

std::string kinds_table() {
    std::string result = "| kind | | what it is about |\n| --- | --- | --- |\n";
    for (const auto& k : diagnostics::all_kinds())
        result += fmt::format("| `{}` | {} | {} |\n", k.name, grammar::name_of(k.level), k.summary);
    return result;
}

/// `10000` as `10,000`.
std::string grouped(std::size_t number) {
    auto result = std::to_string(number);
    for (auto i = result.size(); i > 3; i -= 3) result.insert(i - 3, ",");
    return result;
}

std::string limits_table() {
    namespace most = grammar::limits;
    std::string result = "| of | at most | kind |\n| --- | --- | --- |\n";
    const auto row = [&](std::string_view of, std::size_t number, std::string_view unit,
                         std::string_view kind) {
        result += fmt::format("| {} | {}{}{} | `{}` |\n", of, grouped(number),
                              unit.empty() ? "" : " ", unit, kind);
    };
    row("a file", most::file_bytes >> 20, "MB", "too-many");
    row("lines of a file", most::lines, "", "too-many");
    row("a line; a step or a note, with the lines that continue it", most::line_bytes, "bytes",
        "line-too-long");
    row("a name", most::name_characters, "characters", "name-too-long");
    row("code points of a letter with its marks", most::code_points_of_a_character, "",
        "too-many-marks");
    row("components of a file, the assembly among them", most::components, "", "too-many");
    row("own ingredients of a file", most::ingredients_defined, "", "too-many");
    row("ingredients of a component", most::ingredient_lines, "", "too-many");
    row("steps of a component", most::steps, "", "too-many");
    row("losses of a component", most::losses, "", "too-many");
    row("brackets of a file", most::brackets, "", "too-many");
    row("digits of a number", most::digits, "", "number-too-large");
    row("digits behind its point", most::decimals, "", "number-too-large");
    row("what stands below the line of a fraction", most::parts_of_a_fraction, "",
        "number-too-large");
    row("components made of one another in a chain", most::components_in_a_chain, "", "too-deep");
    row("files of a recipe with all that it uses", most::files, "", "too-many-files");
    row("files that use one another in a chain", most::files_in_a_chain, "", "too-many-files");
    row("all these files", most::bytes_of_all >> 20, "MB", "too-many-files");
    row("components of all these files", most::components_of_all, "", "too-many-files");
    row("messages of a recipe", most::messages, "", "too-many-messages");
    return result;
}

} // namespace

std::vector<std::pair<std::string, std::string>> tables() {
    return {{"settings", settings_table()},
            {"measures", measures_table()},
            {"oven", oven_table()},
            {"kinds", kinds_table()},
            {"limits", limits_table()}};
}

} // namespace benchcard::language
