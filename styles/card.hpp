#pragma once

#include <optional>
#include <string>
#include <vector>

/// A card as it will be read: strings ready to print, in the order a cook needs them.
/// Nothing here knows a unit or an ingredient; nothing behind it knows a geometry.
namespace benchcard::styles {

/// Words in one weight. A paragraph is a list of them, set one after the other; blanks at
/// their ends count.
struct run {
    std::string text;
    bool strong = false;

    bool operator==(const run&) const = default;
};
using paragraph = std::vector<run>;

/// One line of the weigh-out.
struct weigh_row {
    std::string amount;      ///< `400`, `1.5`, `8`, `½`; empty for what is not weighed
    std::string unit;        ///< `g`, `ml`, `cases`, or `some`; empty for what is simply counted
    std::string name;        ///< bold
    std::string preparation; ///< `soft`, set after a comma; one that begins with `(` without
    std::string imperial;    ///< `14 oz`, `1 lb 2½ oz`; may be empty
    std::string spoons;      ///< `1¾ cups`, `¼ tsp`; may be empty
    std::string percent;     ///< baker's percentage, `62.5 %`; may be empty

    bool operator==(const weigh_row&) const = default;
};

/// A line of the weigh-out table that is not weighed: the total and the check on the scale.
struct total_row {
    std::string amount; ///< `1600`
    std::string unit;   ///< `g`
    std::string text;   ///< `in the bowl: 4 fillings of 400 g`

    bool operator==(const total_row&) const = default;
};

/// One oven setting in all scales, each ready to print (`180 °C`); time may be empty.
struct oven_row {
    std::string celsius, fan, fahrenheit, gas, time;

    bool operator==(const oven_row&) const = default;
};

/// A table of figures: a name, and figures that line up on their decimal points.
struct table_row {
    std::string name;                 ///< bold
    std::string remark;               ///< `113–142 g a cup as filled`, set after the name
    std::vector<std::string> figures; ///< one a heading; each may be empty

    bool operator==(const table_row&) const = default;
};
struct table {
    std::vector<std::string> headings; ///< one a column of figures
    std::vector<table_row> rows;

    bool operator==(const table&) const = default;
};

/// How figures came about: a heading, and lines that belong further and further under it.
struct figure_line {
    std::size_t depth = 0; ///< 0 for what the next ones explain
    std::string text;

    bool operator==(const figure_line&) const = default;
};
struct figures {
    std::string title;
    std::vector<figure_line> lines;

    bool operator==(const figures&) const = default;
};

struct card {
    std::string title;            ///< the component
    std::string recipe;           ///< the recipe it belongs to; empty when it is the title
    std::string station;          ///< may be empty
    std::string batch;            ///< `× 2`; as large as the title
    std::string yield;            ///< `1600 g · for 4 tarts`; may be empty
    std::string imperial_heading; ///< over the column: `oz`
    std::string spoons_heading;   ///< over the column: `US cups`; says whose cups they are
    std::string percent_heading;  ///< over the column: `% of flour`; empty when no row has one
    std::vector<weigh_row> weigh_out;
    std::vector<total_row> totals;
    styles::table table;           ///< of a wall chart; empty on a card of a component
    std::vector<paragraph> method; ///< one a step, numbered by the layout
    std::vector<oven_row> oven;
    paragraph allergens;             ///< `Contains **almonds** · **egg**`; may be empty
    std::vector<paragraph> cautions; ///< each set in a bordered box with a symbol
    std::vector<paragraph> notes;
    paragraph keeping;       ///< `Keeps **3 days** chilled`; may be empty
    std::string made_label;  ///< words before the blank for the date: `made`
    std::string revision;    ///< `rev 3 · 2026-11-25 · 1 check accepted`; may be empty
    std::string footnote;    ///< `check the packet for allergens; local rules come first`
    std::string number;      ///< `card 2 of 3`
    std::string fingerprint; ///< `7K4Q-92`
    std::string language;    ///< of the words, as in BCP 47: `en`
    bool is_recipe = false;  ///< a whole recipe: its pages are numbered
    /// Of a whole recipe the cards of its components, in turn; else none. Their own allergens,
    /// cautions and feet are empty, for they stand once on the whole.
    std::vector<card> parts;
    std::vector<styles::figures> figures; ///< where the amounts come from; may be empty

    bool operator==(const card&) const = default;
};

} // namespace benchcard::styles
