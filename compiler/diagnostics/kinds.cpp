#include "compiler/diagnostics/kinds.hpp"

#include "grammar/parse.hpp"

#include <algorithm>

namespace benchcard::diagnostics {

using grammar::kind_entry;

namespace {

/// Those that come from what a recipe means, and from the files it uses.
std::vector<kind_entry> recipe_kinds() {
    using enum grammar::severity;
    return {
        {"ambiguous-reference", error, "words in brackets that may mean two lines"},
        {"assembly-not-last", error, "a component after the assembly"},
        {"circular-components", error, "components that are made of each other"},
        {"circular-use", error, "files that use each other"},
        {"demand-exceeds-yield", error, "more of a component is used than is made"},
        {"differs-from-table", hint,
         "an ingredient of one's own that weighs other than the table gives"},
        {"duplicate-component", error, "two components of one name"},
        {"line-outside-component", error, "an ingredient or a step before the first component"},
        {"mix-too-small", error, "more is to be made than the ingredients weigh"},
        {"no-piece-weight", hint, "something counted whose weight is not known"},
        {"no-volume-figure", error, "a cup or spoon of something whose density is not known"},
        {"not-a-measure", warning, "heaped, rounded and scant measures"},
        {"not-in-sticks", error, "a stick of something that is not sold in sticks"},
        {"nothing-left", error, "the rest of what was used up before"},
        {"pair-disagrees", error, "a weight and a volume that cannot both be right"},
        {"part-cannot-be-compared", error,
         "part of an ingredient in another measure than the whole"},
        {"part-of-some", error, "part of an ingredient that has no amount"},
        {"parts-do-not-add-up", error, "parts of an ingredient that leave some of it unused"},
        {"parts-exceed-whole", error, "parts of an ingredient that are more than there is"},
        {"per-other-piece", error, "amounts for another piece than the block makes"},
        {"per-without-makes", error, "amounts for one piece, without how many are made"},
        {"per-without-number", error, "amounts for a number of pieces that is not given"},
        {"piece-not-by-weight", error, "a piece whose size is not given as a weight"},
        {"plain-mention", hint, "an ingredient named in a step without brackets"},
        {"range-upside-down", error, "a range that runs from the larger number to the smaller"},
        {"read-as-shorter-name", hint,
         "a name read as a shorter one, with allergens of the words before it"},
        {"second-assembly", error, "two assemblies in one recipe"},
        {"temperatures-disagree", warning, "two scales of one temperature that differ"},
        {"too-many-files", error, "a recipe that uses more files than can be read"},
        {"two-readings", error, "a name that means two things in two countries"},
        {"unknown-ingredient", hint, "an ingredient that is not in the table"},
        {"unknown-measure", error, "a measure that does not exist, near one that does"},
        {"unknown-measures", error, "cups and spoons of a name that does not exist"},
        {"unknown-piece", error, "a component counted in pieces that it is not made in"},
        {"unknown-reference", error, "words in brackets that name no line"},
        {"unknown-volume", error, "a cup or spoon of something that is not in the table"},
        {"unreadable-file", error, "a used file that cannot be read"},
        {"unsettled-measure", error, "a cup, pint or fluid ounce without whose it is"},
        {"unusable-figure", error, "a weight in a definition that cannot be used"},
        {"unused-component", warning, "a component that no other part uses"},
        {"unused-ingredient", warning, "an ingredient that no step uses"},
    };
}

} // namespace

const std::vector<kind_entry>& all_kinds() {
    static const auto kinds = [] {
        auto all = recipe_kinds();
        const auto& read = grammar::parse_kinds();
        all.insert(all.end(), read.begin(), read.end());
        std::sort(all.begin(), all.end(),
                  [](const auto& a, const auto& b) { return a.name < b.name; });
        return all;
    }();
    return kinds;
}

const kind_entry* kind_named(std::string_view name) {
    const auto& all = all_kinds();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& k) { return k.name == name; });
    return found == all.end() ? nullptr : &*found;
}

} // namespace benchcard::diagnostics
