#include "compiler/commands/confined.hpp"

#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

/// The path behind all links, as far as there is such a file.
fs::path behind_links(const fs::path& path) {
    std::error_code failed;
    const auto absolute = fs::absolute(path, failed);
    auto real = fs::weakly_canonical(absolute, failed);
    return failed ? fs::path() : real;
}

bool lies_below(const fs::path& file, const fs::path& folder) {
    const auto within = file.lexically_relative(folder);
    return !file.empty() && !folder.empty() && !within.empty() && *within.begin() != "..";
}

std::string or_here(const std::string& folder) { return folder.empty() ? "." : folder; }

} // namespace

confinement own_folder(bool is_confined, const std::string& recipe) {
    if (!is_confined) return std::nullopt;
    return or_here(fs::path(recipe).parent_path().string());
}

confinement own_folder(bool is_confined, const named_recipe& recipe) {
    if (!is_confined || !recipe.in_folder) return own_folder(is_confined, recipe.path);
    auto folder = recipe.path.substr(0, recipe.path.size() - recipe.within.size());
    if (folder.size() > 1 && folder.ends_with('/')) folder.pop_back();
    return or_here(folder);
}

recipe::file_reader confined_to(const confinement& folder, recipe::file_reader read) {
    if (!folder) return read;
    return [folder = *folder, root = behind_links(*folder),
            read = std::move(read)](const std::string& path) -> recipe::file_text {
        const auto real = behind_links(path);
        if (lies_below(real, root)) return read(path);
        return {false, "", fmt::format("it lies outside the folder {}", folder), true};
    };
}

} // namespace benchcard::commands
