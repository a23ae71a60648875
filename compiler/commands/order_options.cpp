#include "compiler/commands/order_options.hpp"

#include "compiler/commands/wrong_line.hpp"
#include "grammar/nearest.hpp"
#include "grammar/parse.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

constexpr const char* ways[] = {"--scale", "--make", "--from", "--tin", "--flour", "--batch"};

std::string without_outer_blanks(const std::string& text) { return CLI::detail::trim_copy(text); }

/// Whether a text is more than one line, or has a comment behind it.
bool has_more(const std::string& text) { return text.find_first_of("\n#") != text.npos; }

batch::order scaled_by(const std::string& text) {
    if (const auto number = grammar::parse_number(without_outer_blanks(text)))
        return batch::scaled{*number};
    throw wrong_line{fmt::format("--scale takes a number above 0, and not `{}`", text),
                     {"for example: --scale 2, --scale 1/2 or --scale 1.5"}};
}

/// An amount with its name: `400 g butter`; nothing where a text is more or less than that.
std::optional<grammar::ingredient_line> amount_of(const std::string& option,
                                                  const std::string& text) {
    if (has_more(text)) return std::nullopt;
    auto line = grammar::parse_ingredient_line(grammar::source(0, option, text)).line;
    const bool is_plain =
        line && line->names.size() == 1 &&
        std::all_of(line->amounts.begin(), line->amounts.end(),
                    [](const auto& m) { return m.quantity.is == grammar::amount::sort::number; });
    return is_plain ? line : std::nullopt;
}

/// `800 g Custard`: so much of a component, by its name.
std::optional<batch::to_make> made_of(const std::string& text) {
    const auto line = amount_of("--make", text);
    if (!line || !line->amounts.front().in || line->amounts.size() > 1 || !line->equals.empty())
        return std::nullopt;
    grammar::yield wanted;
    wanted.whole = line->amounts.front();
    return batch::to_make{wanted, line->names.front().text};
}

/// How many or how much to make: one plain number of pieces, or one of a weight or a volume.
batch::order order_to_make(const std::string& text) {
    const auto trimmed = without_outer_blanks(text);
    const auto made = grammar::parse_yield(grammar::source(0, "--make", trimmed)).made;
    const std::vector<std::string> helps = {
        "for example: --make '48 tarts', --make 48 or --make '2 kg'"};
    const auto of_component = made ? std::nullopt : made_of(trimmed);
    if ((!made && !of_component) || has_more(trimmed))
        throw wrong_line{
            fmt::format("--make takes how many or how much to make, and not `{}`", text), helps};
    const auto order = of_component ? *of_component : batch::to_make{*made};
    const auto& y = order.wanted;
    if (y.each || (!y.count && !y.whole))
        throw wrong_line{fmt::format("--make takes how many or how much, and `{}` says how heavy a "
                                     "piece is; that stands in the recipe",
                                     text),
                         helps};
    const auto& number = y.whole ? y.whole->quantity : *y.count;
    if (number.low != number.high || number.packs)
        throw wrong_line{fmt::format("--make takes one number, and `{}` has two", text), helps};
    return order;
}

batch::order order_from(const std::vector<std::string>& texts) {
    const std::vector<std::string> helps = {
        "for example: --from '400 g butter', or --from '400 g butter' --from '3 eggs'"};
    batch::from_stock result;
    for (const auto& text : texts) {
        const auto line = amount_of("--from", without_outer_blanks(text));
        if (!line)
            throw wrong_line{fmt::format("--from takes an amount of an ingredient that is there, "
                                         "and not `{}`",
                                         text),
                             helps};
        if (std::any_of(line->amounts.begin(), line->amounts.end(),
                        [](const auto& m) { return m.quantity.low != m.quantity.high; }))
            throw wrong_line{fmt::format("--from takes one number, and `{}` has two", text), helps};
        result.have.push_back(*line);
    }
    return result;
}

batch::order order_in_tin(const std::string& text) {
    const auto trimmed = without_outer_blanks(text);
    const auto tin = grammar::parse_tin(grammar::source(0, "--tin", trimmed));
    if (tin && !has_more(trimmed)) return batch::in_tin{*tin};
    throw wrong_line{
        fmt::format("--tin takes the size of a tin, and not `{}`", text),
        {"for example: --tin '20 cm round', --tin '20 x 30 cm' or --tin '900 g loaf'"}};
}

batch::order order_of_flour(const std::string& text) {
    const auto trimmed = without_outer_blanks(text);
    const auto made = grammar::parse_yield(grammar::source(0, "--flour", trimmed)).made;
    const auto unit = made && made->whole && !has_more(trimmed)
                          ? measures::weight_of(*made->whole->in)
                          : std::nullopt;
    if (unit && made->whole->quantity.low == made->whole->quantity.high &&
        !made->whole->quantity.packs)
        return batch::of_base{made->whole->quantity.low * unit->value};
    throw wrong_line{fmt::format("--flour takes one weight, and not `{}`", text),
                     {"for example: --flour '25 kg'"}};
}

/// Whether an option was given is asked of the command: an empty text is given too.
std::vector<std::string> given_ways(const CLI::App& command) {
    std::vector<std::string> result;
    for (const auto* way : ways)
        if (command.count(way) > 0) result.emplace_back(way);
    return result;
}

void expect_one(const CLI::App& command) {
    const auto given = given_ways(command);
    if (given.size() < 2) return;
    throw wrong_line{
        fmt::format("{} and {} each say how much to make: give one of them", given[0], given[1]),
        {"for example: " + example_of(given[0]), "or: " + example_of(given[1]),
         fmt::format("all of it: benchcard {} --help", command.get_name())}};
}

} // namespace

