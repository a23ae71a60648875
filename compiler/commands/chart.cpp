#include "compiler/cards/chart.hpp"

#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/folders.hpp"
#include "compiler/commands/html_file.hpp"
#include "compiler/commands/many_recipes.hpp"
#include "compiler/commands/pdf_file.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "compiler/ingredients/names.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

using ingredients::entry;

/// The ingredients that a recipe names, and those it defines.
void collect(std::vector<const entry*>& to, const recipe::recipe& r) {
    for (const auto& c : r.components)
        for (const auto& l : c.lines) {
            if (l.what) to.push_back(l.what);
            to.insert(to.end(), l.others.begin(), l.others.end());
        }
    if (!r.own) return;
    const auto own = r.own->entries();
    to.insert(to.end(), own.begin(), own.end());
}

/// Whether one of an ingredient's names has all these words.
bool is_named(const entry& e, const std::vector<std::string>& words) {
    const auto has_all = [&](const std::string& name) {
        const auto own = ingredients::compared_words(name);
        return std::all_of(words.begin(), words.end(), [&](const auto& word) {
            return std::find(own.begin(), own.end(), word) != own.end();
        });
    };
    return has_all(e.name) || std::any_of(e.also.begin(), e.also.end(), has_all);
}

int refuse_unsaid_measures(const std::string& example) {
    print_wrong_line({"whose cups and spoons are meant is not said", {"for example: " + example}});
    return not_run;
}

} // namespace

int list_measures(const convert_options& options) {
    if (options.measures == measures::system::unstated)
        return refuse_unsaid_measures("benchcard convert --list --measures us");
    auto entries = ingredients::built_in_table().entries();
    const auto words = ingredients::compared_words(options.amount);
    std::erase_if(entries, [&](const auto* e) { return !is_named(*e, words); });
    const auto rows = cards::chart_of(entries, options.measures);
    if (rows.empty()) {
        complain(
            entries.empty()
                ? fmt::format("benchcard: no ingredient in the table is called `{}`\n",
                              options.amount)
                : fmt::format("benchcard: what a measure of {} weighs is not known: no published "
                              "figure was seen\n",
                              options.amount));
        return recipe_errors;
    }
    if (const auto failure = write_file("-", cards::chart_text(rows, options.measures))) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

int print_chart(const print_options& options) {
    const auto how = find_look(options, "chart");
    if (!how) return not_run;
    const auto named = recipes_named(options.files);
    std::vector<std::unique_ptr<compiled>> recipes; // they own the ingredients they define
    std::vector<const entry*> entries;
    auto system = options.measures;
    int worst = named.has_failed ? not_run : done;
    for (const auto& recipe : named.all) {
        // A recipe's own cups are read as it says: only the chart is in the measures asked for.
        auto c = compile(recipe.path, measures::system::unstated,
                         {.only_in = own_folder(options.confined, recipe)});
        if (!c) {
            worst = not_run;
            continue;
        }
        print_messages(*c);
        if (grammar::has_errors(c->messages)) worst = std::max<int>(worst, recipe_errors);
        if (system == measures::system::unstated) system = c->meaning.measures;
        collect(entries, c->meaning);
        recipes.push_back(std::move(c));
    }
    if (worst != done) {
        complain("benchcard: nothing was printed\n");
        return worst;
    }
    if (system == measures::system::unstated)
        return refuse_unsaid_measures("benchcard print --chart -o chart.pdf --measures us");
    if (options.files.empty()) entries = ingredients::built_in_table().entries();
    const auto rows = cards::chart_of(entries, system);
    if (rows.empty()) {
        complain("benchcard: no ingredient here has a known weight by measure: there is nothing to "
                 "chart\n");
        return recipe_errors;
    }
    const auto title = recipes.size() == 1 ? recipes.front()->meaning.title : "";
    print_job job{{cards::chart_card(rows, system, title)}, "Grams in a measure", {}};
    for (const auto& c : recipes) job.sources.push_back(c->files.sources);
    const int code = is_html(options.output) ? write_html(job, *how, options.output)
                                             : write_pdf(job, *how, options.output);
    if (code != done) return code;
    std::vector<std::string> from;
    for (const auto& sources : job.sources)
        for (auto& name : names_of(sources, options.style)) from.push_back(std::move(name));
    return write_depfile(options, {{options.output, from}});
}

} // namespace benchcard::commands
