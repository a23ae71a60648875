#include "styles/style_reading.hpp"

#include "grammar/style_rules.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace benchcard::styles {

namespace {

namespace rules = grammar::style_rules;
using grammar::span;

/// What stands in a value: numbers and words, in turn.
struct numbers {
    std::string least, most;
    std::string side;
};
using items = std::vector<found>;
using parts = std::vector<std::string>;

} // namespace

template <> struct style_action<rules::least> {
    template <typename In> static void apply(const In& in, numbers& to) { to.least = in.string(); }
};
template <> struct style_action<rules::most> {
    template <typename In> static void apply(const In& in, numbers& to) { to.most = in.string(); }
};
template <> struct style_action<rules::side> {
    template <typename In> static void apply(const In& in, numbers& to) { to.side = in.string(); }
};
template <> struct style_action<rules::list_item> {
    template <typename In> static void apply(const In& in, items& to) { to.push_back(taken(in)); }
};
template <> struct style_action<rules::colour_part> {
    template <typename In> static void apply(const In& in, parts& to) { to.push_back(in.string()); }
};

namespace {

/// The number of a text that matched `rules::number`; digits without end are infinity.
double value_of(const std::string& text) {
    double value = 0;
    const auto end = text.data() + text.size();
    const auto result = std::from_chars(text.data(), end, value);
    return result.ec == std::errc{} ? value : INFINITY;
}

template <typename T> struct named {
    std::string_view name;
    T is;
};

constexpr named<column> columns_by_name[] = {
    {"tick", column::tick},         {"amount", column::amount}, {"name", column::name},
    {"imperial", column::imperial}, {"spoons", column::spoons}, {"percent", column::percent},
};
constexpr named<block> blocks_by_name[] = {
    {"weigh-out", block::weigh_out}, {"totals", block::totals}, {"table", block::table},
    {"method", block::method},       {"oven", block::oven},     {"allergens", block::allergens},
    {"cautions", block::cautions},   {"notes", block::notes},   {"keeping", block::keeping},
    {"figures", block::figures},
};
constexpr named<edge> edges_by_name[] = {
    {"top", edge::top}, {"right", edge::right}, {"bottom", edge::bottom}, {"left", edge::left}};
constexpr named<printed> printed_by_name[] = {{"cards", printed::card},
                                              {"recipes", printed::recipe}};

template <typename Table> std::vector<std::string> names_of(const Table& table) {
    std::vector<std::string> out;
    for (const auto& entry : table) out.emplace_back(entry.name);
    return out;
}

span part_of(const value_at& value, const found& part) {
    const auto begin = value.where.begin + static_cast<std::uint32_t>(part.at);
    return {value.where.file, begin, begin + static_cast<std::uint32_t>(part.text.size())};
}

/// A list of words out of a table, each at most once.
template <typename T, std::size_t Size>
void read_list(reading& r, const value_at& value, const named<T> (&table)[Size], const char* what,
               std::vector<T>& into) {
    items found_items;
    if (!matches<rules::list>(value.text, found_items)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where {}s with commas between them should stand", value.text,
                           what),
               fmt::format("write some of: {}", fmt::join(names_of(table), ", ")));
        return;
    }
    std::vector<T> list;
    for (const auto& part : found_items) {
        const auto at = std::ranges::find(table, part.text, &named<T>::name);
        if (at == std::end(table)) {
            report_word(r, "style-word", part_of(value, part),
                        fmt::format("“{}” is not a {} of a card", part.text, what), part.text,
                        names_of(table));
        } else if (std::ranges::find(list, at->is) != list.end()) {
            report(r, "style-repeated", part_of(value, part),
                   fmt::format("“{}” stands here twice", part.text));
        } else {
            list.push_back(at->is);
        }
    }
    into = std::move(list);
}

void report_paper(reading& r, const value_at& value) {
    std::vector<std::string> names;
    for (const auto& p : papers()) names.emplace_back(p.name);
    report_word(r, "style-word", value.where,
                fmt::format("“{}” is not a paper that benchcard knows", value.text), value.text,
                names);
}

