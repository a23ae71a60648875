#pragma once

#include "compiler/ingredients/table.hpp"
#include "compiler/measures/systems.hpp"
#include "compiler/measures/temperatures.hpp"
#include "grammar/tree.hpp"

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// What a recipe means: its components with their lines and steps, each line with the weight it
/// stands for. Amounts are those of the written batch; everything is exact.
namespace benchcard::recipe {

/// A figure with the range it may lie in. `used` is what is reckoned with.
struct spread {
    exact low = 0, used = 0, high = 0;

    spread operator*(const exact& factor) const {
        return {low * factor, used * factor, high * factor};
    }
    spread& operator+=(const spread& other) {
        low += other.low, used += other.used, high += other.high;
        return *this;
    }
    static spread of(const exact& value) { return {value, value, value}; }
};

/// How a line's weight was found.
enum class weighed_by { weight, volume, piece, component, nothing };

/// A line of a component: so much of an ingredient, or of another component.
struct line {
    grammar::span where;
    const grammar::ingredient_line* written = nullptr;
    std::string name;        ///< as written, with what stands before it: `sifted plain flour`
    std::string preparation; ///< `cold, diced`
    std::string description; ///< the words before the ingredient's own name: `sifted`, `cloves`
    const ingredients::entry* what = nullptr; ///< null for a component and for an unknown one
    std::vector<const ingredients::entry*>
        others;                           ///< of `hazelnuts or almonds`, all after the first
    std::optional<std::size_t> component; ///< which one, by its place in the recipe
    weighed_by how = weighed_by::nothing;
    measures::system measures = measures::system::unstated; ///< of the file it stands in
    std::optional<spread> grams;                            ///< nothing where it is not known
    std::optional<spread> ml;                               ///< where it was written as a volume
    std::optional<spread> count; ///< where it is counted: eggs, cloves, cases
    std::optional<exact> share;  ///< of all that a component makes: `half Custard`, `all Glaze`
    const ingredients::figure* figure = nullptr; ///< the one its weight was found with
    bool some = false;     ///< `some flour, for dusting`: not weighed, not in the mix
    bool optional = false; ///< may be left out: no check asks for its use
};

/// A bracket that names a line of its block.
struct line_use {
    std::size_t line = 0;
    std::string said;           ///< the words in the bracket: `butter`
    std::optional<exact> share; ///< of the line, greater than 0; nothing for a mere mention
    bool is_part = false;       ///< less than the whole
    bool is_rest = false;       ///< what other parts have left
};
struct rest_use {
    std::vector<std::size_t> lines;
}; ///< `[rest]`: all lines not used before
struct heat_use {
    exact low = 0, high = 0; ///< degrees, or the gas mark
    measures::oven_scale scale = measures::oven_scale::celsius;
    bool is_oven = false; ///< the temperature of an oven, not of what is in the pan
};
struct time_use {
    grammar::duration time;
};
struct length_use {
    grammar::length size;
};
struct portion_use {
    grammar::measure of;
    bool total = false; ///< scales with the batch
};
using use = std::variant<line_use, rest_use, heat_use, time_use, length_use, portion_use>;

/// A step: its text, with what its brackets mean.
struct step {
    grammar::span where;
    std::vector<std::variant<std::string, use>> parts;
    std::string station; ///< where it is done
};

/// What a component makes. Pieces are as portioned, before any loss in the oven.
struct yield {
    std::optional<spread> pieces; ///< how many
    std::string piece;            ///< `round`; one of them, as written in the recipe but singular
    std::optional<spread> each;   ///< grams a piece
    std::optional<spread> grams;  ///< all of it, before it is baked
    std::optional<exact> ml;      ///< where it is stated as a volume
};

/// A hint or warning that its block does without: `accept: salt-low, it is a salt-free loaf`.
struct accepted {
    std::string kind, reason; ///< the reason is empty where none is given
    grammar::span kind_where;
};

/// A component or the assembly.
struct component {
    std::string title;
    const grammar::block* written = nullptr;
    bool is_assembly = false;
    std::string station;
    std::vector<line> lines;
    std::vector<std::string> unread; ///< the lines that could not be read, as written
    /// Whether one of these bears on weights: then what is made is not known, and no message
    /// follows from it.
    bool weight_unread = false;
    std::vector<step> steps;
    std::vector<std::string> notes, cautions;
    std::vector<grammar::keeping> keeps;
    std::vector<grammar::loss> losses;
    std::optional<grammar::yield> makes; ///< as written
    grammar::span makes_where;
    std::optional<grammar::yield> per;
    grammar::span per_where;
    std::optional<grammar::yield> tray;
    std::optional<grammar::tin> tin;
    std::optional<grammar::words> percent;
    std::optional<exact> at_most, at_least; ///< grams that the mixer or pot takes
    bool whole_batch = false;               ///< made whole or not at all
    std::vector<accepted> accepts;          ///< the product has those of the recipe's head too
    std::string revision, date;             ///< of the file it stands in
    exact times = 1; ///< the written amounts are made so many times: 2 tarts, `per: 1 tart`
    std::optional<spread> mix; ///< grams of all lines, times `times`; nothing where one is unknown
    std::optional<spread> ready; ///< grams to portion: the mix less what is lost before
    yield made;
    std::optional<spread> baked; ///< grams after the oven
};

struct recipe {
    std::string title, revision, date, by;
    measures::system measures = measures::system::unstated;
    std::string labels;
    std::optional<exact> scale_step; ///< grams: the smallest step that the scale shows
    std::vector<std::string> notes, cautions;
    std::optional<grammar::yield> makes, serves;
    grammar::span makes_where;
    std::vector<component> components;       ///< each after those it uses; the product is the last
    bool has_product = false;                ///< false for a file of definitions alone
    std::unique_ptr<ingredients::table> own; ///< its own ingredients, over the built-in table

    const component& product() const { return components.back(); }
};

/// What an `accept:` line says: a kind, and after the first comma the reason.
accepted accepted_by(const grammar::setting& s);

/// The loss that is left of a hundred: 8 % lost is 92/100, as a spread (the smallest loss last).
spread kept_after(const grammar::loss& l);
/// Whether a loss comes after the pieces are portioned (in the oven, in the fryer, on cooling).
bool is_after_portioning(const grammar::loss& l);

} // namespace benchcard::recipe
