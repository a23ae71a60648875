#include "compiler/cards/deal.hpp"
#include "compiler/cards/whole.hpp"
#include "compiler/commands/card_check.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/html_file.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/commands/pdf_file.hpp"
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

/// The cards of one recipe; none, with the exit code, where they cannot be made.
std::vector<styles::card> cards_of(const compiled& c, const print_options& options,
                                   const styles::style& look, const std::string& file, int& code) {
    if (!options.batches.empty()) {
        const auto batches = ordered(c, options.batches, options.fit, code);
        return batches.empty() ? std::vector<styles::card>{} : cards::deal_columns(batches);
    }
    const auto batch = ordered(c, options.order, options.fit, code);
    if (!batch) return {};
    for (const auto& text : batch->reckoning)
        complain(fmt::format("benchcard: {}: {}\n", file, text));
    return dealt(*batch, c, look, options);
}

/// Says which cards there are where one is asked for that is not among them.
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

/// Leaves only the cards that are named, if any are.
void keep_named(std::vector<styles::card>& cards, const std::vector<std::string>& names) {
    if (names.empty()) return;
    std::erase_if(cards, [&](const auto& card) {
        return std::none_of(names.begin(), names.end(),
                            [&](const auto& name) { return is_called(card, name); });
    });
}

} // namespace

int print(const print_options& options) {
    const auto how = find_look(options, "station");
    if (!how) return not_run;
    print_job job;
    std::vector<std::pair<std::string, std::vector<styles::card>>> to_record; // a file each
    int worst = done;
    for (const auto& file : options.files) {
        const auto c = compile(file, options.measures);
        if (!c) {
            worst = not_run;
            continue;
        }
        int code = done;
        auto of_file = cards_of(*c, options, how->style, file, code);
        worst = std::max(worst, code);
        if (code != done) continue;
        job.title += (job.title.empty() ? "" : ", ") + c->meaning.title;
        job.cards.insert(job.cards.end(), of_file.begin(), of_file.end());
        job.sources.push_back(c->files.sources);
        keep_named(of_file, options.cards);
        if (options.record) to_record.emplace_back(file, std::move(of_file));
    }
    if (worst == done && !are_all_there(options.cards, job.cards)) worst = not_run;
    if (worst != done) {
        complain("benchcard: nothing was printed\n");
        return worst;
    }
    keep_named(job.cards, options.cards);
    const int code = (is_html(options.output) ? write_html : write_pdf)(job, *how, options.output);
    if (code != done) return code;
    for (const auto& [file, recorded] : to_record)
        if (const auto failure = record_cards(file, recorded, options.order_words)) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return not_run;
        }
    return done;
}

} // namespace benchcard::commands