void read_paper(reading& r, const value_at& value) {
    if (const auto sheet = paper_named(value.text))
        r.made.sheet = *sheet;
    else
        report_paper(r, value);
}

void read_cut(reading& r, const value_at& value) {
    numbers n;
    if (matches<rules::number_a_sheet>(value.text, n)) {
        if (n.least == "2" || n.least == "4" || n.least == "8")
            r.made.cut = {std::nullopt, n.least.front() - '0'};
        else
            report(r, "style-value", value.where,
                   fmt::format("a sheet is not cut into {} equal cards", n.least),
                   "write 2, 4 or 8 a sheet, or a size: a6");
    } else if (const auto card = paper_named(value.text)) {
        r.made.cut = {card, 0};
    } else {
        report_paper(r, value);
    }
}

void read_prints(reading& r, const value_at& value) {
    const auto at = std::ranges::find(printed_by_name, value.text, &named<printed>::name);
    if (at != std::end(printed_by_name))
        r.made.prints = at->is;
    else
        report_word(r, "style-word", value.where,
                    fmt::format("“{}” is nothing that is printed", value.text), value.text,
                    names_of(printed_by_name));
}

/// A length in millimetres within bounds, or nothing and a message of that kind.
std::optional<double> length_in(reading& r, const value_at& value, const char* what, double least,
                                double most) {
    numbers n;
    if (!matches<rules::length>(value.text, n)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where a length in millimetres should stand", value.text),
               fmt::format("write it as in: {} mm", least));
        return std::nullopt;
    }
    const double length = value_of(n.least);
    if (length >= least && length <= most) return length;
    report(r, "style-length", value.where,
           fmt::format("{} of {} mm is too {}", what, n.least, length < least ? "small" : "large"),
           fmt::format("set it between {} mm and {} mm", least, most));
    return std::nullopt;
}

void read_corners(reading& r, const value_at& value) {
    if (const auto radius = length_in(r, value, "a radius", 0, 20)) r.made.corners = *radius;
}

void read_distance(reading& r, const value_at& value) {
    if (const auto far = length_in(r, value, "a distance", 200, 1500)) r.made.distance = far;
}

void read_x_height(reading& r, const value_at& value) {
    if (const auto height = length_in(r, value, "an x-height", 0.5, 10)) r.made.x_height = *height;
}

void read_margin(reading& r, const value_at& value) {
    constexpr double most = 25; // on the smallest card wider ones leave no line to write on
    numbers n;
    if (!matches<rules::length>(value.text, n)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where a width in millimetres should stand", value.text),
               "write it as in: 8 mm");
        return;
    }
    const double margin = value_of(n.least);
    if (margin < least_margin || margin > most) {
        report(r, "style-margin", value.where,
               fmt::format("a margin of {} mm is {}", n.least,
                           margin < least_margin ? "too narrow to laminate" : "too wide"),
               fmt::format("set it between {} mm and {} mm", least_margin, most));
        return;
    }
    r.made.margin = margin;
}

void read_hole(reading& r, const value_at& value) {
    constexpr double most = 30;
    numbers n;
    const bool reads = matches<rules::side_and_length>(value.text, n);
    const auto at = std::ranges::find(edges_by_name, n.side, &named<edge>::name);
    if (!reads || at == std::end(edges_by_name)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where an edge and a length should stand", value.text),
               "write it as in: top 14 mm; the edge is top, right, bottom or left");
        return;
    }
    const double clear = value_of(n.least);
    if (clear < least_margin || clear > most)
        report(r, "style-length", value.where,
               fmt::format("{} mm clear for a hole are too {}", n.least,
                           clear > most ? "many" : "few"),
               fmt::format("set it between {} mm and {} mm", least_margin, most));
    else
        r.made.hole = {at->is, clear};
}

void read_type(reading& r, const value_at& value, type_range& into) {
    constexpr double least = 6, most = 144;
    numbers n;
    if (!matches<rules::type_sizes>(value.text, n)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where the smallest and the largest type should stand",
                           value.text),
               "write them as in: 14-30 pt");
        return;
    }
    const type_range range{value_of(n.least), value_of(n.most)};
    if (range.least > range.most)
        report(r, "style-type", value.where,
               fmt::format("the smallest type, {} pt, is larger than the largest, {} pt", n.least,
                           n.most));
    else if (range.least < least || range.most > most)
        report(r, "style-type", value.where,
               fmt::format("type from {} to {} pt goes beyond what can be read or set", n.least,
                           n.most),
               fmt::format("set both between {} and {} pt", least, most));
    else
        into = range;
}

