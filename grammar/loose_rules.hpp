#pragma once

#include "grammar/recipe_rules.hpp"

/// Ingredient lines as people write them elsewhere, which are not lines of the language: the
/// weight in brackets, the size of a tin before its name, the amount after the ingredient.
namespace benchcard::grammar::loose {

using namespace tao::pegtl;
using namespace benchcard::grammar::rules;

// clang-format off

// A first look: what stands before the amount, and amounts that are not written in figures
struct bullet        : seq<sor<one<'-', '*'>, utf8::one<0x2022, 0xB7, 0x25AA, 0x2013, 0x2610>, TAO_PEGTL_STRING("[ ]")>, plus<blank>> {};
template <int N, char... C> struct spelt : word<C...> {};
struct number_word   : sor<spelt<1,'o','n','e'>, spelt<2,'t','w','o'>, spelt<3,'t','h','r','e','e'>, spelt<4,'f','o','u','r'>,
                           spelt<5,'f','i','v','e'>, spelt<6,'s','i','x'>, spelt<7,'s','e','v','e','n'>, spelt<8,'e','i','g','h','t'>,
                           spelt<9,'n','i','n','e'>, spelt<10,'t','e','n'>, spelt<11,'e','l','e','v','e','n'>, spelt<12,'t','w','e','l','v','e'>> {};
struct quarter       : seq<opt<sor<word<'o','n','e'>, word<'a'>>, gap>, word<'q','u','a','r','t','e','r'>, opt<gap, sor<word<'o','f',' ','a'>, word<'a'>>>> {};
struct in_figures    : seq<at<digit>, number> {};
// scant 1 cup, heaped tsp
struct filled_how    : sor<level, heaped, scant, rounded, packed> {};
struct filled_amount : seq<filled_how, opt<gap, in_figures>, at<gap, unit_name>> {};
// pinch of salt
struct bare_unit     : at<unit, gap> {};
struct beginning     : seq<star<blank>, opt<bullet>, opt<sor<filled_amount, bare_unit, quarter, number_word>>> {};
struct whole_line    : until<eof, any> {};
struct first_look    : seq<beginning, whole_line> {};

// Then the forms
struct new_form      : success {};
struct until_end     : seq<star<not_at<seq<star<blank>, eof>>, any>, star<blank>, eof> {};
struct rest          : seq<not_at<eof>, until_end> {};
struct joiner        : star<sor<blank, one<'-'>>> {};
struct metric_unit   : seq<sor<milligram, gram, kilogram>, opt<full_stop>> {};
struct other_unit    : seq<sor<ounce, pound>, opt<full_stop>> {};
struct metric_weight : seq<number, opt<range_tail>, joiner, metric_unit> {};
struct other_weight  : seq<number, opt<range_tail>, joiner, other_unit> {};
struct one_weight    : sor<metric_weight, other_weight> {};
struct parting       : seq<star<blank>, sor<one<'/', ',', ';', '='>, word<'o','r'>>, star<blank>> {};
struct weights       : list<seq<opt<about>, one_weight>, parting> {};
struct volume_unit   : seq<not_at<metric_unit>, not_at<other_unit>, filled_unit> {};
struct volume        : seq<number, opt<range_tail>, star<blank>, volume_unit, star<next_measure>> {};
struct metric_volume : seq<number, opt<range_tail>, joiner, sor<millilitre, centilitre, decilitre, litre>> {};
template <typename R> struct bracketed : seq<one<'('>, star<blank>, opt<about>, R, star<blank>, one<')'>> {};
struct first_amount  : seq<measure, star<next_measure>> {};
struct how_many      : number {};
struct thing         : plus<not_at<seq<star<blank>, one<',', '('>>>, not_at<eof>, any> {};
struct preparation_left : seq<star<blank>, opt<seq<at<one<','>>, until_end>>, star<blank>, eof> {};

// 1 (14-ounce) can condensed milk, 1 15-oz can pumpkin
struct size          : one_weight {};
struct with_size     : seq<new_form, how_many, gap, sor<bracketed<size>, size>, gap, rest> {};
// 2 tins (400 g each) chopped tomatoes
struct each_word     : seq<gap, word<'e','a','c','h'>> {};
struct size_each     : seq<new_form, how_many, gap, plus<letter>, gap, one<'('>, size, each_word, one<')'>, gap, rest> {};
// 250 g (2 cups) plain flour, 250 g/2 cups plain flour
struct weight_first  : seq<new_form, weights, star<blank>, sor<bracketed<volume>, seq<one<'/'>, star<blank>, volume>>, gap, rest> {};
// 2 cups/250 g plain flour, 8 oz/225 g butter
struct volume_first  : seq<new_form, volume, star<blank>, one<'/'>, star<blank>, weights, gap, rest> {};
struct two_weights   : seq<new_form, one_weight, parting, weights, gap, rest> {};
// 2 1/4 cups (280g) all-purpose flour, 1 packet (7 g) dried yeast
struct piece         : plus<letter> {};
struct with_weight   : seq<new_form, first_amount, opt<gap, piece>, star<blank>, bracketed<weights>, gap, rest> {};
// 1 cup (240 ml) milk
struct in_metric     : seq<new_form, first_amount, star<blank>, bracketed<metric_volume>, gap, rest> {};
// 1 cup flour (125 g), sifted; 250 g flour (2 cups)
struct weight_last   : seq<new_form, first_amount, gap, thing, star<blank>, bracketed<weights>, preparation_left> {};
struct volume_last   : seq<new_form, weights, gap, thing, star<blank>, bracketed<volume>, preparation_left> {};
// butter, 2 sticks; plain flour: 200 g; eggs: 3
struct amount_last   : seq<number, opt<range_tail>, opt<star<blank>, filled_unit>> {};
struct separator     : sor<seq<star<blank>, one<',', ':'>, star<blank>>, seq<gap, sor<one<'-'>, utf8::one<0x2013, 0x2014>>, gap>> {};
struct name_before   : plus<not_at<separator>, not_at<eof>, any> {};
struct behind        : seq<new_form, not_at<amount_ahead>, name_before, separator, amount_last, star<blank>, eof> {};
// juice of half a lemon
struct part_of_fruit : sor<word<'j','u','i','c','e'>, word<'z','e','s','t'>> {};
struct fruit         : rest {};
struct from_fruit    : seq<new_form, part_of_fruit, gap, sor<word<'o','f'>, word<'f','r','o','m'>>, gap, first_amount, gap, fruit> {};
struct plain         : seq<new_form, rest> {};

struct form          : sor<with_size, size_each, weight_first, volume_first, two_weights, with_weight, in_metric,
                           weight_last, volume_last, behind, from_fruit, plain> {};

// clang-format on

} // namespace benchcard::grammar::loose
