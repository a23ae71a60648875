#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The allergens that laws name, and which law names which.
namespace benchcard::safety {

/// Whose list of allergens a recipe follows: `labels: eu|us|both`.
enum class law { eu, us, both };

/// The law that `labels:` names; both where it says nothing or nothing that is known, since then
/// nothing is left out.
law law_named(std::string_view labels);
/// Whether `labels:` can say this.
bool is_law(std::string_view labels);

/// An allergen as `contains:` names it: a cereal or a nut by its kind.
struct allergen {
    std::string_view name;              ///< `spelt`
    std::vector<std::string_view> also; ///< other words for it, and of foods that are it
    std::string_view eu;     ///< its heading in Annex II of Reg. (EU) No 1169/2011; empty if none
    std::string_view us;     ///< its heading among the US nine; empty if none
    std::string_view source; ///< of both
};
/// Every one that either list names, a row each with its source.
std::span<const allergen> all_allergens();

/// The row of a name, singular or plural; null where neither list has it.
const allergen* allergen_named(std::string_view name);
/// A name as the table has it: `soybeans` → `soya`; one that no list has as it is.
std::string listed_name(const std::string& name);

bool is_on_list(const allergen& a, law whose);

/// Names sorted by who asks for them. Every name is in exactly one of the lists.
struct by_law {
    std::vector<std::string> listed;  ///< on the list that is followed; of two, on both
    std::vector<std::string> eu_only; ///< where both are followed
    std::vector<std::string> us_only; ///< where both are followed
    std::vector<std::string> others;  ///< on no list that is followed, and never left out
};
by_law sorted_by_law(const std::vector<std::string>& names, law whose);
/// What is said behind the others: ` (not on the EU list)`.
std::string_view said_of_others(law whose);

} // namespace benchcard::safety
