#pragma once

#include "compiler/commands/commands.hpp"
#include "grammar/source.hpp"
#include "styles/card.hpp"
#include "styles/style.hpp"

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
};

/// The style and the paper that the command line asks for; `usual` is the style where it names
/// none. Gives nothing, and says so on standard error, where there is no such style or paper, or
/// the style's file has errors.
std::optional<look> find_look(const print_options& options, const std::string& usual);

/// Lays the cards out, paints them and writes the PDF. Gives the exit code; what went wrong is said
/// on standard error.
int write_pdf(const std::vector<styles::card>& cards, const std::string& title, const look& how,
              const std::string& output);

} // namespace benchcard::commands
