#include "any_text.hpp"
#include "plain_metrics.hpp"
#include "sample_cards.hpp"
#include "styles/html/document.hpp"
#include "styles/layout/impose.hpp"
#include "styles/layout/lay_out.hpp"
#include "target.hpp"

#include <cmath>

using namespace benchcard;

namespace {

/// A card of one component, or a whole recipe of two.
styles::card card_for(const styles::style& look) {
    auto card = samples::long_card();
    if (look.prints == styles::printed::card) return card;
    card.is_recipe = true;
    card.parts = {samples::short_card(), samples::long_card()};
    card.figures = {{"Cream", {{0, "400 g butter"}, {1, "2 × 200 g"}}}};
    return card;
}

void must_stand_on(const std::vector<layout::page>& pages) {
    fuzz::must(!pages.empty(), "a card has no page");
    for (const auto& p : pages) {
        fuzz::must(p.width > 0 && p.height > 0, "a page has no size");
        for (const auto& run : p.text)
            fuzz::must(std::isfinite(run.x) && std::isfinite(run.y) && run.size > 0,
                       "a text stands nowhere");
        for (const auto& s : p.shapes) {
            const auto ink = layout::ink_of(s);
            fuzz::must(ink.left >= -1 && ink.top >= -1 && ink.right <= p.width + 1 &&
                           ink.bottom <= p.height + 1,
                       "a shape stands beside its page");
        }
    }
}

} // namespace

/// A style file, read, and a card laid out by it on its own paper, in the type that it asks for.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::vector<grammar::source> texts = {{0, "a.style", fuzz::text_of(data, size)}};
    grammar::diagnostics messages;
    const auto look = styles::read_style(texts.front(), messages);
    for (const auto& m : messages) fuzz::must_be_faultless(grammar::fault_of_places(m, texts));
    const auto grid = layout::grid_for(look, look.sheet);
    if (!grid || grammar::has_errors(messages)) return 0;
    const auto card = card_for(look);
    auto pages = layout::lay_out(card, look, grid->card, plain_metrics());
    must_stand_on(pages);
    html::document_of({card}, "a", look, grid->card);
    if (pages.size() % 2 == 1)
        pages.push_back(layout::back_of(card, look, grid->card, plain_metrics()));
    layout::settle_backs(pages, look, grid->sheet, layout::flip::long_edge);
    must_stand_on(layout::imposed(pages, *grid, 1, layout::flip::long_edge));
    return 0;
}
