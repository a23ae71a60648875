#include "compiler/commands/pdf_file.hpp"

#include "compiler/checks/shorten.hpp"
#include "compiler/commands/files.hpp"
#include "styles/layout/lay_out.hpp"
#include "styles/layout/utf8.hpp"
#include "styles/pdf/character_name.hpp"
#include "styles/pdf/faces.hpp"
#include "styles/pdf/paint.hpp"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <ctime>
#include <fmt/format.h>
#include <iterator>
#include <memory>

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
void say_plainly(const grammar::diagnostics& messages, const saying& say) {
    for (const auto& m : messages) {
        say(fmt::format("benchcard: {} [{}]\n", m.message, m.kind));
        for (const auto& n : m.notes) say(fmt::format("     = note: {}\n", n.text));
        for (const auto& h : m.helps) say(fmt::format("     = help: {}\n", h.text));
    }
}

/// Where a character stands first in some files; nothing where it is in none.
std::optional<grammar::span> place_of(char32_t code, const std::vector<grammar::source>& files) {
    std::string bytes;
    layout::append(bytes, code);
    for (const auto& file : files) {
        const auto at = file.text().find(bytes);
        if (at == std::string_view::npos) continue;
        return grammar::span{file.file(), static_cast<std::uint32_t>(at),
                             static_cast<std::uint32_t>(at + bytes.size())};
    }
    return std::nullopt;
}

std::optional<styles::style> style_in_file(const std::string& path) {
    auto file = read_file(path);
    if (!file.is_read) {
        complain(fmt::format("benchcard: the style {} cannot be read: {}\n", path, file.failure));
        return std::nullopt;
    }
    const std::vector<grammar::source> sources = {{0, path, std::move(file.text)}};
    grammar::diagnostics messages;
    auto style = styles::read_style(sources.front(), messages);
    checks::put_in_order(messages);
    complain(shown_messages(messages, sources, stderr));
    if (grammar::has_errors(messages)) return std::nullopt;
    return style;
}

std::optional<styles::style> style_named(const std::string& name) {
    if (is_path(name)) return style_in_file(name);
    auto style = styles::built_in_style(name);
    if (!style)
        complain(fmt::format("benchcard: there is no style `{}`; there are: {}\n"
                             "     = help: one of your own is named by its file: {}.style\n",
                             name, listed(styles::built_in_style_names()), name));
    return style;
}

std::optional<styles::paper> paper_for(const print_options& options, const styles::style& style) {
    if (options.paper.empty()) return style.sheet;
    auto sheet = styles::paper_named(options.paper);
    if (!sheet) {
        std::vector<std::string_view> names;
        for (const auto& p : styles::papers()) names.push_back(p.name);
        complain(fmt::format("benchcard: there is no paper `{}`; there are: {}\n"
                             "     = help: each also turned: 'a5 landscape'\n",
                             options.paper, listed(names)));
    }
    return sheet;
}

/// The pages of a card; on two-sided sheets fronts and backs in turn.
std::vector<layout::page> pages_of(const styles::card& card, const look& how,
                                   const layout::font_metrics& metrics) {
    auto pages = layout::lay_out(card, how.style, how.on.card, metrics);
    if (!how.two_sided) return pages;
    if (pages.size() % 2 == 1)
        pages.push_back(layout::back_of(card, how.style, how.on.card, metrics));
    layout::settle_backs(pages, how.style, how.on.sheet, *how.two_sided);
    return pages;
}

/// The seconds of SOURCE_DATE_EPOCH (reproducible-builds.org): a whole number, and nothing else.
std::optional<std::int64_t> seconds_in(std::string_view text) {
    constexpr std::int64_t most = 253'402'300'799; // the end of the year 9999
    std::int64_t value = 0;
    const auto* end = std::to_address(text.end());
    const auto read = std::from_chars(std::to_address(text.begin()), end, value);
    const bool is_number = read.ec == std::errc{} && read.ptr == end;
    return is_number && value >= 0 && value <= most ? std::optional(value) : std::nullopt;
}

} // namespace

bool is_path(const std::string& style) { return style.find_first_of("./") != style.npos; }

std::optional<look> find_look(const print_options& options, const std::string& usual) {
    const auto style = style_named(options.style.empty() ? usual : options.style);
    if (!style) return std::nullopt;
    const auto sheet = paper_for(options, *style);
    if (!sheet) return std::nullopt;
    const auto grid = layout::grid_for(*style, *sheet);
    if (!grid) {
        const auto cards = style->cut->to
                               ? "card of " + std::string(style->cut->to->name)
                               : fmt::format("{} cards that are large enough", style->cut->number);
        complain(fmt::format("benchcard: a sheet of {} holds no {}\n", sheet->name, cards));
        return std::nullopt;
    }
    if (options.copies > grid->places()) {
        complain(grid->is_cut()
                     ? fmt::format("benchcard: a sheet of {} holds {} cards, and {} copies of each "
                                   "are asked for\n",
                                   sheet->name, grid->places(), options.copies)
                     : "benchcard: this style puts one card on a sheet, so there are no copies of "
                       "it on one\n     = help: for example: --style sheet\n");
        return std::nullopt;
    }
    look how{*style, *grid, options.two_sided, options.copies, {}};
    if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH"); epoch && *epoch) {
        how.date = seconds_in(epoch);
        if (!how.date) {
            complain(fmt::format("benchcard: SOURCE_DATE_EPOCH is `{}`, and not a number of "
                                 "seconds\n",
                                 epoch));
            return std::nullopt;
        }
    } else if (options.dated) {
        how.date = std::time(nullptr);
    }
    return how;
}