void add_measures(CLI::App& command, std::string& measures) {
    command
        .add_option("--measures", measures,
                    "Whose cups and spoons, instead of what the recipe says:\n"
                    "us, metric, uk, imperial, australian, canadian or us-label")
        ->type_name("WHOSE");
}

measures::system system_of(const std::string& word) {
    if (word.empty()) return measures::system::unstated;
    if (const auto named = measures::system_named(word)) return *named;
    std::vector<std::string> names;
    for (const auto s : measures::all_systems) names.emplace_back(measures::name_of(s));
    std::vector<std::string> helps;
    for (const auto& near : grammar::nearest(word, names, 1))
        helps.push_back("the nearest is `" + near + "`");
    throw wrong_line{fmt::format("there are no measures called `{}`; there are: {}", word,
                                 fmt::join(names, ", ")),
                     helps};
}

void add_order(CLI::App& command, order_text& text) {
    const auto add = [&](const char* name, auto& value, const char* help, const char* type) {
        command.add_option(name, value, help)
            ->type_name(type)
            ->group("How much to make (one of these; otherwise as written)");
    };
    add("--scale", text.scale, "So many times the recipe: 1/2, 3, 1.5", "N");
    add("--make", text.make,
        "So much of the product, or of a component:\n'48 tarts', '2 kg', '24 rounds', '800 g "
        "Custard'",
        "'N PIECES'");
    command
        .add_option("--from", text.from,
                    "As much as this allows: '400 g butter'; given\nseveral times, the scarcest "
                    "rules")
        ->type_name("'AMOUNT'")
        ->type_size(1)
        ->allow_extra_args(false)
        ->group("How much to make (one of these; otherwise as written)");
    add("--tin", text.tin,
        "For this tin instead of the recipe's, as deep:\n'20 cm round', '20 x 30 cm', '900 g loaf'",
        "'SIZE'");
    add("--flour", text.flour, "By the weight of what percent: names: '25 kg'", "'WEIGHT'");
    add("--batch", text.batches, "Several side by side: '1/2, 1, 2, 4'", "'N, N'");
    command
        .add_option("--fit", text.fit,
                    "need: of each component what is used of it, as\nunless said otherwise; batch: "
                    "whole written batches,\nand what is over is kept")
        ->type_name("HOW");
}

batch::order order_of(const CLI::App& command, const order_text& text) {
    expect_one(command);
    if (command.count("--scale") > 0) return scaled_by(text.scale);
    if (command.count("--make") > 0) return order_to_make(text.make);
    if (command.count("--from") > 0) return order_from(text.from);
    if (command.count("--tin") > 0) return order_in_tin(text.tin);
    if (command.count("--flour") > 0) return order_of_flour(text.flour);
    return batch::as_written{};
}

std::optional<batch::fit> fit_of(const CLI::App& command, const order_text& text) {
    if (command.count("--fit") == 0) return std::nullopt;
    if (text.fit == "need") return batch::fit::need;
    if (text.fit == "batch") return batch::fit::whole;
    throw wrong_line{fmt::format("--fit takes `need` or `batch`, and not `{}`", text.fit),
                     {"need: of each component what is used of it",
                      "batch: whole written batches, and what is over is kept"}};
}

std::vector<exact> batches_of(const CLI::App& command, const order_text& text) {
    if (command.count("--batch") == 0) return {};
    constexpr std::size_t most = 6; // on a page of 80 columns
    std::vector<exact> result;
    for (std::size_t begin = 0; begin <= text.batches.size();) {
        const auto end = std::min(text.batches.find(',', begin), text.batches.size());
        const auto number =
            grammar::parse_number(without_outer_blanks(text.batches.substr(begin, end - begin)));
        if (!number || *number < exact(1, 1000) || *number > 10000)
            throw wrong_line{fmt::format("--batch takes numbers above 0 with commas, and not `{}`",
                                         text.batches),
                             {"for example: " + example_of("--batch")}};
        result.push_back(*number);
        begin = end + 1;
    }
    if (result.size() > most)
        throw wrong_line{
            fmt::format("--batch takes {} at the most, and these are {}", most, result.size()),
            {"for example: " + example_of("--batch")}};
    return result;
}

placed_order placed_of(const CLI::App& command, const order_text& text,
                       const std::string& measures) {
    return {order_of(command, text), fit_of(command, text), batches_of(command, text),
            system_of(measures)};
}

std::vector<std::string> words_of(const order_text& text, const std::string& measures) {
    std::vector<std::string> result;
    const auto add = [&](const char* name, const std::string& value) {
        if (!value.empty()) result.insert(result.end(), {name, value});
    };
    add("--scale", text.scale);
    add("--make", text.make);
    for (const auto& have : text.from) add("--from", have);
    add("--tin", text.tin);
    add("--flour", text.flour);
    add("--batch", text.batches);
    add("--fit", text.fit);
    add("--measures", measures);
    return result;
}

placed_order placed_by(const std::vector<std::string>& words) {
    CLI::App command;
    order_text text;
    std::string measures;
    add_order(command, text);
    add_measures(command, measures);
    command.parse(std::vector<std::string>(words.rbegin(), words.rend())); // it reads from the end
    return placed_of(command, text, measures);
}

void expect_no_order(const CLI::App& command, const std::string& message) {
    const auto given = given_ways(command);
    const bool is_given = !given.empty() || command.count("--fit") > 0;
    if (is_given) throw wrong_line{message, {"for example: " + example_of("--card")}};
}

} // namespace benchcard::commands
