#include "compiler/diagnostics/kinds.hpp"

#include "grammar/parse.hpp"
#include "styles/style.hpp"

#include <algorithm>

namespace benchcard::diagnostics {

using grammar::kind_entry;

namespace {

/// Those that come from what a recipe means, and from the files it uses.
std::vector<kind_entry> recipe_kinds() {
    using enum grammar::severity;
    return {
        {"accept-error", error, "an error that is to be accepted"},
        {"accept-unknown", error, "a kind to accept that does not exist"},
        {"accept-unneeded", hint, "something accepted that is not there"},
        {"accept-without-reason", error, "something accepted without a reason"},
        {"all-of-no-component", error, "all of what is not a component"},
        {"ambiguous-reference", error, "words in brackets that may mean two lines"},
        {"assembly-not-last", error, "a component after the assembly"},
        {"bake-without-heat", warning, "a bake whose heat no step gives"},
        {"biscuit-fat", hint, "biscuits with too little fat, or too much"},
        {"biscuit-sugar", hint, "biscuits with too little sugar, or too much"},
        {"choux-egg", hint, "choux with too little egg, or too much"},
        {"circular-components", error, "components that are made of each other"},
        {"circular-use", error, "files that use each other"},
        {"cooling-not-said", hint, "no word on how what keeps chilled is cooled"},
        {"custard-egg", hint, "custard with too little egg, or too much"},
        {"demand-exceeds-yield", error, "more of a component is used than is made"},
        {"differs-from-table", hint, "an own ingredient that differs from the table"},
        {"duplicate-component", error, "two components of one name"},
        {"file-outside", error, "a used file where nothing may be read"},
        {"flavour-high", hint, "far more of a flavour than the mix takes"},
        {"flavour-low", hint, "too little of a flavouring to taste"},
        {"flour-high", hint, "so much flour that all else is too little"},
        {"flour-low", hint, "so little flour that all else is too much"},
        {"ganache-cream", hint, "ganache with too little cream, or too much"},
        {"gelling-high", hint, "more gelatine or agar than the liquid takes"},
        {"gelling-low", hint, "too little gelatine or agar to set the liquid"},
        {"heat-high", hint, "a heat that burns, or that no oven has"},
        {"heat-low", hint, "a heat at which that is not done"},
        {"house-rule", error, "something the house requires is missing"},
        {"hydration-high", hint, "a dough far wetter than its name says"},
        {"hydration-low", hint, "a dough far drier than its name says"},
        {"jam-sugar", hint, "jam with too little sugar, or too much"},
        {"keeps-too-long", warning, "longer in the cold than the rule allows"},
        {"leavening-high", hint, "more leavening than the flour takes"},
        {"leavening-low", hint, "too little baking powder to raise the flour"},
        {"line-outside-component", error, "a line before the first component"},
        {"meringue-sugar", hint, "meringue with too little sugar, or too much"},
        {"mix-left-over", warning, "the ingredients weigh more than is to be made"},
        {"mix-too-small", error, "more is to be made than the ingredients weigh"},
        {"much-left-over", hint, "a component of which little is used"},
        {"no-piece-weight", hint, "something counted whose weight is not known"},
        {"no-volume-figure", error, "a cup or spoon of what has no known density"},
        {"not-a-measure", warning, "heaped, rounded and scant measures"},
        {"not-in-sticks", error, "a stick of what is not sold in sticks"},
        {"not-measurable", hint, "an amount that no spoon or scale shows"},
        {"nothing-left", error, "the rest of what was used up before"},
        {"odd-piece-left", hint, "pieces that do not come out even"},
        {"out-of-scale", warning, "an amount far from those around it"},
        {"oven-without-time", warning, "an oven's heat without a time"},
        {"pair-disagrees", error, "a weight and a measure that cannot both be so"},
        {"part-cannot-be-compared", error, "a part in another measure than the whole"},
        {"part-of-some", error, "part of an ingredient that has no amount"},
        {"parts-do-not-add-up", error, "parts of an ingredient that leave some unused"},
        {"parts-exceed-whole", error, "parts of an ingredient beyond what there is"},
        {"pastry-fat", hint, "pastry with too little fat, or too much"},
        {"per-other-piece", error, "amounts for another piece than the block makes"},
        {"per-without-makes", error, "amounts a piece, without how many are made"},
        {"per-without-number", error, "amounts for an unstated number of pieces"},
        {"piece-not-by-weight", error, "a piece whose size is not given as a weight"},
        {"plain-mention", hint, "an ingredient named in a step without brackets"},
        {"range-upside-down", error, "a range from the larger number to the smaller"},
        {"range-wide", hint, "a range whose ends are far apart"},
        {"read-as-shorter-name", hint, "a name read as a shorter one, with allergens"},
        {"rest-before-part", error, "a part of an ingredient taken after its rest"},
        {"salt-high", hint, "more salt than can be eaten"},
        {"salt-low", hint, "bread or food with little salt, or none"},
        {"second-assembly", error, "two assemblies in one recipe"},
        {"sponge-sugar", hint, "sponge with too little sugar, or too much"},
        {"spoon-among-cups", hint, "a teaspoon of what is given in cups elsewhere"},
        {"temperatures-disagree", warning, "two scales of one temperature that differ"},
        {"tin-not-filled", warning, "a tin that is not a quarter full"},
        {"tin-overflows", warning, "a tin that holds less than goes into it"},
        {"too-deep", error, "components made of one another too deep"},
        {"too-many-files", error, "a recipe that uses more files than can be read"},
        {"too-many-messages", error, "more messages than are said"},
        {"two-readings", error, "a name that means two things in two countries"},
        {"unknown-allergen", hint, "an allergen that is on no list"},
        {"unknown-ingredient", hint, "an ingredient that is not in the table"},
        {"unknown-labels", error, "a list of allergens that does not exist"},
        {"unknown-measure", error, "a measure misspelled"},
        {"unknown-measures", error, "cups and spoons of a name that does not exist"},
        {"unknown-piece", error, "a component used in other pieces than made"},
        {"unknown-raw", error, "something raw by a name that is not known"},
        {"unknown-reference", error, "words in brackets that name no line"},
        {"unknown-requirement", error, "something a house cannot require"},
        {"unknown-volume", error, "a cup or spoon of what is not in the table"},
        {"unreadable-file", error, "a used file that cannot be read"},
        {"unsettled-measure", error, "a cup, pint or fluid ounce without whose it is"},
        {"unusable-figure", error, "a weight in a definition that cannot be used"},
        {"unused-component", warning, "a component that no other part uses"},
        {"unused-ingredient", warning, "an ingredient that no step uses"},
        {"used-before-made", hint, "a component used above where it is made"},
        {"yeast-high", hint, "so much yeast that the dough races"},
        {"yeast-low", hint, "too little yeast for the time it has"},
    };
}

} // namespace

const std::vector<kind_entry>& all_kinds() {
    static const auto kinds = [] {
        auto all = recipe_kinds();
        const auto& read = grammar::parse_kinds();
        all.insert(all.end(), read.begin(), read.end());
        const auto printed = styles::kinds();
        all.insert(all.end(), printed.begin(), printed.end());
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
