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
    std::vector<std::string> contains;     ///< by name, in order of the alphabet
    std::vector<std::string> may_contain;  ///< as definitions state it
    std::vector<std::string> check_packet; ///< ingredients whose packet must be read
};
/// One for each component, in their order.
std::vector<allergens> allergens_of(const recipe::recipe& r);

/// Something raw in a component.
enum class raw { flour, egg, meat, fish, pulses };
struct hazard {
    raw what;
    bool cooked_here = false;  ///< by a step of this component
    bool cooked_later = false; ///< by every component that uses it
    bool for_others = false;   ///< no component of this recipe uses it, and it is not the product
};
/// For each component the raw things in it, its own and those of what it is made of, that were
/// not cooked before they came into it.
std::vector<std::vector<hazard>> hazards_of(const recipe::recipe& r);

/// Whether a step cooks: it has a time, and a temperature of 70 °C or more or a word for cooking.
/// Whether that is enough is the responsible person's to say.
bool cooks(const recipe::step& s);

/// The cautions for a component's hazards, in plain words, worst first.
std::vector<std::string> cautions_for(const std::vector<hazard>& hazards);

} // namespace benchcard::safety
