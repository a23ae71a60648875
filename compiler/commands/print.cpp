#include "compiler/cards/deal.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/commands/pdf_file.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

int print(const print_options& options) {
    const auto how = find_look(options, "station");
    if (!how) return not_run;
    std::vector<styles::card> cards;
    std::string title;
    int worst = done;
    for (const auto& file : options.files) {
        const auto c = compile(file, options.measures);
        if (!c) {
            worst = not_run;
            continue;
        }
        int code = done;
        const auto batch = ordered(*c, options.order, options.fit, code);
        worst = std::max(worst, code);
        if (!batch) continue;
        for (const auto& text : batch->reckoning)
            complain(fmt::format("benchcard: {}: {}\n", file, text));
        title += (title.empty() ? "" : ", ") + c->meaning.title;
        for (auto& card : cards::deal(*batch)) cards.push_back(std::move(card));
    }
    if (worst != done) {
        complain("benchcard: nothing was printed\n");
        return worst;
    }
    return write_pdf(cards, title, *how, options.output);
}

} // namespace benchcard::commands
