#include "compiler/commands/many_recipes.hpp"

#include "compiler/commands/card_check.hpp"
#include "compiler/commands/dealt.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

made_recipe kitchen::deal(const named_recipe& recipe) {
    made_recipe made;
    const auto say = [&](std::string_view text) { made.said += text; };
    const auto c = compile(recipe.path, options.measures,
                           {std::ref(files_), say, own_folder(options.confined, recipe)});
    if (!c) {
        made.code = not_run;
        return made;
    }
    made.title = c->meaning.title;
    made.heard = {c->messages, c->files.sources};
    made.inputs = names_of(c->files.sources, options.style);
    const bool is_for_others = recipe.in_folder && !c->meaning.has_product;
    if (is_for_others) {
        if (grammar::has_errors(c->messages)) made.code = recipe_errors;
        return made;
    }
    made.cards = cards_of(*c, options, how.style, recipe.path, made.code, say);
    keep_named(made.cards, options.cards);
    made.is_printed = made.code == done && !made.cards.empty();
    return made;
}

std::unique_ptr<kitchen> open_kitchen(const print_options& options) {
    auto how = find_look(options, "station");
    if (!how) return nullptr;
    auto fonts = find_fonts(*how, pdf::reach::all);
    if (!fonts) return nullptr;
    return std::make_unique<kitchen>(options, std::move(*how), std::move(*fonts));
}

void reporting::say(const std::string& text) {
    if (text.empty()) return;
    bar_.clear();
    complain(text);
}

void reporting::take(const named_recipe& recipe, made_recipe& made) {
    known_.drop_known(made.heard);
    say(shown_messages(made.heard.messages, made.heard.sources, stderr) + made.said);
    if (made.code != done) say(fmt::format("benchcard: {} was not printed\n", recipe.path));
    worst_ = std::max(worst_, made.code);
    std::erase_if(not_seen_, [&](const auto& name) {
        auto one = made.cards;
        keep_named(one, {name});
        return !one.empty();
    });
    if (made.is_printed && options_.record)
        if (const auto failure = record_cards(recipe.path, made.cards, options_.order_words)) {
            say(fmt::format("benchcard: {}\n", *failure));
            worst_ = not_run;
        }
    bar_.step();
}

bool reporting::saw_all_cards() {
    for (const auto& name : not_seen_) {
        bar_.clear();
        print_wrong_line({fmt::format("no recipe has a card `{}`", name), {}});
    }
    return not_seen_.empty();
}

int write_depfile(const print_options& options, const std::vector<dependence>& all) {
    if (options.depfile.empty()) return done;
    const auto failure = write_file(options.depfile, rules_of(all));
    if (failure) complain(fmt::format("benchcard: {}\n", *failure));
    return failure ? not_run : done;
}

} // namespace benchcard::commands
