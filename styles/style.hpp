#pragma once

#include "grammar/diagnostic.hpp"
#include "styles/paper.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::styles {

/// From the smallest to the largest type, in points.
struct type_range {
    double least = 0;
    double most = 0;

    bool operator==(const type_range&) const = default;
};

/// What a column of the weigh-out holds.
enum class column { tick, amount, name, imperial, spoons, percent };

/// What stands on a card between its head and its foot.
enum class block { weigh_out, totals, table, method, oven, allergens, cautions, notes, keeping };

/// The words that the layout prints by itself.
struct layout_words {
    std::string oven = "oven";
    std::string fan = "fan";
    std::string fahrenheit = "oven"; ///< over the degrees Fahrenheit
    std::string gas = "gas";
    std::string time = "time";
    std::string continues = "continues on"; ///< before the label of the next card

    bool operator==(const layout_words&) const = default;
};

/// How a card looks: everything a style file says.
struct style {
    paper sheet = *paper_named("a5");
    double margin = 8; ///< mm from the cut edge, never under `least_margin`
    type_range title = {18, 40};
    type_range amounts = {14, 30};
    type_range names = {12, 24};
    type_range text = {11, 20};
    type_range small_print = {11, 12};
    std::vector<column> columns = {column::tick,     column::amount, column::name,
                                   column::imperial, column::spoons, column::percent};
    std::vector<block> top = {block::table, block::weigh_out, block::totals, block::method};
    std::vector<block> bottom = {block::oven, block::allergens, block::cautions, block::notes,
                                 block::keeping};
    layout_words words;

    bool operator==(const style&) const = default;
};

/// Reads a style file: `setting: value` lines, `#` to the end of a line is a comment. What a
/// line that cannot be read would have set keeps its usual value; its message says why.
style read_style(const grammar::source& text, grammar::diagnostics& messages);

/// The style of that name that is built into the program; nothing if there is none.
std::optional<style> built_in_style(std::string_view name);

/// The names of the styles that are built into the program, in the order of the alphabet.
std::vector<std::string> built_in_style_names();

/// Every kind of message that this room gives.
std::span<const grammar::kind_entry> kinds();

} // namespace benchcard::styles
