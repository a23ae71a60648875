#pragma once

#include "compiler/label/dates.hpp"
#include "compiler/label/ingredient_list.hpp"

#include <string>
#include <vector>

namespace benchcard::label {

/// Part of a text in characters (code points), from the first to just past the last.
struct stretch {
    std::size_t begin = 0, end = 0;
};
/// A line of a label, with what must stand out in it.
struct marked_text {
    std::string text; ///< the allergens in capitals
    std::vector<stretch> allergens;
};

/// The laws in whose forms a list is drafted.
std::vector<safety::law> forms_of(safety::law whose);
/// `US form (21 CFR 101.4)`
std::string_view heading_of(safety::law form);

/// The list in one law's form. EU: Art. 18 and 21 and Annex VII of Reg. (EU) No 1169/2011. US: 21
/// CFR 101.4, what is 2 % or less grouped at the end, and the allergens once more behind `Contains`
/// (FD&C Act, section 403(w)).
marked_text ingredients_in(const ingredient_list& list, safety::law whose);
/// `Contains: egg, milk.` of the US form; empty where nothing of the nine is known to be in it.
marked_text contains_statement(const ingredient_list& list);

/// What is to be settled before the list can be used, a sentence each: packets to read, amounts
/// that are not known, names in the title.
std::vector<std::string> open_questions(const ingredient_list& list, safety::law whose);

/// `almond 11 %, pear 48 %`: what the title names and stands in several places of the list.
std::string said_totals(const ingredient_list& list);

/// That it is a draft, and whose job the rest is.
std::string_view draft_caution();

/// A label's draft, in the forms of the laws followed.
struct draft {
    ingredient_list list;
    safety::law whose = safety::law::both;
    std::optional<use_by> date; ///< where a day of making is given
};
std::string as_text(const draft& d);
/// One object; its members are described in compiler/safety/SAFETY.md.
std::string as_json(const draft& d);

} // namespace benchcard::label
