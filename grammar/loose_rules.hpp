#pragma once

#include "grammar/recipe_rules.hpp"

/// Ingredient lines as people write them elsewhere, which are not lines of the language: the
/// weight in brackets, the size of a tin before its name, the amount after the ingredient.
namespace benchcard::grammar::loose {

using namespace tao::pegtl;
using namespace benchcard::grammar::rules;

// clang-format off

struct bullet        : seq<sor<one<'-', '*'>, utf8::one<0x2022, 0xB7, 0x25AA, 0x2013>>, plus<blank>> {};
struct until_end     : seq<star<not_at<seq<star<blank>, eof>>, any>, star<blank>, eof> {};

// 2 1/4 cups (280g) all-purpose flour
struct first_amount  : seq<measure, star<next_measure>> {};
struct joined_weight : seq<number, opt<range_tail>, star<sor<blank, one<'-'>>>, unit> {};
struct weight        : joined_weight {};
struct rest          : seq<not_at<eof>, until_end> {};
struct with_weight   : seq<first_amount, star<blank>, one<'('>, star<blank>, opt<about>, weight, star<blank>, one<')'>, gap, rest> {};

// 1 (14-ounce) can condensed milk
struct how_many      : number {};
struct size          : joined_weight {};
struct with_size     : seq<how_many, gap, one<'('>, star<blank>, opt<about>, size, star<blank>, one<')'>, gap, rest> {};

// butter, 2 sticks
struct amount_last   : seq<number, star<blank>, filled_unit> {};
struct thing         : plus<not_at<seq<star<blank>, one<','>>>, not_at<eof>, any> {};
struct behind        : seq<not_at<amount_ahead>, thing, star<blank>, one<','>, star<blank>, amount_last, star<blank>, eof> {};

struct line          : seq<star<blank>, opt<bullet>, sor<with_size, with_weight, behind, rest>> {};

// clang-format on

} // namespace benchcard::grammar::loose
