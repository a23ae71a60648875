#pragma once

#include <tao/pegtl.hpp>

/// The rules of a style file, and nothing else: lines of `setting: value`.
namespace benchcard::grammar::style_rules {

using namespace tao::pegtl;

struct blanks : star<blank> {};
struct comment : seq<one<'#'>, until<eof>> {};
/// A comment begins a line, or has a blank before it.
struct tail : seq<blanks, opt<comment>, eof> {};

struct setting_name : seq<alpha, star<sor<alnum, one<' ', '-'>>>> {};
struct setting_value : star<not_at<plus<blank>, comment>, not_at<tail>, any> {};
/// One line, without its end.
struct line
    : seq<blanks, sor<seq<setting_name, blanks, one<':'>, blanks, setting_value, tail>, tail>> {};

struct number : seq<plus<digit>, opt<one<'.'>, plus<digit>>> {};
struct word : seq<plus<sor<alnum, one<'-'>>>> {};
struct least : number {};
struct most : number {};
struct to : sor<one<'-'>, string<'\xE2', '\x80', '\x93'>, string<'t', 'o'>> {};

/// `8 mm`
struct length : seq<least, blanks, string<'m', 'm'>, eof> {};
/// `14-30 pt`
struct type_sizes : seq<least, blanks, to, blanks, most, blanks, string<'p', 't'>, eof> {};

/// `top 14 mm`
struct side : word {};
struct side_and_length : seq<side, plus<blank>, least, blanks, string<'m', 'm'>, eof> {};
/// `4 a sheet`
struct number_a_sheet
    : seq<least, plus<blank>, string<'a'>, plus<blank>, string<'s', 'h', 'e', 'e', 't'>, eof> {};

struct colour_part : rep_min_max<1, 3, digit> {};
/// `20 80 60`: red, green and blue
struct colour : seq<colour_part, plus<blank>, colour_part, plus<blank>, colour_part, eof> {};

struct list_item : word {};
/// `tick, amount, name`
struct list : seq<list_item, star<blanks, one<','>, blanks, list_item>, eof> {};

} // namespace benchcard::grammar::style_rules
