#pragma once

#include "compiler/measures/systems.hpp"
#include "grammar/tree.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::ingredients {

/// Whose size grades and whose reading of a name: countries that differ.
enum class country { any, us, uk };

/// The country whose names and grades a system of measures goes with; any for those in which no
/// one country's are usual.
country country_of(measures::system s);

/// What one measure, or one piece, of an ingredient weighs, as some source gives it.
struct figure {
    measures::grams low, high;                   ///< equal unless the source gives a range
    std::optional<measures::millilitres> volume; ///< of the measure; nothing for a counted piece
    bool is_stick = false;                       ///< of a stick, as butter is sold in
    std::string piece;                           ///< `clove`, `leaf`; empty for one whole of it
    std::string state;                           ///< `sifted`, `large`; compared form, may be empty
    country where = country::any;
    std::string source;

    /// Grams a millilitre, in the middle of the range; only for a figure with a volume.
    exact density() const { return (low.value + high.value) / 2 / volume->value; }
};

/// An ingredient: its names, its weights and what must be known of it before it is eaten.
struct entry {
    std::string name;
    std::string compared; ///< the name in the form in which names are compared; set by its table
    std::vector<std::string> also;
    std::vector<figure> figures;       ///< of a state, the first is used; others are published too
    bool contents_stated = false;      ///< whether `contains:` says anything
    std::vector<std::string> contains; ///< allergens
    bool check_packet = false;         ///< what it contains differs from packet to packet
    std::vector<std::string> may_contain;
    std::vector<std::string> raw;
    std::vector<std::string> notes;
    /// Whether only whole ones are counted and the rest is weighed, as of eggs, or one can be cut;
    /// nothing where `whole:` does not say.
    std::optional<bool> whole;
    bool poured = false; ///< a liquid, measured in ml
    bool built_in = false;
    std::string family; ///< `flours`: the table's file it stands in; empty for one's own
    grammar::span where;
};

} // namespace benchcard::ingredients
