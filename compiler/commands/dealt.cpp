#include "compiler/commands/dealt.hpp"

#include "compiler/cards/deal.hpp"
#include "compiler/cards/whole.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "compiler/ingredients/names.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

bool is_called(const styles::card& card, const std::string& name) {
    return ingredients::compared_words(card.title) == ingredients::compared_words(name);
}

/// What the checks say of a recipe, for its last page.
std::vector<std::string> warnings_of(const compiled& c) {
    std::vector<std::string> result;
    for (const auto& m : c.messages) {
        const auto& source = c.files.sources[m.where.file];
        result.push_back(fmt::format("line {}: {}", source.at(m.where.begin).line, m.message));
    }
    return result;
}

/// What a style makes of a batch: one card a component, or one of all.
std::vector<styles::card> dealt(const batch::batch& b, const compiled& c, const styles::style& look,
                                const print_options& options) {
    if (look.prints == styles::printed::card || !options.cards.empty()) return cards::deal(b);
    const bool shows_figures = styles::shows(look, styles::block::figures);
    return {cards::whole_recipe(
        b, {shows_figures, shows_figures ? warnings_of(c) : std::vector<std::string>{}})};
}

} // namespace

std::vector<styles::card> cards_of(const compiled& c, const print_options& options,
                                   const styles::style& look, const std::string& file, int& code,
                                   const saying& say) {
    if (!options.batches.empty()) {
        const auto batches = batches_of(c, options.batches, options.fit, code, say);
        return batches.empty() ? std::vector<styles::card>{} : cards::deal_columns(batches);
    }
    const auto batch = batch_of(c, options.order, options.fit, code, say);
    if (!batch) return {};
    for (const auto& text : batch->reckoning) say(fmt::format("benchcard: {}: {}\n", file, text));
    return dealt(*batch, c, look, options);
}

bool are_all_there(const std::vector<std::string>& names, const std::vector<styles::card>& cards) {
    for (const auto& name : names) {
        if (std::any_of(cards.begin(), cards.end(),
                        [&](const auto& card) { return is_called(card, name); }))
            continue;
        std::vector<std::string> titles;
        for (const auto& card : cards) titles.push_back(card.title);
        wrong_line wrong{
            fmt::format("there is no card `{}`; there are: {}", name, fmt::join(titles, ", ")), {}};
        for (const auto& near : grammar::nearest(name, titles, 1))
            wrong.helps.push_back("the nearest is `" + near + "`");
        print_wrong_line(wrong);
        return false;
    }
    return true;
}

void keep_named(std::vector<styles::card>& cards, const std::vector<std::string>& names) {
    if (names.empty()) return;
    std::erase_if(cards, [&](const auto& card) {
        return std::none_of(names.begin(), names.end(),
                            [&](const auto& name) { return is_called(card, name); });
    });
}

} // namespace benchcard::commands
