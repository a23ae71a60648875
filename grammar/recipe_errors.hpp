#pragma once

#include "grammar/recipe_rules.hpp"

#include <string_view>

/// What is said where a rule had to match and did not: the message's kind, and what was expected
/// in the cook's words. A rule that is used with `must` and has no entry here does not compile.
namespace benchcard::grammar {

struct expectation {
    std::string_view kind;
    std::string_view text;
};

template <typename Rule> inline constexpr expectation expected{};

// clang-format off
template <> inline constexpr expectation expected<rules::denominator>  {"unreadable-number", "expected the lower number of the fraction, as in `1/2`"};
template <> inline constexpr expectation expected<rules::not_numbered> {"numbered-step", "a step begins with a dash and a blank: the card numbers the steps itself"};
template <> inline constexpr expectation expected<rules::line_amounts> {"unreadable-amount", "expected an amount, as in `400 g`, `1 1/2 cups` or `3`"};
template <> inline constexpr expectation expected<rules::equal_amounts>{"unreadable-amount", "expected the same amount by weight after `=`, as in `2 cups = 250 g`"};
template <> inline constexpr expectation expected<rules::name>         {"missing-name", "expected the name of an ingredient after the amount"};
template <> inline constexpr expectation expected<rules::one_ingredient>{"two-ingredients", "a line holds one ingredient, and this is the next: give it a line of its own"};
template <> inline constexpr expectation expected<rules::preparation>  {"missing-preparation", "expected how it is prepared after the comma, as in `butter, diced`"};
template <> inline constexpr expectation expected<rules::end_of_line>  {"unexpected-words", "nothing more can stand on this line; a remark begins with `#`"};
template <> inline constexpr expectation expected<rules::heat>         {"unreadable-bracket", "expected the same temperature on another scale after `=`, as in `[180 C = 350 F]`"};
template <> inline constexpr expectation expected<rules::inside>       {"unreadable-bracket", "expected an ingredient, a temperature, a time, a length or a weight between the brackets"};
template <> inline constexpr expectation expected<rules::measured>     {"unreadable-bracket", "expected a number with its measure, as in `[180 C]`, `[12-14 min]`, `[23 cm]` or `[22 g]`"};
template <> inline constexpr expectation expected<rules::named>        {"unreadable-bracket", "expected the name of an ingredient or component between the brackets"};
template <> inline constexpr expectation expected<rules::closing>      {"unclosed-bracket", "expected `]` to close the bracket"};
template <> inline constexpr expectation expected<rules::sor<rules::part_rest, rules::part_half, rules::part_fraction, rules::part_amount>>
                                                                       {"unreadable-bracket", "expected which part after the colon: `half`, `1/3`, `50 g` or `rest`"};
template <> inline constexpr expectation expected<rules::step_text>    {"empty-step", "expected what to do after the dash"};
template <> inline constexpr expectation expected<rules::no_stray>     {"unopened-bracket", "this bracket was never opened; write `\\]` for the sign itself"};
template <> inline constexpr expectation expected<rules::value_text>   {"missing-value", "expected a value after the colon"};
template <> inline constexpr expectation expected<rules::entry>        {"missing-value", "expected a value here"};
template <> inline constexpr expectation expected<rules::prose>        {"missing-value", "expected some words after the colon"};
template <> inline constexpr expectation expected<rules::filled_unit>  {"unreadable-amount", "expected a measure after the number, as in `22 g`"};
template <> inline constexpr expectation expected<rules::unit_measure> {"unreadable-amount", "expected a weight or volume, as in `22 g`"};
template <> inline constexpr expectation expected<rules::yield>        {"unreadable-value", "expected what is made, as in `2 tarts`, `40 rounds of 22 g`, `rounds of 22 g` or `900 g`"};
template <> inline constexpr expectation expected<rules::percent_sign> {"unreadable-value", "expected `%` after the number, as in `8% in the oven`"};
template <> inline constexpr expectation expected<rules::one_loss>     {"unreadable-value", "expected a loss, as in `8% in the oven`"};
template <> inline constexpr expectation expected<rules::keep>         {"unreadable-value", "expected how long and how, as in `3 days chilled`"};
template <> inline constexpr expectation expected<rules::tin>          {"unreadable-value", "expected the tin's size, as in `23 cm round`, `20 x 30 cm` or `900 g loaf`"};
template <> inline constexpr expectation expected<rules::figure>       {"unreadable-value", "expected a weight for a measure or a piece, as in `160 g per cup sifted` or `58 g each`"};
template <> inline constexpr expectation expected<rules::figure_basis> {"unreadable-value", "expected `per` and a measure, or `each`, after the weight"};
template <> inline constexpr expectation expected<rules::per_what>     {"unreadable-value", "expected a measure or a piece after `per`, as in `per cup` or `per clove`"};
template <> inline constexpr expectation expected<rules::per_word>     {"unreadable-value", "expected `per` and an amount, as in `4.20 per 1 kg`"};
template <> inline constexpr expectation expected<rules::price>        {"unreadable-value", "expected a price, as in `4.20 per 1 kg`"};
template <> inline constexpr expectation expected<rules::yes_or_no>    {"unreadable-value", "expected `yes` or `no`"};
template <> inline constexpr expectation expected<rules::eof>          {"unexpected-words", "expected the end of the file"};
// clang-format on

} // namespace benchcard::grammar
