#include "compiler/batch/orders.hpp"
#include "compiler/cards/deal.hpp"
#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/folders.hpp"
#include "compiler/commands/pdf_file.hpp"
#include "compiler/editor/serve.hpp"

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <unistd.h>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

/// The recipes in a folder and below it, up to numbers that no house has.
std::vector<std::string> recipes_in(const std::string& folder) {
    constexpr std::size_t most_recipes = 2000, most_entries = 50'000;
    auto found = recipes_below(folder, most_entries).paths;
    if (found.size() > most_recipes) found.resize(most_recipes);
    return found;
}

/// Where printed cards are kept until they are printed again: the user's cache.
fs::path cards_folder() {
    const auto set = [](const char* name) {
        const char* value = std::getenv(name);
        return fs::path(value && *value == '/' ? value : "");
    };
    if (const auto cache = set("XDG_CACHE_HOME"); !cache.empty()) return cache / "benchcard";
    if (const auto home = set("HOME"); !home.empty()) return home / ".cache" / "benchcard";
    return fs::temp_directory_path() / ("benchcard-" + std::to_string(::getuid()));
}

std::string file_name_for(const compiled& c) {
    auto stem = fs::path(c.files.sources.front().name()).stem().string();
    std::replace_if(
        stem.begin(), stem.end(), [](char ch) { return ch == '/' || ch == ':' || ch == '\0'; },
        '-');
    return (stem.empty() ? "recipe" : stem) + ".pdf";
}

/// The path of the PDF, or second why there is none.
std::pair<std::string, std::string> print_cards(const compiled& c) {
    if (grammar::has_errors(c.messages)) return {"", "the recipe has errors"};
    if (!c.meaning.has_product) return {"", "there is nothing to print: it has no component"};
    const auto how = find_look({}, "station");
    if (!how) return {"", "there is no style to print with"};
    std::error_code failed;
    const auto folder = cards_folder();
    fs::create_directories(folder, failed);
    const auto path = (folder / file_name_for(c)).string();
    const auto made = batch::batch_for(c.meaning, batch::as_written{}, std::nullopt);
    const auto* batch = std::get_if<batch::batch>(&made);
    if (!batch) return {"", std::get<batch::refusal>(made).message};
    print_job job{cards::deal(*batch), c.meaning.title, {c.files.sources}};
    if (write_pdf(std::move(job), *how, path) != done)
        return {"", "the cards cannot be printed to " + path};
    return {path, ""};
}

} // namespace

int language_server() {
    std::signal(SIGPIPE, SIG_IGN); // an editor that is gone is seen when it is written to
    return editor::serve(STDIN_FILENO, STDOUT_FILENO, {read_file, recipes_in, print_cards});
}

} // namespace benchcard::commands
