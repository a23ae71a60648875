#pragma once

#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "grammar/source.hpp"
#include "styles/card.hpp"
#include "styles/pdf/paint.hpp"
#include "styles/style.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace benchcard::commands {

/// How the cards of a PDF look, and on what sheets they stand.
struct look {
    styles::style style;
    layout::grid on;
    std::optional<layout::flip> two_sided;
    std::size_t copies = 1;
    std::optional<std::int64_t> date; ///< that the PDF says, seconds since 1970
};

/// The style and the paper that the command line asks for; `usual` is the style where it names
/// none. Gives nothing, and says so on standard error, where there is no such style or paper, or
/// the style's file has errors. The date is SOURCE_DATE_EPOCH, where the environment has it, or now
/// where one is asked for.
std::optional<look> find_look(const print_options& options, const std::string& usual);

/// Whether a style is named by its file: no style that is built in has a dot or a slash.
bool is_path(const std::string& style);

/// What goes into a PDF.
struct print_job {
    std::vector<styles::card> cards;
    std::string title;
    std::vector<std::vector<grammar::source>> sources; ///< of each recipe, its files
};

/// The fonts that cards are set in. Gives nothing, and says so on standard error, where a card is
/// too narrow for its style in them.
std::optional<pdf::font_set> find_fonts(const look& how, pdf::reach wanted);

/// The sheets of some cards, ready to be painted.
std::vector<layout::page> sheets_of(const std::vector<styles::card>& cards, const look& how,
                                    const layout::font_metrics& metrics);

/// The pages that one PDF may have: a book of some ten thousand recipes. One has 17 KB of memory.
inline constexpr std::size_t most_pages = 50'000;

/// What a PDF says of itself.
pdf::document_info described(const std::string& title, const look& how);

/// Says why something was not painted, a character that no font has with its place in the recipe.
/// Gives the exit code; done where nothing is in the way.
int say_failures(const pdf::painted& pdf, const print_job& job, const saying& say);

/// Lays the cards out, paints them and writes the PDF. Gives the exit code; what went wrong is
/// said.
int write_pdf(const print_job& job, const look& how, const pdf::font_set& fonts,
              const std::string& output, const saying& say);
/// The same with the fonts that there are, and on standard error.
int write_pdf(print_job job, const look& how, const std::string& output);

} // namespace benchcard::commands
