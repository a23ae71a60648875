#include "compiler/commands/html_file.hpp"

#include "compiler/commands/files.hpp"
#include "styles/html/document.hpp"

#include <fmt/format.h>

namespace benchcard::commands {

bool is_html(const std::string& output) {
    return output.ends_with(".html") || output.ends_with(".htm");
}

int write_html(const print_job& job, const look& how, const std::string& output) {
    const auto failure =
        write_file(output, html::document_of(job.cards, job.title, how.style, how.on.card));
    if (failure) complain(fmt::format("benchcard: {}\n", *failure));
    return failure ? not_run : done;
}

} // namespace benchcard::commands
