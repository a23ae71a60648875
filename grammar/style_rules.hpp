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
struct least : number {};
struct most : number {};
struct to : sor<one<'-'>, string<'\xE2', '\x80', '\x93'>, string<'t', 'o'>> {};

/// `8 mm`
struct length : seq<least, blanks, string<'m', 'm'>, eof> {};
/// `14-30 pt`
struct type_sizes : seq<least, blanks, to, blanks, most, blanks, string<'p', 't'>, eof> {};

struct list_item : seq<plus<sor<alnum, one<'-'>>>> {};
/// `tick, amount, name`
struct list : seq<list_item, star<blanks, one<','>, blanks, list_item>, eof> {};

} // namespace benchcard::grammar::style_rules
