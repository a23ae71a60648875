#pragma once

#include <tao/pegtl.hpp>

/// The recipe language, rule by rule. Nothing here but rules: what they make is in
/// recipe_actions.hpp, what is said where one fails in recipe_errors.hpp. Rules that end in
/// `_line` and `_value` are where parse.cpp starts; it reads one line at a time.
namespace benchcard::grammar::rules {

using namespace tao::pegtl;

// clang-format off

// Words
struct letter       : sor<alpha, utf8::range<0x80, 0x10FFFF>> {};
struct word_end     : not_at<sor<letter, digit>> {};
template <char... C> struct word : seq<istring<C...>, word_end> {};
struct gap          : plus<blank> {};
struct line_end     : sor<eof, at<eol>> {};
// A run of blanks is taken whole, so that no blank is looked at twice.
struct next_bit     : sor<gap, any> {};

// Comments: from # to the end of the line, also behind a blank
struct comment_text : until<line_end, any> {};
struct comment      : seq<one<'#'>, comment_text> {};
struct tail         : seq<star<blank>, opt<comment>> {};
struct end_of_line  : seq<tail, line_end> {};
struct comment_ahead: seq<gap, one<'#'>> {};
struct no_comment   : not_at<one<'#'>> {};

// Numbers
struct digits       : plus<digit> {};
struct whole        : digits {};
struct decimals     : digits {};
struct numerator    : digits {};
struct denominator  : digits {};
struct fraction_bar : sor<one<'/'>, utf8::one<0x2044>> {};
template <int N, int D, char32_t C> struct vulgar : utf8::one<C> {};
struct vulgar_fraction : sor<
    vulgar<1, 2, 0xBD>, vulgar<1, 4, 0xBC>, vulgar<3, 4, 0xBE>, vulgar<1, 3, 0x2153>, vulgar<2, 3, 0x2154>,
    vulgar<1, 8, 0x215B>, vulgar<3, 8, 0x215C>, vulgar<5, 8, 0x215D>, vulgar<7, 8, 0x215E>,
    vulgar<1, 5, 0x2155>, vulgar<2, 5, 0x2156>, vulgar<3, 5, 0x2157>, vulgar<4, 5, 0x2158>,
    vulgar<1, 6, 0x2159>, vulgar<5, 6, 0x215A>> {};
struct first_digits : digits {};
struct two_readings : seq<digits, plus<one<','>, digits>> {};
struct over         : seq<fraction_bar, must<denominator>> {};
struct mixed_tail   : sor<seq<star<blank>, vulgar_fraction>,
                          seq<gap, at<digits, fraction_bar>, numerator, over>> {};
struct number_tail  : sor<over, seq<one<'.'>, decimals>, mixed_tail> {};
struct new_number   : success {};
struct number       : seq<new_number, sor<vulgar_fraction, two_readings, seq<first_digits, opt<number_tail>>>> {};

// Amounts
struct about        : seq<sor<word<'a','b','o','u','t'>, word<'c','a','.'>, word<'c','a'>, one<'~'>>, star<blank>> {};
struct to           : sor<seq<star<blank>, sor<one<'-'>, utf8::one<0x2013>>, star<blank>>,
                          seq<gap, word<'t','o'>, gap>> {};
struct times        : seq<star<blank>, sor<seq<one<'x','X'>, not_at<letter>>, utf8::one<0xD7>>, star<blank>> {};
struct high_number  : number {};
struct pack_number  : number {};
struct range_tail   : seq<to, at<number>, high_number> {};
struct pack_tail    : seq<times, at<number>, pack_number> {};
struct counted      : seq<number, opt<pack_tail>, opt<range_tail>> {};
struct half_a       : seq<word<'h','a','l','f'>, gap, sor<word<'a','n'>, word<'a'>>> {};
struct half         : word<'h','a','l','f'> {};
struct one_of       : sor<word<'a','n'>, word<'a'>> {};
struct all_of       : word<'a','l','l'> {};
struct some_of      : word<'s','o','m','e'> {};
struct amount_word  : seq<sor<half_a, half, one_of, all_of, some_of>, at<gap>> {};
struct dozen        : seq<word<'d','o','z','e','n'>, opt<gap, word<'o','f'>, at<gap>>> {};
struct new_amount   : success {};
struct amount       : seq<new_amount, opt<about>, sor<counted, amount_word>, opt<gap, dozen>> {};
struct amount_ahead : seq<opt<about>, sor<digit, vulgar_fraction, amount_word>> {};

// Measures
struct milligram    : sor<word<'m','g'>, word<'m','i','l','l','i','g','r','a','m'>, word<'m','i','l','l','i','g','r','a','m','s'>> {};
struct gram         : sor<word<'g'>, word<'g','r','a','m'>, word<'g','r','a','m','s'>, word<'g','r','a','m','m','e'>, word<'g','r','a','m','m','e','s'>> {};
struct kilogram     : sor<word<'k','g'>, word<'k','i','l','o'>, word<'k','i','l','o','s'>, word<'k','i','l','o','g','r','a','m'>, word<'k','i','l','o','g','r','a','m','s'>> {};
struct ounce        : sor<word<'o','z'>, word<'o','u','n','c','e'>, word<'o','u','n','c','e','s'>> {};
struct pound        : sor<word<'l','b'>, word<'l','b','s'>, word<'p','o','u','n','d'>, word<'p','o','u','n','d','s'>> {};
struct millilitre   : sor<word<'m','l'>, word<'m','i','l','l','i','l','i','t','r','e'>, word<'m','i','l','l','i','l','i','t','r','e','s'>, word<'m','i','l','l','i','l','i','t','e','r'>, word<'m','i','l','l','i','l','i','t','e','r','s'>> {};
struct centilitre   : sor<word<'c','l'>, word<'c','e','n','t','i','l','i','t','r','e'>, word<'c','e','n','t','i','l','i','t','r','e','s'>> {};
struct decilitre    : sor<word<'d','l'>, word<'d','e','c','i','l','i','t','r','e'>, word<'d','e','c','i','l','i','t','r','e','s'>> {};
struct litre        : sor<word<'l'>, word<'l','i','t','r','e'>, word<'l','i','t','r','e','s'>, word<'l','i','t','e','r'>, word<'l','i','t','e','r','s'>> {};
struct drop         : sor<word<'d','r','o','p'>, word<'d','r','o','p','s'>> {};
struct dash         : sor<word<'d','a','s','h'>, word<'d','a','s','h','e','s'>> {};
struct pinch        : sor<word<'p','i','n','c','h'>, word<'p','i','n','c','h','e','s'>> {};
struct teaspoon     : sor<word<'t','s','p'>, word<'t','s','p','s'>, word<'t','e','a','s','p','o','o','n'>, word<'t','e','a','s','p','o','o','n','s'>> {};
struct dessertspoon : sor<word<'d','s','p'>, word<'d','e','s','s','e','r','t','s','p','o','o','n'>, word<'d','e','s','s','e','r','t','s','p','o','o','n','s'>> {};
struct tablespoon   : sor<word<'t','b','s','p'>, word<'t','b','s','p','s'>, word<'t','a','b','l','e','s','p','o','o','n'>, word<'t','a','b','l','e','s','p','o','o','n','s'>> {};
struct fluid_ounce  : seq<sor<seq<word<'f','l'>, opt<one<'.'>>>, word<'f','l','u','i','d'>>, star<blank>, ounce> {};
struct gill         : sor<word<'g','i','l','l'>, word<'g','i','l','l','s'>> {};
struct cup          : sor<word<'c','u','p'>, word<'c','u','p','s'>> {};
struct pint         : sor<word<'p','t'>, word<'p','t','s'>, word<'p','i','n','t'>, word<'p','i','n','t','s'>> {};
struct quart        : sor<word<'q','t'>, word<'q','t','s'>, word<'q','u','a','r','t'>, word<'q','u','a','r','t','s'>> {};
struct gallon       : sor<word<'g','a','l'>, word<'g','a','l','l','o','n'>, word<'g','a','l','l','o','n','s'>> {};
struct stick        : sor<word<'s','t','i','c','k'>, word<'s','t','i','c','k','s'>> {};
struct unit_name    : sor<milligram, gram, kilogram, fluid_ounce, ounce, pound, millilitre, centilitre, decilitre, litre,
                          drop, dash, pinch, teaspoon, dessertspoon, tablespoon, gill, cup, pint, quart, gallon, stick> {};
struct full_stop    : seq<one<'.'>, at<sor<blank, line_end, one<',', ']'>>>> {};
struct unit         : seq<unit_name, opt<full_stop>> {};

struct level        : word<'l','e','v','e','l'> {};
struct heaped       : sor<word<'h','e','a','p','e','d'>, word<'h','e','a','p','i','n','g'>> {};
struct scant        : word<'s','c','a','n','t'> {};
struct rounded      : word<'r','o','u','n','d','e','d'> {};
struct packed       : word<'p','a','c','k','e','d'> {};
struct filling      : seq<sor<level, heaped, scant, rounded, packed>, gap> {};
struct filled_unit  : seq<at<opt<filling>, unit_name>, opt<filling>, unit> {};
struct new_measure  : success {};
struct measure      : seq<new_measure, amount, opt<star<blank>, filled_unit>> {};
struct unit_measure : seq<new_measure, amount, star<blank>, must<filled_unit>> {};

// Ingredient lines: AMOUNT [UNIT] NAME [or NAME] [, preparation]…
struct plus_sign    : seq<star<blank>, sor<one<'+'>, word<'p','l','u','s'>>, star<blank>> {};
struct next_measure : sor<seq<plus_sign, at<number>, measure>,
                          seq<gap, at<number, star<blank>, opt<filling>, unit_name>, measure>> {};
struct measures     : seq<measure, star<next_measure>> {};
struct line_amounts : measures {};
struct equal_amounts: measures {};
struct equal_sign   : seq<star<blank>, one<'='>, star<blank>> {};
struct equals       : seq<equal_sign, must<equal_amounts>> {};
struct piece_word   : seq<plus<letter>, star<gap, plus<letter>>> {};
struct counted_piece: seq<gap, at<piece_word, equal_sign>, piece_word> {};
struct of_word      : seq<word<'o','f'>, gap> {};
struct more_ahead   : seq<gap, sor<one<'+'>, word<'p','l','u','s'>>, star<blank>, sor<digit, vulgar_fraction>> {};
struct name_end     : sor<line_end, comment_ahead, one<','>, seq<gap, word<'o','r'>, gap>, more_ahead> {};
struct name         : seq<no_comment, plus<not_at<name_end>, next_bit>> {};
struct alternative  : seq<gap, word<'o','r'>, gap, must<name>> {};
struct preparation  : seq<no_comment, plus<not_at<sor<line_end, comment_ahead, one<','>>>, next_bit>> {};
struct preparations : star<one<','>, star<blank>, must<preparation>, star<blank>> {};
struct one_ingredient : not_at<more_ahead> {};
struct numbered_step: seq<digits, one<'.', ')'>, gap> {};
struct not_numbered : not_at<numbered_step> {};
struct ingredient_line : seq<star<blank>, must<not_numbered>, must<line_amounts>, opt<counted_piece>, opt<equals>, star<blank>, opt<of_word>,
                             must<name>, star<alternative>, must<one_ingredient>, preparations, must<end_of_line>> {};

// Times, temperatures and lengths
struct seconds      : sor<word<'s'>, word<'s','e','c'>, word<'s','e','c','s'>, word<'s','e','c','o','n','d'>, word<'s','e','c','o','n','d','s'>> {};
struct minutes      : sor<word<'m','i','n'>, word<'m','i','n','s'>, word<'m','i','n','u','t','e'>, word<'m','i','n','u','t','e','s'>> {};
struct hours        : sor<word<'h'>, word<'h','r'>, word<'h','r','s'>, word<'h','o','u','r'>, word<'h','o','u','r','s'>> {};
struct days         : sor<word<'d','a','y'>, word<'d','a','y','s'>> {};
struct weeks        : sor<word<'w','e','e','k'>, word<'w','e','e','k','s'>> {};
struct months       : sor<word<'m','o','n','t','h'>, word<'m','o','n','t','h','s'>> {};
struct years        : sor<word<'y','e','a','r'>, word<'y','e','a','r','s'>> {};
struct time_unit    : seq<sor<seconds, minutes, hours, days, weeks, months, years>, opt<full_stop>> {};
struct time_term    : seq<amount, star<blank>, time_unit> {};
struct time_ahead   : seq<opt<about>, counted, star<blank>, time_unit> {};
struct duration     : seq<time_term, star<gap, at<time_ahead>, time_term>> {};
struct overnight    : word<'o','v','e','r','n','i','g','h','t'> {};

struct degree_sign  : opt<star<blank>, utf8::one<0xB0>> {};
struct fan_word     : seq<star<blank>, word<'f','a','n'>> {};
struct fan_celsius  : seq<one<'C','c'>, word_end, fan_word> {};
struct celsius      : seq<one<'C','c'>, word_end> {};
struct fahrenheit   : seq<one<'F','f'>, word_end> {};
struct degrees      : seq<degree_sign, star<blank>, sor<fan_celsius, celsius, fahrenheit>> {};
struct gas_mark     : seq<word<'g','a','s'>, opt<gap, word<'m','a','r','k'>>, gap> {};
struct gas_setting  : seq<gas_mark, amount> {};
struct heat         : sor<gas_setting, seq<amount, degrees>> {};
struct heat_ahead   : sor<gas_mark, seq<counted, degrees>> {};
struct same_heat    : seq<star<blank>, one<'='>, star<blank>, must<heat>> {};
struct temperature  : seq<heat, opt<same_heat>> {};

struct millimetre   : sor<word<'m','m'>> {};
struct centimetre   : sor<word<'c','m'>> {};
struct inch         : sor<word<'i','n'>, word<'i','n','c','h'>, word<'i','n','c','h','e','s'>, one<'"'>> {};
struct length_unit  : sor<millimetre, centimetre, inch> {};
struct length_ahead : seq<opt<about>, counted, star<blank>, length_unit> {};
struct length       : seq<amount, star<blank>, length_unit> {};

// Steps: text, with what the card must compute in brackets
struct fold_ahead   : at<star<blank>, opt<comment>, eol, gap> {}; // looked for first: a comment is read once
struct fold         : seq<fold_ahead, star<blank>, opt<comment>, eol, gap, opt<comment>> {};
struct escaped      : seq<one<'\\'>, one<'[', ']', '\\', '#'>> {};
struct plain_text   : plus<not_at<sor<eol, comment_ahead, one<'[', ']', '\\'>, seq<gap, sor<eol, eof>>>>, next_bit> {};
struct lone_slash   : one<'\\'> {};
struct bracket_end  : seq<star<blank>, one<']'>> {};
struct closing      : bracket_end {};
struct total_word   : seq<gap, word<'t','o','t','a','l'>> {};
struct piece_weight : seq<measure, opt<total_word>> {};
struct shape        : plus<not_at<sor<eol, one<'[', ']'>, bracket_end>>, next_bit> {};
struct sized        : seq<length, opt<gap, shape>> {};
struct measured     : sor<seq<at<heat_ahead>, temperature>, seq<at<time_ahead>, duration>,
                          seq<at<length_ahead>, sized>, seq<at<opt<about>, counted, star<blank>, filled_unit>, piece_weight>> {};
struct rest_of_all  : seq<word<'r','e','s','t'>, at<bracket_end>> {};
struct bracket_name : plus<not_at<sor<eol, one<'[', ']', ':'>, seq<gap, one<']', ':'>>>>, next_bit> {};
struct part_rest    : word<'r','e','s','t'> {};
struct part_half    : word<'h','a','l','f'> {};
struct part_fraction: seq<at<sor<vulgar_fraction, seq<digits, fraction_bar, digits>>, bracket_end>, number> {};
struct part_amount  : measure {};
struct part         : seq<star<blank>, one<':'>, star<blank>, must<sor<part_rest, part_half, part_fraction, part_amount>>> {};
struct named        : seq<bracket_name, opt<part>> {};
struct number_ahead : seq<opt<about>, sor<digit, vulgar_fraction>> {};
struct inside       : sor<rest_of_all, seq<at<overnight, bracket_end>, overnight>, seq<at<heat_ahead>, temperature>,
                          if_must_else<at<number_ahead>, measured, named>> {};
struct bracket      : seq<one<'['>, star<blank>, must<inside>, must<closing>> {};
struct stray_close  : one<']'> {};
struct no_stray     : not_at<stray_close> {};
struct step_part    : sor<bracket, fold, escaped, plain_text, lone_slash> {};
// A step that is all comments has nothing to do.
struct step_text    : seq<star<fold>, not_at<comment, eof>, sor<bracket, escaped, plain_text, lone_slash>, star<step_part>> {};
struct step_line    : seq<star<blank>, one<'-'>, star<blank>, must<step_text>, must<no_stray>, must<end_of_line>> {};

// Settings: a word, a colon and a value
struct key          : seq<alpha, star<sor<alnum, one<'-', '_'>>>> {};
struct setting_head : seq<star<blank>, key, star<blank>, one<':'>, star<blank>> {};
struct value_text   : seq<no_comment, plus<not_at<sor<line_end, comment_ahead>>, next_bit>> {};
struct prose_text   : plus<not_at<sor<eol, comment_ahead, one<'\\'>, seq<gap, sor<eol, eof>>>>, next_bit> {};
struct prose        : seq<not_at<comment, eof>, plus<sor<fold, escaped, prose_text, lone_slash>>> {};
struct words_value  : seq<must<value_text>, must<end_of_line>> {};
struct prose_value  : seq<must<prose>, must<end_of_line>> {};
struct entry        : seq<no_comment, plus<not_at<sor<line_end, comment_ahead, one<','>>>, next_bit>> {};
struct comma        : seq<star<blank>, one<','>, star<blank>> {};
template <typename R> struct list_of : seq<must<R>, star<comma, must<R>>, must<end_of_line>> {};
struct list_value   : list_of<entry> {};

struct piece_end    : sor<line_end, comment_ahead, one<','>, seq<gap, word<'o','f'>, gap, amount_ahead>> {};
struct piece        : seq<no_comment, plus<not_at<piece_end>, next_bit>> {};
struct of_each      : seq<gap, word<'o','f'>, gap, must<unit_measure>> {};
struct yield_unit   : seq<not_at<sor<stick, drop, dash, pinch>>, unit> {};
struct yield_whole  : seq<new_measure, amount, star<blank>, yield_unit> {};
struct yield_number : seq<amount> {};
struct yield_count  : seq<yield_number, opt<gap, piece>, opt<of_each>> {};
struct yield_piece  : seq<piece, of_each> {};
struct whole_ahead  : seq<opt<about>, counted, star<blank>, yield_unit> {};
struct yield        : sor<seq<at<whole_ahead>, yield_whole>, seq<at<amount_ahead>, yield_count>, yield_piece> {};
struct yield_value  : seq<sor<yield, raise<yield>>, must<end_of_line>> {};

struct percent_sign : seq<star<blank>, one<'%'>> {};
struct one_loss     : seq<counted, must<percent_sign>, star<blank>, opt<entry>> {};
struct loss_value   : list_of<one_loss> {};

struct keep_time    : seq<at<time_ahead>, amount, star<blank>, time_unit> {};
struct keep_place   : entry {};
struct keep         : sor<seq<keep_time, opt<gap, keep_place>>, keep_place> {};
struct keeps_value  : list_of<keep> {};

struct tin_shape    : entry {};
struct tin_by_size  : seq<length, opt<gap, tin_shape>> {};
struct tin_weight   : seq<new_measure, amount, star<blank>, unit> {};
struct tin_by_weight: seq<tin_weight, opt<gap, tin_shape>> {};
struct tin          : sor<seq<at<length_ahead>, tin_by_size>, seq<at<whole_ahead>, tin_by_weight>> {};
struct tin_value    : seq<must<tin>, must<end_of_line>> {};

struct per_word     : seq<gap, word<'p','e','r'>, gap> {};
struct per_number   : seq<at<sor<digit, vulgar_fraction>>, number, star<blank>> {};
struct per_measure  : seq<at<opt<per_number>, unit_name>, opt<per_number>, unit> {};
struct per_thing    : plus<letter> {};
struct each_word    : seq<gap, word<'e','a','c','h'>> {};
struct figure_mass  : unit_measure {};
struct per_what     : sor<per_measure, per_thing> {};
struct figure_basis : sor<each_word, seq<per_word, must<per_what>>> {};
struct figure_state : entry {};
struct figure       : seq<figure_mass, must<figure_basis>, opt<gap, figure_state>> {};
struct weighs_value : list_of<figure> {};

struct price_number : seq<number> {};
struct price        : seq<price_number, must<per_word>, must<unit_measure>> {};
struct price_value  : seq<must<price>, must<end_of_line>> {};
struct measure_value: seq<must<unit_measure>, must<end_of_line>> {};
struct yes          : word<'y','e','s'> {};
struct no           : word<'n','o'> {};
struct yes_or_no    : sor<yes, no> {};
struct yes_no_value : seq<must<yes_or_no>, must<end_of_line>> {};

// What a line is, by how it begins
struct blank_line   : seq<star<blank>, line_end> {};
struct comment_line : seq<star<blank>, comment, line_end> {};
struct step_start   : seq<star<blank>, one<'-'>, sor<blank, line_end>> {};
struct setting_start: setting_head {};
struct amount_start : seq<star<blank>, amount_ahead> {};

// The whole of a line, in any of its forms: what `analyze` proves free of loops.
struct any_line     : sor<blank_line, comment_line, step_line,
                          seq<setting_head, sor<words_value, prose_value, list_value, yield_value, loss_value, keeps_value,
                                                tin_value, weighs_value, price_value, measure_value, yes_no_value>>,
                          ingredient_line> {};
struct file         : seq<any_line, star<eol, any_line>, must<eof>> {};

// clang-format on

} // namespace benchcard::grammar::rules
