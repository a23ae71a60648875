#pragma once

#include "compiler/commands/commands.hpp"
#include "styles/card.hpp"
#include "styles/style.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::commands {

/// How the cards of a PDF look, and on what paper.
struct look {
    styles::style style;
    styles::paper sheet;
};

/// The style and the paper that the command line asks for; `usual` is the style where it names
/// none. Gives nothing, and says so on standard error, where there is no such style or paper.
std::optional<look> find_look(const print_options& options, const std::string& usual);

/// Lays the cards out, paints them and writes the PDF. Gives the exit code; what went wrong is said
/// on standard error.
int write_pdf(const std::vector<styles::card>& cards, const std::string& title, const look& how,
              const std::string& output);

} // namespace benchcard::commands
