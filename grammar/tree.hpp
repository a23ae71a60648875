#pragma once

#include "grammar/exact.hpp"
#include "grammar/source.hpp"
#include "grammar/units.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// What was read, before anything is known of what it means. Every node has its span.
namespace benchcard::grammar {

/// Some words as written, with runs of white space made one blank.
struct words {
    std::string text;
    span where;
};

/// `400`, `1 1/2`, `3-4`, `about 2`, `2 x 400`, `a`, `half`, `all`, `some`.
struct amount {
    enum class sort { number, half, all, some };

    span where;
    sort is = sort::number; ///< `half` alone, as in `half Custard`; `half a lemon` is a number
    bool about = false;
    std::optional<exact> packs = {}; ///< the 2 of `2 x 400 g`
    exact low = 0;                   ///< greater than zero for a number; 0 for all and some
    exact high = 0;                  ///< equal to `low` unless a range was written
};

/// How full a measure is: `heaped`, `scant` and `rounded` are not measures, `level` and `packed`
/// are.
enum class filling { plain, level, packed, heaped, scant, rounded };

/// An amount with its measure: `1 1/2 cups`, `3 heaped tsp`, `4` (of something counted).
struct measure {
    span where;
    amount quantity;
    std::optional<unit> in = {};
    filling filled = filling::plain;
};

/// `2 cups = 250 g   plain flour, sifted`
struct ingredient_line {
    span where;
    std::vector<measure> amounts;     ///< added up: `1 cup + 2 tbsp`, `1 lb 4 oz`; never empty
    std::optional<words> piece = {};  ///< what is counted, before an equals sign: `6 leaves = 10 g`
    std::vector<measure> equals = {}; ///< what stands after `=`, added up
    std::vector<words> names;         ///< more than one for `hazelnuts or almonds`; never empty
    std::vector<words> preparations = {}; ///< what follows each comma
};

/// What a step has in brackets.
struct reference {
    /// `half`, `1/3`, `50 g`, `rest`
    struct part {
        enum class sort { share, amount, rest };
        span where;
        sort is = sort::rest;
        exact share = 0; ///< of the whole, for a share
        measure of = {}; ///< for an amount
    };
    words name;
    std::optional<part> of = {};
};
struct rest_of_block {}; ///< `[rest]`
struct temperature {
    amount degrees; ///< or the gas mark
    oven_scale scale = oven_scale::celsius;
    std::optional<std::pair<amount, oven_scale>> equals = {}; ///< `[180 C = 350 F]`
};
struct duration {
    exact low_minutes = 0, high_minutes = 0; ///< 0 for `overnight`
    bool overnight = false;
};
struct length {
    std::vector<amount> sides; ///< one for `23 cm`, two for `20 x 30 cm`
    length_unit in = length_unit::centimetre;
    std::string shape = {}; ///< the words after it: `round`
};
struct piece_measure {
    measure of;
    bool total = false; ///< `[480 g total]` scales with the batch; `[22 g]` does not
};
struct bracket {
    span where; ///< with its brackets
    std::variant<reference, rest_of_block, temperature, duration, length, piece_measure> holds;
};

/// A step of the method: words and brackets in turn.
struct step {
    span where;
    std::vector<std::variant<words, bracket>> parts; ///< blanks at the words' ends are kept
};

/// `40 rounds of 22 g`, `2 tarts`, `900 g`, `rounds of 20-22 g`, `8`
struct yield {
    std::optional<amount> count = {};
    std::optional<words> piece = {};
    std::optional<measure> each = {};  ///< the weight of a piece
    std::optional<measure> whole = {}; ///< `900 g`, `1.2 l`: everything, with no pieces
};
/// `8% in the oven`
struct loss {
    exact low_percent = 0, high_percent = 0; ///< 0 to 100
    words place;
};
/// `3 days chilled`
struct keeping {
    words text; ///< as written
    exact low_hours = 0, high_hours = 0;
    words place; ///< `chilled`, `frozen`, `in a tin`; may be empty
};
/// `23 cm round`, `20 x 30 cm`, `900 g loaf`
struct tin {
    std::variant<length, measure> size;
    words shape; ///< may be empty
};
/// `160 g per cup spooned`, `58 g each`, `3 g per clove`
struct weight_figure {
    span where;
    measure mass;
    std::variant<measure, words> per; ///< a measure, or what is counted (`each` is an empty word)
    words state;                      ///< `spooned`, `sifted`, `us large`; may be empty
};
struct price {
    exact money = 0;
    measure per;
};

/// Every setting there is.
enum class key {
    recipe,
    by,
    source,
    revision,
    date,
    makes,
    serves,
    measures,
    labels,
    note,
    caution,
    use,
    component,
    assembly,
    station,
    per,
    loss,
    keeps,
    tin,
    tray,
    percent,
    whole_batch,
    at_most,
    at_least,
    accept,
    ingredient,
    also,
    weighs,
    contains,
    may_contain,
    raw,
    whole,
    costs,
    scale_step,
    require,
};

/// A setting's value is words, a list of words (between commas), or one of the forms above.
using setting_value =
    std::variant<words, std::vector<words>, yield, std::vector<loss>, std::vector<keeping>, tin,
                 std::vector<weight_figure>, price, measure, bool>;

struct setting {
    span where; ///< the whole line
    key name = key::note;
    span key_where; ///< the word before the colon
    span value_where;
    setting_value value;
};

struct comment {
    span where;
    std::string text;
}; ///< from `#` to the end of its line
struct empty_line {
    span where;
};
struct unread {
    span where;
}; ///< a line that could not be read; its message says why

using item_value = std::variant<setting, ingredient_line, step, comment, empty_line, unread>;

struct item {
    item_value value;
    std::vector<comment> comments = {}; ///< on the same line or lines, behind it
};

/// `recipe:`, `component:`, `assembly:` or `ingredient:` and all that stands under it.
struct block {
    enum class sort { before, recipe, component, assembly, ingredient };
    sort is = sort::before; ///< `before`: what stands before the first of the four
    words title;
    span where; ///< the opening line
    std::vector<item> items;
};

struct tree {
    std::vector<block> blocks; ///< in the order of the file; the first is always a `before`
};

} // namespace benchcard::grammar
