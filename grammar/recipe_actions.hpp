#pragma once

#include "grammar/recipe_rules.hpp"
#include "grammar/tree.hpp"

#include <string_view>
#include <utility>

/// What the rules make: each action puts one piece into the scratch pad of the line being read.
/// The pad is new for every line, so a line that fails leaves nothing behind.
namespace benchcard::grammar {

/// Why a line cannot be read, thrown by actions and by rules that had to match.
struct line_error {
    std::string_view kind;
    std::string message;
    const char* begin;
    const char* end; ///< equal to `begin` where only a place is known
};

struct scratch {
    const char* base; ///< where the file's text begins
    std::uint32_t file;

    exact first = 0, numerator = 0, value = 0; ///< of the number being read
    exact money = 0;
    bool mixed = false;
    amount quantity;
    filling filled = filling::plain;
    std::optional<unit> in;
    measure last_measure;
    std::vector<measure> terms;
    exact minutes_each = 0, low_minutes = 0, high_minutes = 0;
    bool keeps_time = false;
    oven_scale scale = oven_scale::celsius;
    std::vector<std::pair<amount, oven_scale>> heats;
    length_unit length_in = length_unit::centimetre;
    std::optional<words> shape;
    std::optional<reference::part> part;
    bool total = false;
    std::optional<std::variant<measure, words>> figure_per;
    std::optional<measure> figure_mass;
    std::string prose;

    ingredient_line line;
    step method;
    bracket in_bracket;
    key setting = key::note;
    std::optional<setting_value> value_read;
    yield made;
    std::vector<words> list;
    std::vector<loss> losses;
    std::vector<keeping> keepings;
    std::vector<weight_figure> figures;
    words text;
    std::vector<comment> comments;

