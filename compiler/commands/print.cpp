#include "compiler/cards/deal.hpp"
#include "compiler/commands/card_check.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/commands/pdf_file.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// The cards of one recipe; none, with the exit code, where they cannot be made.
std::vector<styles::card> cards_of(const compiled& c, const print_options& options,
                                   const std::string& file, int& code) {
    if (!options.batches.empty()) {
        const auto batches = ordered(c, options.batches, options.fit, code);
        return batches.empty() ? std::vector<styles::card>{} : cards::deal_columns(batches);
    }
    const auto batch = ordered(c, options.order, options.fit, code);
    if (!batch) return {};
    for (const auto& text : batch->reckoning)
        complain(fmt::format("benchcard: {}: {}\n", file, text));
    return cards::deal(*batch);
}

} // namespace

int print(const print_options& options) {
    const auto how = find_look(options, "station");
    if (!how) return not_run;
    std::vector<styles::card> cards;
    std::vector<std::pair<std::string, std::vector<styles::card>>> to_record; // a file each
    std::string title;
    int worst = done;
    for (const auto& file : options.files) {
        const auto c = compile(file, options.measures);
        if (!c) {
            worst = not_run;
            continue;
        }
        int code = done;
        const auto dealt = cards_of(*c, options, file, code);
        worst = std::max(worst, code);
        if (code != done) continue;
        title += (title.empty() ? "" : ", ") + c->meaning.title;
        cards.insert(cards.end(), dealt.begin(), dealt.end());
        if (options.record) to_record.emplace_back(file, dealt);
    }
    if (worst != done) {
        complain("benchcard: nothing was printed\n");
        return worst;
    }
    const int code = write_pdf(cards, title, *how, options.output);
    if (code != done) return code;
    for (const auto& [file, dealt] : to_record)
        if (const auto failure = record_cards(file, dealt, options.order_words)) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return not_run;
        }
    return done;
}

} // namespace benchcard::commands