namespace {

/// Says that a card is too narrow for its style; false when it is not.
bool is_too_narrow(const look& how, const layout::font_metrics& metrics) {
    const double room = layout::room_across(how.style, how.on.card);
    const double least = layout::least_room(how.style, metrics);
    if (room >= least) return false;
    complain(
        fmt::format("benchcard: between its margins a card of {} is {:.0f} mm wide, and the type "
                    "of this style needs {:.0f} mm\n"
                    "     = help: take larger paper, a narrower margin or hole, or smaller "
                    "amounts\n",
                    how.on.card.name, room / styles::points_per_mm, least / styles::points_per_mm));
    return true;
}

} // namespace

std::optional<pdf::font_set> find_fonts(const look& how, pdf::reach wanted) {
    grammar::diagnostics messages;
    auto fonts = pdf::load_fonts(messages, wanted);
    say_plainly(messages, complain);
    if (grammar::has_errors(messages) || is_too_narrow(how, fonts.metrics)) return std::nullopt;
    return fonts;
}

std::vector<layout::page> sheets_of(const std::vector<styles::card>& cards, const look& how,
                                    const layout::font_metrics& metrics) {
    std::vector<layout::page> pages;
    for (const auto& card : cards)
        for (auto& page : pages_of(card, how, metrics)) pages.push_back(std::move(page));
    return layout::imposed(std::move(pages), how.on, how.copies, how.two_sided);
}

pdf::document_info described(const std::string& title, const look& how) {
    return {title, "en", "benchcard", how.date, how.two_sided};
}

int say_failures(const pdf::painted& pdf, const print_job& job, const saying& say) {
    for (std::size_t i = 0; i < pdf.messages.size(); ++i) {
        auto message = pdf.messages[i];
        bool is_shown = false;
        for (const auto& files : job.sources) {
            if (i >= pdf.missing.size() || is_shown) break;
            const auto place = place_of(pdf.missing[i], files);
            if (!place) continue;
            message.where = *place;
            message.message = "no font has the character " + pdf::named_character(pdf.missing[i]);
            message.helps = {{.text = "write it in another way, or leave it out"}};
            say(shown_messages({message}, files, stderr));
            is_shown = true;
        }
        if (!is_shown) say_plainly({message}, say);
    }
    if (!grammar::has_errors(pdf.messages)) return done;
    return is_of_the_text(pdf.messages) ? recipe_errors : not_run;
}

namespace {

/// The pages of a card; further fonts are read where it has a character that the first lack.
std::optional<std::vector<layout::page>> pages_of(const styles::card& card, const look& how,
                                                  pdf::font_set& fonts) {
    auto pages = pages_of(card, how, fonts.metrics);
    if (fonts.is_complete || pdf::have_all(pages, fonts)) return pages;
    auto all = find_fonts(how, pdf::reach::all);
    if (!all) return std::nullopt;
    fonts = std::move(*all);
    return pages_of(card, how, fonts.metrics);
}

int write_sheets(std::vector<layout::page> sheets, const print_job& job, const look& how,
                 const pdf::font_set& fonts, const std::string& output, const saying& say) {
    if (sheets.size() > most_pages) {
        say(fmt::format("benchcard: {} would have {} pages; at most {} can be written\n", output,
                        sheets.size(), most_pages));
        return not_run;
    }
    const auto pdf = pdf::paint(std::move(sheets), fonts, described(job.title, how));
    if (const int code = say_failures(pdf, job, say); code != done) return code;
    if (const auto failure = write_file(output, pdf.bytes)) {
        say(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace

int write_pdf(const print_job& job, const look& how, const pdf::font_set& fonts,
              const std::string& output, const saying& say) {
    return write_sheets(sheets_of(job.cards, how, fonts.metrics), job, how, fonts, output, say);
}

int write_pdf(print_job job, const look& how, const std::string& output) {
    auto fonts = find_fonts(how, pdf::reach::text);
    if (!fonts) return not_run;
    std::vector<layout::page> pages;
    for (auto& card : job.cards) {
        auto of_card = pages_of(card, how, *fonts);
        if (!of_card) return not_run;
        std::ranges::move(*of_card, std::back_inserter(pages));
        card = {}; // of thousands of cards there is room for the pages or the cards
    }
    auto sheets = layout::imposed(std::move(pages), how.on, how.copies, how.two_sided);
    return write_sheets(std::move(sheets), job, how, *fonts, output, complain);
}

} // namespace benchcard::commands