    span between(const char* begin, const char* end) const {
        return {file, static_cast<std::uint32_t>(begin - base),
                static_cast<std::uint32_t>(end - base)};
    }
    span of(const auto& matched) const { return between(matched.begin(), matched.end()); }
};

/// The words between two places: blanks at the ends cut off, runs of blanks made one.
words words_between(const scratch& s, const char* begin, const char* end);
/// The whole number that some digits are; a `line_error` where they are too many to be an amount.
exact number_of(std::string_view digits);
/// The number below the line of a fraction; a `line_error` where it is 0 or too fine.
exact denominator_of(std::string_view digits);
/// The part after the decimal point that some digits are.
exact decimals_of(std::string_view digits);

template <typename Rule> struct action : tao::pegtl::nothing<Rule> {};

// clang-format off
// Numbers
template <> struct action<rules::new_number> { static void apply0(scratch& s) { s.value = 0; s.mixed = false; } };
template <> struct action<rules::first_digits> { static void apply(const auto& in, scratch& s) { s.value = s.first = number_of(in.string_view()); } };
template <> struct action<rules::decimals> { static void apply(const auto& in, scratch& s) { s.value += decimals_of(in.string_view()); } };
template <> struct action<rules::numerator> { static void apply(const auto& in, scratch& s) { s.numerator = number_of(in.string_view()); s.mixed = true; } };
template <> struct action<rules::denominator> { static void apply(const auto& in, scratch& s) {
    const auto below = denominator_of(in.string_view());
    s.value = s.mixed ? exact(s.first + s.numerator / below) : exact(s.first / below);
} };
template <int N, int D, char32_t C> struct action<rules::vulgar<N, D, C>> {
    static void apply0(scratch& s) { s.value += exact(N, D); }
};
template <> struct action<rules::two_readings> { static void apply(const auto& in, scratch&) {
    std::string plain, decimal;
    for (char c : in.string_view()) { if (c != ',') plain += c; decimal += c == ',' ? '.' : c; }
    throw line_error{"ambiguous-comma", "`" + in.string() + "` can be read two ways: write `" + plain + "` or `" + decimal + "`", in.begin(), in.end()};
} };

// Amounts
template <> struct action<rules::new_amount> { static void apply0(scratch& s) { s.quantity = {}; } };
template <> struct action<rules::about> { static void apply0(scratch& s) { s.quantity.about = true; } };
template <> struct action<rules::number> { static void apply0(scratch& s) { s.quantity.low = s.quantity.high = s.value; } };
template <> struct action<rules::pack_number> { static void apply0(scratch& s) { s.quantity.packs = s.quantity.low; s.quantity.low = s.quantity.high = s.value; } };
template <> struct action<rules::high_number> { static void apply0(scratch& s) { s.quantity.high = s.value; } };
template <> struct action<rules::half_a> { static void apply0(scratch& s) { s.quantity.low = s.quantity.high = exact(1, 2); } };
template <> struct action<rules::half> { static void apply0(scratch& s) { s.quantity.is = amount::sort::half; s.quantity.low = s.quantity.high = exact(1, 2); } };
template <> struct action<rules::one_of> { static void apply0(scratch& s) { s.quantity.low = s.quantity.high = 1; } };
template <> struct action<rules::dozen> { static void apply0(scratch& s) { s.quantity.low *= 12, s.quantity.high *= 12; } };
template <> struct action<rules::all_of> { static void apply0(scratch& s) { s.quantity.is = amount::sort::all; } };
template <> struct action<rules::some_of> { static void apply0(scratch& s) { s.quantity.is = amount::sort::some; } };
template <> struct action<rules::amount> { static void apply(const auto& in, scratch& s) {
    auto& q = s.quantity;
    q.where = s.of(in);
    const bool is_number = q.is == amount::sort::number;
    if (is_number && (q.low == 0 || q.high == 0 || (q.packs && *q.packs == 0)))
        throw line_error{"zero-amount", "an amount must be more than nothing", in.begin(), in.end()};
} };

// Measures
template <unit U> struct names_unit { static void apply0(scratch& s) { s.in = U; } };
template <> struct action<rules::milligram> : names_unit<unit::milligram> {};
template <> struct action<rules::gram> : names_unit<unit::gram> {};
template <> struct action<rules::kilogram> : names_unit<unit::kilogram> {};
template <> struct action<rules::ounce> : names_unit<unit::ounce> {};
template <> struct action<rules::pound> : names_unit<unit::pound> {};
template <> struct action<rules::millilitre> : names_unit<unit::millilitre> {};
template <> struct action<rules::centilitre> : names_unit<unit::centilitre> {};
template <> struct action<rules::decilitre> : names_unit<unit::decilitre> {};
template <> struct action<rules::litre> : names_unit<unit::litre> {};
template <> struct action<rules::drop> : names_unit<unit::drop> {};
template <> struct action<rules::dash> : names_unit<unit::dash> {};
template <> struct action<rules::pinch> : names_unit<unit::pinch> {};
template <> struct action<rules::teaspoon> : names_unit<unit::teaspoon> {};
template <> struct action<rules::dessertspoon> : names_unit<unit::dessertspoon> {};
template <> struct action<rules::tablespoon> : names_unit<unit::tablespoon> {};
template <> struct action<rules::fluid_ounce> : names_unit<unit::fluid_ounce> {};
template <> struct action<rules::gill> : names_unit<unit::gill> {};
template <> struct action<rules::cup> : names_unit<unit::cup> {};
template <> struct action<rules::pint> : names_unit<unit::pint> {};
template <> struct action<rules::quart> : names_unit<unit::quart> {};
template <> struct action<rules::gallon> : names_unit<unit::gallon> {};
template <> struct action<rules::stick> : names_unit<unit::stick> {};

template <filling F> struct names_filling { static void apply0(scratch& s) { s.filled = F; } };
template <> struct action<rules::level> : names_filling<filling::level> {};
template <> struct action<rules::heaped> : names_filling<filling::heaped> {};
template <> struct action<rules::scant> : names_filling<filling::scant> {};
template <> struct action<rules::rounded> : names_filling<filling::rounded> {};
template <> struct action<rules::packed> : names_filling<filling::packed> {};

inline void keep_measure(scratch& s, span where) { s.last_measure = {where, s.quantity, s.in, s.filled}; }

template <> struct action<rules::new_measure> { static void apply0(scratch& s) { s.in.reset(); s.filled = filling::plain; } };
template <> struct action<rules::measure> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); s.terms.push_back(s.last_measure); } };
template <> struct action<rules::unit_measure> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); } };
template <> struct action<rules::yield_whole> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); s.made.whole = s.last_measure; } };
template <> struct action<rules::tin_weight> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); } };
template <> struct action<rules::part_amount> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); s.part = reference::part{s.of(in), reference::part::sort::amount, 0, s.last_measure}; } };

