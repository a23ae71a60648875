#pragma once

#include "compiler/checks/composition.hpp"
#include "compiler/checks/said.hpp"
#include "grammar/diagnostic.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Proportions of the trade. All are hints and common practice: their bounds are wide enough for
/// recipes of any cuisine, and narrow enough for a spoon taken for another or a digit dropped.
namespace benchcard::checks {

/// One component, as the checks of proportions look at it.
struct mix {
    const recipe::recipe& of;
    std::size_t index;
    const std::vector<makeup>& all; ///< of every component
    std::vector<std::size_t> users; ///< the components that it goes into, at whatever hand

    const recipe::component& written() const { return of.components[index]; }
    const makeup& held() const { return all[index]; }
    exact grams(part p) const { return held().of(p); }
};

/// Dough: salt, yeast, raising agents and water against the flour.
void check_dough(const mix& m, grammar::diagnostics& to);
/// What a title promises: meringue, short pastry, choux, custard, sponge, jam, ganache.
void check_named_mix(const mix& m, grammar::diagnostics& to);
/// What is strong in small amounts: salt, spices, extracts, setting agents.
void check_flavours(const mix& m, grammar::diagnostics& to);

/// Whether a title has one of these in it, words or phrases parted by bars, in the singular.
bool says_one_of(std::string_view title, std::string_view phrases);
/// Whether the last word of a title is one of these.
bool ends_in_one_of(std::string_view title, std::string_view words);
/// Whether a component's title says one of these, or that of what it goes into, or the recipe's:
/// `Dough` for baguettes does.
bool is_for_one_of(const mix& m, std::string_view phrases);
/// Whether all that uses this component uses it as a small part of something larger.
bool is_minor_part(const mix& m);

/// The line of a component that holds most of a part; null where none holds any.
const recipe::line* main_line(const recipe::component& c, part p);
/// Where most of a part comes from: its line, that of the component that brings it, or the title.
grammar::span place_of(const mix& m, part p);

/// `6 %`, `0.25 %`: one decimal, two below 1.
std::string as_percent(const exact& hundredths);
/// `12 g of fine salt`, or `20 g of salt` where several lines bring it.
std::string said_part(const mix& m, part p, std::string_view word);

/// A hint that says where its bounds are from.
grammar::diagnostic proportion(std::string_view kind, grammar::span where, std::string message,
                               std::string practice);

} // namespace benchcard::checks
