#include "compiler/cards/whole.hpp"

#include "compiler/cards/deal.hpp"
#include "compiler/cards/fingerprint.hpp"
#include "compiler/cards/why.hpp"
#include "compiler/safety/safety.hpp"

#include <algorithm>

namespace benchcard::cards {

namespace {

using styles::card;
using styles::paragraph;

void add_new(std::vector<paragraph>& to, std::vector<paragraph>& from) {
    for (auto& p : from)
        if (std::find(to.begin(), to.end(), p) == to.end()) to.push_back(std::move(p));
    from.clear();
}

/// `made`, and how each component keeps, stay with it; all else that is no work goes to the whole.
card part_of(card c, card& whole) {
    add_new(whole.cautions, c.cautions);
    c.allergens.clear();
    c.recipe.clear();
    for (auto* text : {&c.revision, &c.footnote, &c.number, &c.fingerprint, &c.made_label})
        text->clear();
    if (c.batch == whole.batch) c.batch.clear();
    return c;
}

/// Each caution once, with its source.
styles::figures sources_of_cautions(const recipe::recipe& r) {
    styles::figures result{"Where the cautions come from", {}};
    for (const auto& of_component : safety::cautions_of(r))
        for (const auto& c : of_component) {
            const styles::figure_line said{0, c.text};
            if (std::find(result.lines.begin(), result.lines.end(), said) != result.lines.end())
                continue;
            result.lines.push_back(said);
            result.lines.push_back({1, "by " + c.source});
        }
    return result;
}

} // namespace

card whole_recipe(const batch::batch& b, const appendix& with) {
    auto cards = deal(b);
    card whole = cards.back();
    whole.number.clear();
    whole.is_recipe = true;
    if (cards.size() > 1) {
        whole.title = b.of->title;
        whole.recipe.clear();
        whole.station.clear();
        whole.weigh_out.clear(), whole.totals.clear(), whole.method.clear(), whole.oven.clear();
        whole.cautions.clear();
        whole.notes.clear(), whole.keeping.clear();
        whole.imperial_heading.clear(), whole.spoons_heading.clear();
        whole.percent_heading.clear();
        for (auto& c : cards) whole.parts.push_back(part_of(std::move(c), whole));
    }
    if (with.figures) {
        whole.figures = explained(b);
        auto sources = sources_of_cautions(*b.of);
        if (!sources.lines.empty()) whole.figures.push_back(std::move(sources));
    }
    if (!with.warnings.empty()) {
        styles::figures said{"What the checks say", {}};
        for (const auto& text : with.warnings) said.lines.push_back({0, text});
        whole.figures.push_back(std::move(said));
    }
    whole.fingerprint = fingerprint_of(whole);
    return whole;
}

} // namespace benchcard::cards
