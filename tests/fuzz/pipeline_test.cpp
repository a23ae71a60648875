#include "compiler/batch/orders.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/cards/whole.hpp"
#include "examples.hpp"
#include "fonts_for_tests.hpp"
#include "grammar/tidy.hpp"
#include "input.hpp"
#include "made_up_recipes.hpp"
#include "styles/layout/impose.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/pdf/paint.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>

using namespace benchcard;

namespace {

// So many recipes in a usual run, the same each time; RC_PARAMS="max_success=5000" in the
// environment tries more and others.
const bool few_recipes = (setenv("RC_PARAMS", "max_success=40 noshrink=1 seed=11", 0), true);

/// How a made-up recipe is printed.
struct manner {
    styles::style look;
    layout::grid on;
    exact factor;
    batch::fit how;
};

std::optional<manner> any_manner() {
    const auto look = made_up::look();
    const auto on = layout::grid_for(look, made_up::paper());
    if (!on) return std::nullopt;
    const int below = *rc::gen::element(1, 2, 3, 7);
    return manner{look, *on, exact(*rc::gen::inRange(1, 9 * below), below),
                  *rc::gen::element(batch::fit::written, batch::fit::need, batch::fit::whole)};
}

/// The weights of the lines and mixes are those that the recipe was made of.
void check_weights(const made_up::made_up_recipe& made, const recipe::recipe& r) {
    RC_ASSERT(r.components.size() == made.components.size());
    for (const auto& c : r.components) {
        const auto same = std::find_if(made.components.begin(), made.components.end(),
                                       [&](const auto& m) { return m.title == c.title; });
        RC_ASSERT(same != made.components.end());
        RC_ASSERT(c.lines.size() == same->lines.size());
        for (std::size_t i = 0; i < c.lines.size(); ++i)
            if (const auto& grams = same->lines[i].grams)
                RC_ASSERT(c.lines[i].grams->used == *grams);
        if (const auto mix = same->mix()) RC_ASSERT(c.mix->used == *mix);
    }
}

batch::batch batch_of(const recipe::recipe& r, const manner& m) {
    auto made = batch::batch_for(r, batch::scaled{m.factor}, m.how);
    RC_ASSERT(std::holds_alternative<batch::batch>(made));
    auto b = std::get<batch::batch>(std::move(made));
    // The product is made as ordered, or in whole batches that are no less.
    const auto& product = b.components.back();
    for (const auto& l : product.lines)
        if (l.of->grams) {
            const exact ordered = l.of->grams->used * m.factor;
            const bool is_whole = m.how == batch::fit::whole;
            RC_ASSERT((is_whole ? l.grams->used >= ordered : l.grams->used == ordered));
        }
    return b;
}

std::vector<layout::page> sheets_of(const batch::batch& b, const manner& m) {
    std::vector<layout::page> pages;
    auto dealt = cards::deal(b);
    RC_ASSERT(dealt.size() == b.components.size());
    if (m.look.prints == styles::printed::recipe) dealt = {cards::whole_recipe(b, {})};
    for (const auto& card : dealt)
        for (auto& page : layout::lay_out(card, m.look, m.on.card, real_fonts().metrics))
            pages.push_back(std::move(page));
    RC_ASSERT(pages.size() >= dealt.size());
    return layout::imposed(pages, m.on, 1, std::nullopt);
}

std::size_t times_in(const std::string& bytes, const std::string& what) {
    std::size_t count = 0;
    for (auto at = bytes.find(what); at != bytes.npos; at = bytes.find(what, at + 1)) ++count;
    return count;
}

/// From the text to the bytes of a PDF.
std::string printed(const std::string& text, const manner& m,
                    const made_up::made_up_recipe* made = nullptr) {
    const auto c = fuzz::compiled({text, {}, {}});
    for (const auto& message : c->messages)
        if (message.level == grammar::severity::error)
            RC_FAIL(language::messages_text(language::said{c->messages, c->files.sources}));
    if (made) check_weights(*made, c->meaning);
    const auto sheets = sheets_of(batch_of(c->meaning, m), m);
    const auto pdf = pdf::paint(sheets, real_fonts(), {.title = c->meaning.title});
    for (const auto& message : pdf.messages) RC_LOG() << message.message << "\n";
    RC_ASSERT(bool(pdf));
    RC_ASSERT(pdf.bytes.starts_with("%PDF-1."));
    RC_ASSERT(pdf.bytes.find("%%EOF") >= pdf.bytes.size() - 8);
    RC_ASSERT(times_in(pdf.bytes, "/Type /Page\n") == sheets.size());
    return pdf.bytes;
}

} // namespace

TEST_CASE("a made-up recipe goes from its text to a PDF, and so does its canonical text",
          "[pipeline][property]") {
    const bool holds = rc::check("made-up recipes in all styles on all papers", [] {
        const auto m = any_manner();
        RC_PRE(m.has_value());
        const auto made = made_up::whole_recipe();
        RC_LOG() << made.text << "\n" << m->on.card.name << ", times " << m->factor << "\n";
        const auto once = printed(made.text, *m, &made);
        RC_ASSERT(printed(grammar::tidied(made.text), *m) == once);
    });
    CHECK(holds);
}
