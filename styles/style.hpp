#pragma once

#include "grammar/diagnostic.hpp"
#include "styles/colour.hpp"
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
enum class block {
    weigh_out,
    totals,
    table,
    method,
    oven,
    allergens,
    cautions,
    notes,
    keeping,
    figures, ///< where the amounts come from; only where a style names it
};

/// What one printed thing is: a card of one component, or a whole recipe with all of them.
enum class printed { card, recipe };

/// An edge of a card that a hole is punched at.
enum class edge { top, right, bottom, left };
struct hole {
    edge at = edge::top;
    double clear = 0; ///< mm from that edge in which nothing is printed

    bool operator==(const hole&) const = default;
};

/// What a sheet is cut into: cards of a size, or so many equal ones.
struct cutting {
    std::optional<paper> to;
    int number = 0; ///< 2, 4 or 8, where no size is given

    bool operator==(const cutting&) const = default;
};

/// The accent of the cards of one station.
struct station_accent {
    std::string station; ///< in small letters
    colour ink;

    bool operator==(const station_accent&) const = default;
};

/// The words that the layout prints by itself.
struct layout_words {
    std::string oven = "oven";
    std::string fan = "fan";
    std::string fahrenheit = "oven"; ///< over the degrees Fahrenheit
    std::string gas = "gas";
    std::string time = "time";
    std::string continues = "continues on"; ///< before the label of the next card
    std::string page = "page";              ///< before the number of a page of a whole recipe
    std::string of = "of";                  ///< and before the number of all of them

    bool operator==(const layout_words&) const = default;
};

/// How a card looks: everything a style file says.
struct style {
    printed prints = printed::card;
    paper sheet = *paper_named("a5");
    std::optional<cutting> cut; ///< nothing where a card takes the whole sheet
    double margin = 8;          ///< mm from the cut edge, never under `least_margin`
    std::optional<styles::hole> hole;
    double corners = 0;             ///< mm of radius to which the corners are cut
    std::optional<double> distance; ///< mm from which the amounts are read
    colour accent = black;
    std::vector<station_accent> accents; ///< of single stations
    type_range title = {18, 40};
    type_range amounts = {14, 30};
    type_range names = {12, 24};
    type_range text = {11, 20};
    type_range small_print = {11, 12};
    double x_height = 0; ///< mm that small letters are high at least, whatever the bounds say
    std::vector<column> columns = {column::tick,     column::amount, column::name,
                                   column::imperial, column::spoons, column::percent};
    std::vector<block> top = {block::table, block::weigh_out, block::totals, block::method};
    std::vector<block> bottom = {block::oven, block::allergens, block::cautions, block::notes,
                                 block::keeping};
    layout_words words;

    bool operator==(const style&) const = default;
};

/// Whether a style has that part at all.
bool shows(const style& look, block part);

/// The accent of the cards of a station, whatever its capitals.
colour accent_for(const style& look, std::string_view station);

/// How far from an edge of a card ink begins, in mm: its margin, more where the corners are cut
/// so round that they would come nearer than `least_margin`, and the clear zone of a hole.
double clear_at(const style& look, edge at);

/// Reads a style file: `setting: value` lines, `#` to the end of a line is a comment. What a
/// line that cannot be read would have set keeps its usual value; its message says why.
style read_style(const grammar::source& text, grammar::diagnostics& messages);

/// Every setting that a style file can have, in the order in which they are documented; `accent`
/// also with the name of a station.
std::vector<std::string> setting_names();

/// The style of that name that is built into the program; nothing if there is none.
std::optional<style> built_in_style(std::string_view name);

/// The names of the styles that are built into the program, in the order of the alphabet.
std::vector<std::string> built_in_style_names();

/// Every kind of message that this room gives.
std::span<const grammar::kind_entry> kinds();

} // namespace benchcard::styles