/// A colour that stands out on white, and white on it, also when all is printed in grey.
std::optional<colour> read_colour(reading& r, const value_at& value) {
    parts three;
    constexpr std::size_t most = 255;
    const bool reads = matches<rules::colour>(value.text, three);
    const auto within = [](const std::string& part) { return value_of(part) <= most; };
    if (!reads || !std::ranges::all_of(three, within)) {
        report(r, "style-value", value.where,
               fmt::format("found “{}” where a colour should stand", value.text),
               "write red, green and blue from 0 to 255 as in: 20 80 60");
        return std::nullopt;
    }
    const auto part = [&](std::size_t i) { return static_cast<std::uint8_t>(value_of(three[i])); };
    const colour ink{part(0), part(1), part(2)};
    const double seen = contrast_in_print(ink, white);
    if (seen >= least_contrast) return ink;
    report(r, "style-contrast", value.where,
           fmt::format("this colour's contrast to white is {:.1f}:1{}", std::floor(seen * 10) / 10,
                       contrast(ink, white) >= least_contrast ? " when it is printed in grey" : ""),
           fmt::format("take a darker one: what is read across a kitchen has {}:1 at least",
                       least_contrast));
    return std::nullopt;
}

void read_accent(reading& r, const value_at& value) {
    if (const auto ink = read_colour(r, value)) r.made.accent = *ink;
}

using reader = void (*)(reading&, const value_at&);

template <type_range style::*Range> void read_type_of(reading& r, const value_at& value) {
    read_type(r, value, r.made.*Range);
}
template <std::string layout_words::*Word> void read_word(reading& r, const value_at& value) {
    r.made.words.*Word = value.text;
}
void read_columns(reading& r, const value_at& value) {
    read_list(r, value, columns_by_name, "column", r.made.columns);
}
template <std::vector<block> style::*Blocks> void read_blocks(reading& r, const value_at& value) {
    read_list(r, value, blocks_by_name, "part", r.made.*Blocks);
}

constexpr named<reader> settings[] = {
    {"prints", read_prints},
    {"paper", read_paper},
    {"cut to", read_cut},
    {"margin", read_margin},
    {"hole", read_hole},
    {"corners", read_corners},
    {"distance", read_distance},
    {"x-height", read_x_height},
    {"title", read_type_of<&style::title>},
    {"amounts", read_type_of<&style::amounts>},
    {"names", read_type_of<&style::names>},
    {"text", read_type_of<&style::text>},
    {"small print", read_type_of<&style::small_print>},
    {"accent", read_accent},
    {"columns", read_columns},
    {"top", read_blocks<&style::top>},
    {"bottom", read_blocks<&style::bottom>},
    {"word oven", read_word<&layout_words::oven>},
    {"word fan", read_word<&layout_words::fan>},
    {"word fahrenheit", read_word<&layout_words::fahrenheit>},
    {"word gas", read_word<&layout_words::gas>},
    {"word time", read_word<&layout_words::time>},
    {"word continues", read_word<&layout_words::continues>},
    {"word page", read_word<&layout_words::page>},
    {"word of", read_word<&layout_words::of>},
};

} // namespace

std::vector<std::string> setting_names() { return names_of(settings); }

bool read_setting(reading& r, const std::string& name, const value_at& value) {
    constexpr std::string_view of_station = "accent ";
    if (name.starts_with(of_station)) {
        if (const auto ink = read_colour(r, value))
            r.made.accents.push_back({name.substr(of_station.size()), *ink});
        return true;
    }
    const auto setting = std::ranges::find(settings, name, &named<reader>::name);
    if (setting == std::end(settings)) return false;
    setting->is(r, value);
    return true;
}

std::string_view name_of(block part) {
    return std::ranges::find(blocks_by_name, part, &named<block>::is)->name;
}

} // namespace benchcard::styles
