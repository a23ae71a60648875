#include "grammar/tidy.hpp"

#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/folders.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// Writes, and says so where it cannot.
int put(const std::string& path, std::string_view text) {
    const auto failure = write_file(path, text);
    if (!failure) return done;
    complain(fmt::format("benchcard: {}\n", *failure));
    return not_run;
}

int tidy_one(const std::string& path, tidy_way way) {
    const bool is_input = path == "-";
    const std::string name = is_input ? "standard input" : path;
    const auto file = is_input ? read_standard_input() : read_file(path);
    if (!file.is_read) {
        complain(fmt::format("benchcard: {} cannot be read: {}\n", name, file.failure));
        return not_run;
    }
    const auto text = grammar::tidied(file.text);
    if (way == tidy_way::print) return put("-", text);
    if (text == file.text) return done;
    if (way == tidy_way::write) return put(path, text);
    const auto said = put("-", name + "\n");
    return said == done ? recipe_errors : said;
}

} // namespace

int tidy(const tidy_options& options) {
    const auto named = recipes_named(options.files);
    int worst = named.has_failed ? not_run : done;
    for (const auto& file : paths_of(named)) worst = std::max(worst, tidy_one(file, options.way));
    return worst;
}

} // namespace benchcard::commands
