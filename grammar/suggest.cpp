#include "grammar/suggest.hpp"

#include "grammar/nearest.hpp"
#include "grammar/recipe_rules.hpp"
#include "grammar/settings.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

namespace pegtl = tao::pegtl;

/// What is quoted back is what a person can take in at a glance.
constexpr std::size_t longest_quoted = 200;

template <typename Rule> std::size_t length_matched(std::string_view text) {
    pegtl::memory_input<pegtl::tracking_mode::lazy> in(text.data(), text.data() + text.size(), "");
    try {
        if (!pegtl::parse<Rule>(in)) return 0;
    } catch (const pegtl::parse_error&) {
        return 0;
    }
    return static_cast<std::size_t>(in.current() - text.data());
}

template <typename Rule> bool is_wholly(std::string_view text) {
    return !text.empty() && length_matched<Rule>(text) == text.size();
}

std::string_view stripped(std::string_view text, std::string_view cut = " \t") {
    const auto first = text.find_first_not_of(cut);
    if (first == text.npos) return {};
    return text.substr(first, text.find_last_not_of(cut) - first + 1);
}

// `*`, `•`, `–`, `—`, a dash without its blank: what people write before a line of a list.
struct bullet
    : pegtl::sor<pegtl::one<'*', '-'>, pegtl::utf8::one<0x2022, 0x2013, 0x2014, 0xB7, 0x25AA>> {};
struct bullet_start : pegtl::seq<bullet, pegtl::star<pegtl::blank>> {};

struct amount_with_unit : pegtl::seq<pegtl::opt<rules::about>, rules::counted,
                                     pegtl::star<pegtl::blank>, rules::filled_unit> {};
struct measured_name : pegtl::seq<amount_with_unit, rules::gap, rules::name, rules::preparations,
                                  rules::end_of_line> {};
struct unit_then_name : pegtl::seq<rules::filled_unit, rules::gap, rules::name> {};

/// Where a weight or volume stands at the end of a line, as in `plain flour 200 g`; or npos.
std::size_t amount_at_end(std::string_view text) {
    for (auto i = text.find(' '); i != text.npos;) {
        const auto next = text.find_first_not_of(' ', i);
        if (next == text.npos) break;
        if (is_wholly<amount_with_unit>(text.substr(next))) return i;
        i = text.find(' ', next);
    }
    return text.npos;
}

help replace_line(span where, std::string text, std::string_view why) {
    return {fmt::format("{}: `{}`", why, text), {edit{where, std::move(text)}}};
}

help amount_first(span where, std::string_view amount, std::string_view name) {
    constexpr std::string_view between = " \t:,.-";
    return replace_line(where, fmt::format("{}   {}", stripped(amount), stripped(name, between)),
                        "an ingredient line begins with its amount");
}

/// Whether a value could well stand behind a setting, so that it is worth offering: `makes a firm
/// dough when kneaded.` and `use the blender` are sentences, though words may be read as values.
bool reads_as(const setting_entry& entry, std::string_view value) {
    const bool is_sentence = value.ends_with('.') && entry.form != value_form::prose;
    if (is_sentence || (entry.name == key::use && value.find('.') == value.npos)) return false;
    switch (entry.form) {
    case value_form::yield:
        return is_wholly<rules::yield_value>(value) &&
               value.find_first_of("0123456789") != value.npos;
    case value_form::losses:
        return is_wholly<rules::loss_value>(value);
    case value_form::keepings:
        return length_matched<rules::keep_time>(value) > 0;
    case value_form::tin_size:
        return is_wholly<rules::tin_value>(value);
    case value_form::figures:
        return is_wholly<rules::weighs_value>(value);
    case value_form::price:
        return is_wholly<rules::price_value>(value);
    case value_form::measure:
        return is_wholly<rules::measure_value>(value);
    case value_form::yes_or_no:
        return is_wholly<rules::yes_no_value>(value);
    default:
        return !value.empty() && amount_at_end(value) == value.npos;
    }
}

bool may_stand(const setting_entry& entry, block::sort in) {
    return (entry.places & place_of(in)) != 0 || opened_by(entry.name) != block::sort::before;
}

/// The setting whose word, of one part or two (`at most`), a line begins with; and its length. Of
/// `whole` and `whole batch` the longer is meant.
std::pair<const setting_entry*, std::size_t> setting_at_start(std::string_view text) {
    std::pair<const setting_entry*, std::size_t> found{nullptr, 0};
    auto end = text.find_first_of(" \t:");
    for (int parts = 1; parts <= 2 && end != text.npos; ++parts) {
        std::string word(text.substr(0, end));
        std::replace(word.begin(), word.end(), ' ', '-');
        if (const auto* entry = setting_named(word)) found = {entry, end};
        end = text.find_first_of(" \t:", end + 1);
    }
    return found;
}

/// Other words of the trade for a setting.
const setting_entry* setting_meant(std::string_view word) {
    struct other {
        std::string_view word;
        key name;
    };
    static constexpr other others[] = {
        {"yield", key::makes},     {"yields", key::makes},       {"quantity", key::makes},
        {"portions", key::serves}, {"servings", key::serves},    {"title", key::recipe},
        {"name", key::recipe},     {"author", key::by},          {"version", key::revision},
        {"units", key::measures},  {"cups", key::measures},      {"storage", key::keeps},
        {"store", key::keeps},     {"mould", key::tin},          {"pan", key::tin},
        {"dish", key::tin},        {"allergens", key::contains}, {"price", key::costs},
        {"cost", key::costs},      {"include", key::use},        {"import", key::use},
        {"warning", key::caution}, {"danger", key::caution},     {"tip", key::note},
        {"remark", key::note},     {"part", key::component},     {"section", key::component},
        {"waste", key::loss},      {"bench", key::station},      {"synonyms", key::also},
        {"weight", key::weighs},
    };
    const auto folded = folded_case(word);
    for (const auto& o : others)
        if (o.word == folded) return &setting_of(o.name);
    return nullptr;
}

