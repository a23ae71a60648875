#pragma once

#include "compiler/commands/commands.hpp"
#include "grammar/source.hpp"
#include "styles/card.hpp"
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

/// What goes into a PDF.
struct print_job {
    std::vector<styles::card> cards;
    std::string title;
    std::vector<std::vector<grammar::source>> sources; ///< of each recipe, its files
};

/// Lays the cards out, paints them and writes the PDF. Gives the exit code; what went wrong is said
/// on standard error, a character that no font has with its place in the recipe.
int write_pdf(const print_job& job, const look& how, const std::string& output);

} // namespace benchcard::commands
