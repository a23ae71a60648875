#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/ordered.hpp"
#include "compiler/commands/pdf_file.hpp"
#include "compiler/label/label_card.hpp"
#include "compiler/label/shown.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

int print_label(const label::draft& draft, const compiled& c, const label_options& options) {
    print_options wanted;
    wanted.style = options.style, wanted.paper = options.paper;
    auto how = find_look(wanted, "label");
    if (!how) return not_run;
    const auto& sheet = how->on.card;
    how->style.x_height = std::max(how->style.x_height, label::least_x_height(sheet));
    return write_pdf(
        {label::cards_of(draft, c.meaning.revision, sheet), draft.list.title, {c.files.sources}},
        *how, options.output);
}

} // namespace

int label(const label_options& options) {
    const auto c = compile(options.file, options.measures,
                           {.only_in = own_folder(options.confined, options.file)});
    if (!c) return not_run;
    int code = done;
    const auto batch = ordered(*c, options.order, options.fit, code);
    if (!batch) return code;
    if (label::entries_in(c->meaning) > label::most_entries) {
        complain(fmt::format("benchcard: the list of ingredients, with those of its components, "
                             "would have more than {} entries\n",
                             label::most_entries));
        return recipe_errors;
    }
    label::draft draft{label::ingredients_of(*batch), safety::law_named(c->meaning.labels), {}};
    if (!options.made.empty())
        draft.date = label::use_by_of(c->meaning, options.made, options.frozen);
    if (!options.output.empty()) return print_label(draft, *c, options);
    if (const auto failure =
            write_file("-", options.json ? label::as_json(draft) : label::as_text(draft))) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
