#include "compiler/commands/pdf_file.hpp"

#include "compiler/commands/files.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/pdf/paint.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

template <typename Names> std::string listed(const Names& names) {
    std::string result;
    for (const auto& name : names) result += (result.empty() ? "" : ", ") + std::string(name);
    return result;
}

/// Whether it is the recipe's own words that cannot be painted.
bool is_of_the_text(const grammar::diagnostics& messages) {
    return std::any_of(messages.begin(), messages.end(),
                       [](const auto& m) { return m.kind == "missing-character"; });
}

/// Messages of the painter have no place in a recipe's text.
void print_plainly(const grammar::diagnostics& messages) {
    for (const auto& m : messages) {
        complain(fmt::format("benchcard: {} [{}]\n", m.message, m.kind));
        for (const auto& n : m.notes) complain(fmt::format("     = note: {}\n", n.text));
        for (const auto& h : m.helps) complain(fmt::format("     = help: {}\n", h.text));
    }
}

} // namespace

std::optional<look> find_look(const print_options& options, const std::string& usual) {
    const auto& name = options.style.empty() ? usual : options.style;
    const auto style = styles::built_in_style(name);
    if (!style) {
        complain(fmt::format("benchcard: there is no style `{}`; there are: {}\n", name,
                             listed(styles::built_in_style_names())));
        return std::nullopt;
    }
    if (options.paper.empty()) return look{*style, style->sheet};
    const auto sheet = styles::paper_named(options.paper);
    if (!sheet) {
        std::vector<std::string_view> names;
        for (const auto& p : styles::papers()) names.push_back(p.name);
        complain(fmt::format("benchcard: there is no paper `{}`; there are: {}\n", options.paper,
                             listed(names)));
        return std::nullopt;
    }
    return look{*style, *sheet};
}

int write_pdf(const std::vector<styles::card>& cards, const std::string& title, const look& how,
              const std::string& output) {
    grammar::diagnostics messages;
    const auto fonts = pdf::load_fonts(messages);
    print_plainly(messages);
    if (!fonts) return not_run;
    std::vector<layout::page> pages;
    for (const auto& card : cards)
        for (auto& page : layout::lay_out(card, how.style, how.sheet, fonts->metrics))
            pages.push_back(std::move(page));
    const auto pdf = pdf::paint(pages, *fonts, {title, "en", "benchcard"});
    print_plainly(pdf.messages);
    if (!pdf) return is_of_the_text(pdf.messages) ? recipe_errors : not_run;
    if (const auto failure = write_file(output, pdf.bytes)) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
