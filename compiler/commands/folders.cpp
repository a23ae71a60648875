#include "compiler/commands/folders.hpp"

#include "compiler/commands/files.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

bool is_left_out(const fs::directory_entry& folder) {
    const auto name = folder.path().filename().string();
    return name.starts_with('.') || name == "node_modules";
}

/// Goes through one folder and gives those in it, so that one that cannot be read hides no other.
std::vector<fs::path> look_into(const fs::path& folder, recipes_found& found,
                                std::size_t& entries_left) {
    std::vector<fs::path> below;
    std::error_code failed;
    fs::directory_iterator at(folder, failed);
    for (; !failed && at != fs::directory_iterator() && entries_left > 0; at.increment(failed)) {
        --entries_left;
        std::error_code unknown;
        if (at->is_directory(unknown) && !at->is_symlink(unknown)) {
            if (!is_left_out(*at)) below.push_back(at->path());
        } else if (at->path().extension() == ".recipe" && at->is_regular_file(unknown)) {
            found.paths.push_back(at->path().string());
        }
    }
    if (failed)
        found.failures.push_back(
            fmt::format("{} cannot be read: {}", folder.string(), failed.message()));
    return below;
}

/// Folder by folder, the files of each together: in the order of `fs::path`, which takes each path
/// to pieces at each comparison.
bool comes_before(const std::string& a, const std::string& b) {
    const auto rank = [](char c) { return c == '/' ? 0 : static_cast<unsigned char>(c) + 1; };
    return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(),
                                        [&](char x, char y) { return rank(x) < rank(y); });
}

/// A folder as the paths of its files begin; nothing for the current one.
std::string beginning_of(const std::string& folder) {
    auto name = fs::path(folder).lexically_normal().string();
    if (name == ".") return "";
    return name.ends_with('/') ? name : name + '/';
}

} // namespace

recipes_found recipes_below(const std::string& folder, std::size_t most_entries) {
    recipes_found found;
    std::vector<fs::path> to_see = {fs::path(folder).lexically_normal()};
    auto entries_left = most_entries + 1;
    while (!to_see.empty() && entries_left > 0) {
        const auto next = std::move(to_see.back());
        to_see.pop_back();
        for (auto& below : look_into(next, found, entries_left)) to_see.push_back(std::move(below));
    }
    if (entries_left == 0)
        found.failures.push_back(
            fmt::format("{} holds more than {} files and folders, and the rest "
                        "was not looked at",
                        folder, most_entries));
    if (beginning_of(folder).empty())
        for (auto& path : found.paths) path.erase(0, 2); // `./`
    std::sort(found.paths.begin(), found.paths.end(), comes_before);
    std::sort(found.failures.begin(), found.failures.end());
    return found;
}

named_recipes recipes_named(const std::vector<std::string>& names) {
    named_recipes result;
    for (const auto& name : names) {
        std::error_code failed;
        if (!fs::is_directory(name, failed)) {
            result.all.push_back({name, fs::path(name).filename().string()});
            continue;
        }
        result.has_folder = true;
        const auto found = recipes_below(name);
        for (const auto& failure : found.failures)
            complain(fmt::format("benchcard: {}\n", failure));
        if (found.paths.empty() && found.failures.empty())
            complain(fmt::format("benchcard: there is no recipe in {} or below it\n", name));
        result.has_failed |= found.paths.empty() || !found.failures.empty();
        const auto before = beginning_of(name).size();
        for (const auto& path : found.paths)
            result.all.push_back({path, path.substr(before), true});
    }
    return result;
}

std::vector<std::string> paths_of(const named_recipes& recipes) {
    std::vector<std::string> result;
    for (const auto& r : recipes.all) result.push_back(r.path);
    return result;
}

} // namespace benchcard::commands