/// `Ingredients:`, `Method:`: headings of a recipe in print, which a file does without.
bool is_printed_heading(std::string_view word) {
    constexpr std::string_view headings[] = {"ingredients",  "method",      "directions",
                                             "instructions", "preparation", "steps"};
    const auto folded = folded_case(word);
    return std::find(std::begin(headings), std::end(headings), folded) != std::end(headings);
}

/// What is left of `For the filling`: `filling`.
std::string_view without_for_the(std::string_view title) {
    struct for_the : pegtl::seq<rules::word<'f', 'o', 'r'>, rules::gap,
                                pegtl::opt<rules::word<'t', 'h', 'e'>, rules::gap>> {};
    return title.substr(length_matched<for_the>(title));
}

std::vector<help> as_heading(std::string_view title, span line_where) {
    if (is_printed_heading(title))
        return {{"ingredient lines and steps stand under `component:` without a heading: take this "
                 "line out",
                 {edit{line_where, ""}}}};
    return {replace_line(line_where, fmt::format("component: {}", without_for_the(title)),
                         "a part of the recipe begins with `component:`")};
}

std::vector<help> as_either(std::string_view text, span where) {
    const bool is_sentence = text.ends_with('.') || std::count(text.begin(), text.end(), ' ') > 3;
    help step{fmt::format("if it is a step: `- {}`", text), {}};
    help line{
        fmt::format(
            "if it is an ingredient, how much of it comes first: `200 g {0}`, or `some {0}`", text),
        {}};
    if (is_sentence)
        return {replace_line(where, fmt::format("- {}", text),
                             "a step begins with a dash and a blank")};
    return {std::move(line), std::move(step)};
}

} // namespace

std::vector<help> suggest_line(std::string_view line, span where, block::sort in) {
    const auto text = stripped(line);
    if (text.size() > longest_quoted) return {};
    if (text.ends_with(':') && text.size() > 1) return as_heading(stripped(text, " \t:"), where);
    if (const auto bullet = length_matched<bullet_start>(text);
        bullet > 0 && bullet < text.size()) {
        const auto rest = text.substr(bullet);
        if (reads_like_ingredient(rest))
            return {replace_line(where, std::string(rest),
                                 "an ingredient line begins with its amount")};
        return {replace_line(where, fmt::format("- {}", rest),
                             "a step begins with a dash and a blank")};
    }
    if (const auto [entry, length] = setting_at_start(text); entry && length < text.size()) {
        const auto value = stripped(text.substr(length), " \t:");
        if (may_stand(*entry, in) && reads_as(*entry, value))
            return {replace_line(where, fmt::format("{}: {}", entry->word, value),
                                 "a setting is its word, a colon and its value")};
    }
    if (const auto end = amount_at_end(text); end != text.npos)
        return {amount_first(where, text.substr(end), text.substr(0, end))};
    if (is_wholly<unit_then_name>(text))
        return {replace_line(where, fmt::format("1 {}", text),
                             "an ingredient line begins with its amount")};
    return as_either(text, where);
}

std::vector<help> suggest_setting(std::string_view word, span word_where,
                                  std::string_view written_value, span line_where, block::sort in) {
    const auto value = stripped(written_value);
    if (word.size() > longest_quoted || value.size() > longest_quoted) return {};
    if (is_wholly<amount_with_unit>(value)) return {amount_first(line_where, value, word)};
    if (const auto* meant = setting_meant(word))
        return {{fmt::format("the word for it is `{}:`", meant->word),
                 {edit{word_where, std::string(meant->word)}}}};
    std::vector<std::string> here;
    for (const auto& entry : all_settings())
        if (may_stand(entry, in)) here.emplace_back(entry.word);
    std::vector<help> result;
    for (const auto& near : nearest(word, here, 1))
        result.push_back(
            {fmt::format("the nearest setting is `{}:`", near), {edit{word_where, near}}});
    if (!result.empty()) return result;
    if (value.empty() || is_printed_heading(word)) return as_heading(word, line_where);
    return {{"to print these words on the card, write them as `note:` or, if they are to be done, "
             "as a step: `- …`",
             {}}};
}

std::vector<help> suggest_bracket(std::string_view between, std::size_t stop, span at) {
    if (between.size() > longest_quoted) return {};
    const auto read = stripped(between.substr(0, stop));
    const auto rest = stripped(between.substr(stop));
    if (read.empty()) {
        const auto number = length_matched<rules::counted>(rest);
        const auto name = stripped(rest.substr(number));
        if (number == 0 || name.empty()) return {};
        const auto text = fmt::format("{}: {}", name, stripped(rest.substr(0, number)));
        return {{fmt::format("for part of an ingredient, its name comes first: `[{}]`", text),
                 {edit{at, text}}}};
    }
    if (rest.starts_with('/') || rest.starts_with('('))
        return {{fmt::format("one scale is enough, the card prints them all: `[{}]`", read),
                 {edit{at, std::string(read)}}}};
    if (is_wholly<amount_with_unit>(read) && !rest.empty()) {
        const auto text = fmt::format("{}: {}", rest, read);
        return {{fmt::format("for part of an ingredient, its name comes first: `[{}]`", text),
                 {edit{at, text}}}};
    }
    return {{fmt::format("close the bracket sooner: `[{}] {}`", read, rest), {}}};
}

bool reads_like_ingredient(std::string_view step_text) {
    const auto text = stripped(step_text);
    return text.size() <= longest_quoted && !text.ends_with('.') && is_wholly<measured_name>(text);
}

} // namespace benchcard::grammar
