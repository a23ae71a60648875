#include "compiler/commands/card_check.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/dealt.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/folders.hpp"
#include "compiler/commands/house_book.hpp"
#include "compiler/commands/html_file.hpp"
#include "compiler/commands/many_recipes.hpp"
#include "compiler/commands/pdf_file.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace benchcard::commands {

namespace {

/// One PDF or page of all recipes that are named, or nothing.
int print_together(const print_options& options) {
    const auto how = find_look(options, "station");
    if (!how) return not_run;
    print_job job;
    std::vector<std::pair<std::string, std::vector<styles::card>>> to_record; // a file each
    std::vector<std::string> from;
    int worst = done;
    for (const auto& file : options.files) {
        const auto c =
            compile(file, options.measures, {.only_in = own_folder(options.confined, file)});
        if (!c) {
            worst = not_run;
            continue;
        }
        print_messages(*c);
        int code = done;
        auto of_file = cards_of(*c, options, how->style, file, code, complain);
        worst = std::max(worst, code);
        if (code != done) continue;
        job.title += (job.title.empty() ? "" : ", ") + c->meaning.title;
        job.sources.push_back(c->files.sources);
        const auto names = names_of(c->files.sources, options.style);
        from.insert(from.end(), names.begin(), names.end());
        if (options.record) keep_named(to_record.emplace_back(file, of_file).second, options.cards);
        std::ranges::move(of_file, std::back_inserter(job.cards));
    }
    if (worst == done && !are_all_there(options.cards, job.cards)) worst = not_run;
    if (worst != done) {
        complain("benchcard: nothing was printed\n");
        return worst;
    }
    keep_named(job.cards, options.cards);
    const int code = is_html(options.output) ? write_html(job, *how, options.output)
                                             : write_pdf(std::move(job), *how, options.output);
    if (code != done) return code;
    for (const auto& [file, recorded] : to_record)
        if (const auto failure = record_cards(file, recorded, options.order_words)) {
            complain(fmt::format("benchcard: {}\n", *failure));
            return not_run;
        }
    return write_depfile(options, {{options.output, from}});
}

} // namespace

int print(const print_options& options) {
    const auto recipes = recipes_named(options.files);
    if (is_folder(options.output)) return print_each(options, recipes);
    if (!recipes.has_folder) return print_together(options);
    if (is_html(options.output))
        throw wrong_line{"a folder is printed to a PDF, or to a folder with a PDF for each recipe",
                         {"for example: -o book.pdf, or -o cards/"}};
    return print_book(options, recipes);
}

} // namespace benchcard::commands
