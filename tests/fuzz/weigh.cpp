#include "compiler/batch/orders.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/cards/weigh_columns.hpp"
#include "compiler/cards/weigh_table.hpp"
#include "compiler/cards/why.hpp"
#include "compiler/commands/order_options.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "compiler/label/shown.hpp"
#include "input.hpp"
#include "styles/html/document.hpp"
#include "target.hpp"

#include <CLI/CLI.hpp>

using namespace benchcard;

namespace {

/// The order in an input; the recipe as written where those are no words of one.
commands::placed_order order_in(const fuzz::input& in) {
    try {
        return commands::placed_by(in.order);
    } catch (const commands::wrong_line&) {
    } catch (const CLI::ParseError& e) {
        CLI::App nothing;
        commands::explain(nothing, e);
    }
    return {};
}

void say(const batch::batch& b) {
    const auto table = cards::weigh_table(b);
    fuzz::must(!table.empty(), "the weigh-out is empty");
    cards::why(b);
    const auto all = cards::deal(b);
    fuzz::must(all.size() == b.components.size(), "a component has no card");
    html::document_of(all, "a", *styles::built_in_style("station"), *styles::paper_named("a5"));
    if (label::entries_in(*b.of) > label::most_entries) return;
    const auto list = label::ingredients_of(b);
    for (const auto form : label::forms_of(safety::law::both)) label::open_questions(list, form);
    label::as_text({list, safety::law::both, {}});
    label::as_json({list, safety::law::both, {}});
}

void say(const recipe::recipe& r, const batch::order& wanted, std::optional<batch::fit> how) {
    const auto made = batch::batch_for(r, wanted, how);
    if (const auto* b = std::get_if<batch::batch>(&made))
        say(*b);
    else
        fuzz::must(!std::get<batch::refusal>(made).message.empty(), "nothing is said of why not");
}

} // namespace

/// A recipe and an order, weighed out to text, to a label and to cards: as far as it has no
/// errors, there is something to say of each.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto in = fuzz::input_in(fuzz::text_of(data, size));
    const auto c = fuzz::compiled(in);
    const auto placed = order_in(in);
    if (grammar::has_errors(c->messages) || !c->meaning.has_product) return 0;
    say(c->meaning, placed.order, placed.fit);
    say(c->meaning, batch::scaled{exact(7, 3)}, batch::fit::whole);
    std::vector<batch::batch> several;
    for (const auto& factor : placed.batches) several.push_back(batch::scale(c->meaning, factor));
    if (several.empty()) return 0;
    cards::weigh_columns(several);
    cards::deal_columns(several);
    return 0;
}