// Ingredient lines
template <> struct action<rules::line_amounts> { static void apply0(scratch& s) { s.line.amounts = std::exchange(s.terms, {}); } };
template <> struct action<rules::equal_amounts> { static void apply0(scratch& s) { s.line.equals = std::exchange(s.terms, {}); } };
template <> struct action<rules::piece_word> { static void apply(const auto& in, scratch& s) { s.line.piece = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::name> { static void apply(const auto& in, scratch& s) { s.line.names.push_back(words_between(s, in.begin(), in.end())); } };
template <> struct action<rules::preparation> { static void apply(const auto& in, scratch& s) { s.line.preparations.push_back(words_between(s, in.begin(), in.end())); } };
template <> struct action<rules::comment> { static void apply(const auto& in, scratch& s) { s.comments.push_back({s.of(in), in.string()}); } };

// Times, temperatures and lengths
template <int Numerator, int Denominator = 1> struct names_time { static void apply0(scratch& s) { s.minutes_each = exact(Numerator, Denominator); } };
template <> struct action<rules::seconds> : names_time<1, 60> {};
template <> struct action<rules::minutes> : names_time<1> {};
template <> struct action<rules::hours> : names_time<60> {};
template <> struct action<rules::days> : names_time<1440> {};
template <> struct action<rules::weeks> : names_time<10080> {};
template <> struct action<rules::months> : names_time<43200> {};   // 30 days
template <> struct action<rules::years> : names_time<525600> {};   // 365 days
template <> struct action<rules::time_term> { static void apply0(scratch& s) { s.low_minutes += s.quantity.low * s.minutes_each; s.high_minutes += s.quantity.high * s.minutes_each; } };
template <> struct action<rules::duration> { static void apply0(scratch& s) { s.in_bracket.holds = duration{s.low_minutes, s.high_minutes, false}; } };
template <> struct action<rules::overnight> { static void apply0(scratch& s) { s.in_bracket.holds = duration{0, 0, true}; } };

template <oven_scale S> struct names_scale { static void apply0(scratch& s) { s.scale = S; } };
template <> struct action<rules::gas_setting> : names_scale<oven_scale::gas_mark> {};
template <> struct action<rules::fan_celsius> : names_scale<oven_scale::fan_celsius> {};
template <> struct action<rules::celsius> : names_scale<oven_scale::celsius> {};
template <> struct action<rules::fahrenheit> : names_scale<oven_scale::fahrenheit> {};
template <> struct action<rules::heat> { static void apply0(scratch& s) { s.heats.emplace_back(s.quantity, s.scale); } };
template <> struct action<rules::temperature> { static void apply0(scratch& s) {
    grammar::temperature t{s.heats.front().first, s.heats.front().second, {}};
    if (s.heats.size() > 1) t.equals = s.heats[1];
    s.in_bracket.holds = std::move(t);
} };

template <length_unit L> struct names_length { static void apply0(scratch& s) { s.length_in = L; } };
template <> struct action<rules::millimetre> : names_length<length_unit::millimetre> {};
template <> struct action<rules::centimetre> : names_length<length_unit::centimetre> {};
template <> struct action<rules::inch> : names_length<length_unit::inch> {};
/// `20 x 30 cm` is read as a pack of 20 times 30, which for a length are its two sides.
length length_of(const scratch& s);
template <> struct action<rules::shape> { static void apply(const auto& in, scratch& s) { s.shape = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::sized> { static void apply0(scratch& s) {
    auto size = length_of(s);
    if (s.shape) size.shape = s.shape->text;
    s.in_bracket.holds = std::move(size);
} };
template <> struct action<rules::total_word> { static void apply0(scratch& s) { s.total = true; } };
template <> struct action<rules::piece_weight> { static void apply0(scratch& s) { s.in_bracket.holds = piece_measure{s.last_measure, s.total}; } };

// Steps
void add_words(scratch& s, span where, std::string_view text);
/// A line's end within a text is one blank, however many lines it takes, and none at its beginning.
void add_fold(scratch& s, span where);
template <> struct action<rules::plain_text> { static void apply(const auto& in, scratch& s) { add_words(s, s.of(in), in.string_view()); } };
template <> struct action<rules::lone_slash> { static void apply(const auto& in, scratch& s) { add_words(s, s.of(in), in.string_view()); s.prose += '\\'; } };
template <> struct action<rules::escaped> { static void apply(const auto& in, scratch& s) {
    add_words(s, s.of(in), in.string_view().substr(1));
    s.prose += in.string_view().substr(1);
} };
template <> struct action<rules::fold> { static void apply(const auto& in, scratch& s) { add_fold(s, s.of(in)); } };
template <> struct action<rules::prose_text> { static void apply(const auto& in, scratch& s) {
    s.prose += in.string_view();
} };
template <> struct action<rules::prose> { static void apply(const auto& in, scratch& s) { s.text = {s.prose, s.of(in)}; } };
template <> struct action<rules::rest_of_all> { static void apply0(scratch& s) { s.in_bracket.holds = rest_of_block{}; } };
template <> struct action<rules::bracket_name> { static void apply(const auto& in, scratch& s) { s.in_bracket.holds = reference{words_between(s, in.begin(), in.end()), {}}; } };
template <> struct action<rules::part_rest> { static void apply(const auto& in, scratch& s) { s.part = reference::part{s.of(in), reference::part::sort::rest, 0, {}}; } };
template <> struct action<rules::part_half> { static void apply(const auto& in, scratch& s) { s.part = reference::part{s.of(in), reference::part::sort::share, exact(1, 2), {}}; } };
template <> struct action<rules::part_fraction> { static void apply(const auto& in, scratch& s) { s.part = reference::part{s.of(in), reference::part::sort::share, s.value, {}}; } };
template <> struct action<rules::named> { static void apply0(scratch& s) { if (s.part) std::get<reference>(s.in_bracket.holds).of = s.part; } };
template <> struct action<rules::bracket> { static void apply(const auto& in, scratch& s) {
    s.in_bracket.where = s.of(in);
    s.method.parts.emplace_back(std::exchange(s.in_bracket, {}));
    s.part.reset(); s.shape.reset(); s.total = false; s.heats.clear(); s.terms.clear();
    s.low_minutes = s.high_minutes = 0;
} };

// Settings
template <> struct action<rules::value_text> { static void apply(const auto& in, scratch& s) { s.text = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::words_value> { static void apply0(scratch& s) { s.value_read = s.text; } };
template <> struct action<rules::prose_value> { static void apply0(scratch& s) { s.value_read = s.text; } };
template <> struct action<rules::entry> { static void apply(const auto& in, scratch& s) { s.list.push_back(words_between(s, in.begin(), in.end())); } };
template <> struct action<rules::list_value> { static void apply0(scratch& s) { s.value_read = s.list; } };
template <> struct action<rules::piece> { static void apply(const auto& in, scratch& s) { s.made.piece = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::of_each> { static void apply0(scratch& s) { s.made.each = s.last_measure; } };
template <> struct action<rules::yield_number> { static void apply0(scratch& s) { s.made.count = s.quantity; } };
template <> struct action<rules::yield_value> { static void apply0(scratch& s) { s.value_read = s.made; } };
template <> struct action<rules::one_loss> { static void apply(const auto& in, scratch& s) {
    auto where = s.list.empty() ? words{"", s.between(in.end(), in.end())} : s.list.back();
    s.list.clear();
    if (s.quantity.high >= 100)
        throw line_error{"unreadable-value", "a loss is less than 100 %", in.begin(), in.end()};
    s.losses.push_back({s.quantity.low, s.quantity.high, std::move(where)});
} };
template <> struct action<rules::loss_value> { static void apply0(scratch& s) { s.value_read = s.losses; } };
template <> struct action<rules::keep_time> { static void apply0(scratch& s) { s.keeps_time = true; } };
template <> struct action<rules::keep_place> { static void apply(const auto& in, scratch& s) { s.text = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::keep> { static void apply(const auto& in, scratch& s) {
    keeping k{words_between(s, in.begin(), in.end()), 0, 0, std::exchange(s.text, {})};
    if (std::exchange(s.keeps_time, false)) {
        k.low_hours = s.quantity.low * s.minutes_each / 60;
        k.high_hours = s.quantity.high * s.minutes_each / 60;
    }
    s.keepings.push_back(std::move(k));
} };
template <> struct action<rules::keeps_value> { static void apply0(scratch& s) { s.value_read = s.keepings; } };
template <> struct action<rules::tin_shape> { static void apply(const auto& in, scratch& s) { s.text = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::tin_by_size> { static void apply0(scratch& s) { s.value_read = tin{length_of(s), s.text}; } };
template <> struct action<rules::tin_by_weight> { static void apply0(scratch& s) { s.value_read = tin{s.last_measure, s.text}; } };
template <> struct action<rules::figure_mass> { static void apply(const auto& in, scratch& s) { keep_measure(s, s.of(in)); s.figure_mass = s.last_measure; } };
template <> struct action<rules::each_word> { static void apply(const auto& in, scratch& s) { s.figure_per = words{"", s.of(in)}; } };
template <> struct action<rules::per_word> { static void apply0(scratch& s) { s.value = 1; s.in.reset(); } };
template <> struct action<rules::per_measure> { static void apply(const auto& in, scratch& s) {
    measure per;
    per.where = per.quantity.where = s.of(in);
    per.quantity.low = per.quantity.high = s.value;
    per.in = s.in;
    s.figure_per = std::move(per);
} };
template <> struct action<rules::per_thing> { static void apply(const auto& in, scratch& s) { s.figure_per = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::figure_state> { static void apply(const auto& in, scratch& s) { s.text = words_between(s, in.begin(), in.end()); } };
template <> struct action<rules::figure> { static void apply(const auto& in, scratch& s) {
    s.figures.push_back({s.of(in), *s.figure_mass, *s.figure_per, std::exchange(s.text, {})});
} };
template <> struct action<rules::weighs_value> { static void apply0(scratch& s) { s.value_read = s.figures; } };
template <> struct action<rules::price_number> { static void apply0(scratch& s) { s.money = s.value; } };
template <> struct action<rules::price> { static void apply0(scratch& s) { s.value_read = grammar::price{s.money, s.last_measure}; } };
template <> struct action<rules::measure_value> { static void apply0(scratch& s) { s.value_read = s.last_measure; } };
template <> struct action<rules::yes> { static void apply0(scratch& s) { s.value_read = true; } };
template <> struct action<rules::no> { static void apply0(scratch& s) { s.value_read = false; } };

// clang-format on

} // namespace benchcard::grammar
