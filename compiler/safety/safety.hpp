#pragma once

#include "compiler/recipe/recipe.hpp"

#include <string>
#include <vector>

/// What must be known of a component before someone eats it, followed along the component graph.
/// Advice to a professional: it defers to the packet, to local rules and to the responsible
/// person, and never says that food is safe.
namespace benchcard::safety {

/// The allergens of a component, its own and those of all it is made of.
struct allergens {
    std::vector<std::string> contains;     ///< as the lists name them, in order of the alphabet
    std::vector<std::string> may_contain;  ///< as definitions state it
    std::vector<std::string> check_packet; ///< ingredients whose packet must be read
};
/// Of a line that is an ingredient; nothing of one that is a component.
allergens allergens_of(const recipe::line& l);
/// One for each component, in their order.
std::vector<allergens> allergens_of(const recipe::recipe& r);

/// For `weigh --why`: each allergen with the ingredients and components that bring it and the law
/// that names it, and the packets to read; empty where there are none.
std::string sources_of_allergens(const recipe::recipe& r);

/// Something raw in a component. Beans are those that must be boiled hard; sprouts are grown from
/// seeds and eaten with them.
enum class raw { flour, egg, meat, poultry, fish, pulses, beans, sprouts };
/// What `raw:` can say: `flour`, `egg` and the rest.
std::vector<std::string> raw_words();
/// Whether `raw:` can say this, in the singular or plural.
bool is_raw_word(std::string_view said);
struct hazard {
    raw what = raw::flour;
    bool cooked_here = false;  ///< by a step of this component, after the last of it went in
    bool cooked_later = false; ///< by every component that uses it
    bool for_others = false;   ///< no component of this recipe uses it, and it is not the product
};
/// For each component the raw things in it, its own and those of what it is made of, that were
/// not cooked before they came into it.
std::vector<std::vector<hazard>> hazards_of(const recipe::recipe& r);

/// Whether a step cooks: it has a time, and a temperature of 70 °C or more or a word for cooking.
/// Whether that is enough is the responsible person's to say.
bool cooks(const recipe::step& s);
/// Whether a step boils: it has a time, and speaks of boiling or has 98 °C or more in the pan.
bool boils(const recipe::step& s);

/// A sentence for the caution box, and where it comes from.
struct caution {
    std::string text;
    std::string source; ///< or `common practice`
};
/// The cautions for a component's raw hazards, in plain words, worst first.
std::vector<caution> cautions_for(const std::vector<hazard>& hazards);
/// All cautions of each component: what is raw in it, what its work can do to the cook, how it is
/// cooked through, cooled and held, and honey. By the rules of `labels:`.
std::vector<std::vector<caution>> cautions_of(const recipe::recipe& r);

/// Whether each component is food that needs the cold: it keeps chilled, has egg, milk, meat, fish
/// or pulses in it, is not mostly sugar nor soured with vinegar, and is not raw for cooking later.
/// Common practice after the FDA Food Code, 1-201.10; no measure of acid or water stands behind it.
std::vector<bool> needs_the_cold(const recipe::recipe& r);

/// `cautions_of` with the source of each, for `weigh --why`; empty where there are none.
std::string sources_of_cautions(const recipe::recipe& r);

} // namespace benchcard::safety
