#include "compiler/commands/house_book.hpp"

#include "compiler/commands/many_recipes.hpp"
#include "compiler/commands/side_by_side.hpp"
#include "compiler/commands/wrong_line.hpp"

#include <filesystem>
#include <fmt/format.h>
#include <map>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

std::string output_of(const named_recipe& recipe, const std::string& folder) {
    return (fs::path(folder) / recipe.within).replace_extension(".pdf").string();
}

/// Throws a `wrong_line` where two recipes would be printed to one file.
void expect_different(const named_recipes& recipes, const std::string& folder) {
    std::map<std::string, std::string> of;
    for (const auto& recipe : recipes.all) {
        const auto output = output_of(recipe, folder);
        const auto [other, is_new] = of.emplace(output, recipe.path);
        if (!is_new)
            throw wrong_line{fmt::format("{} and {} would both be printed to {}", other->second,
                                         recipe.path, output),
                             {"print them to a folder each"}};
    }
}

/// The folder itself is made where it is to be; one that is misspelt higher up is not.
std::string folder_failure(const fs::path& folder) {
    std::error_code failed;
    fs::create_directory(folder, failed);
    if (!fs::is_directory(folder, failed))
        return fmt::format("there is no folder {}, and it cannot be made", folder.string());
    return "";
}

made_recipe printed(kitchen& in, const named_recipe& recipe) {
    auto made = in.deal(recipe);
    if (!made.is_printed) return made;
    const auto say = [&](std::string_view text) { made.said += text; };
    const auto output = output_of(recipe, in.options.output);
    std::error_code failed; // which writing then says
    fs::create_directories(fs::path(output).parent_path(), failed);
    made.code =
        write_pdf({made.cards, made.title, {made.heard.sources}}, in.how, in.fonts, output, say);
    made.is_printed = made.code == done;
    return made;
}

} // namespace

bool is_folder(const std::string& output) {
    std::error_code failed;
    return output.ends_with('/') || fs::is_directory(output, failed);
}

int print_each(const print_options& options, const named_recipes& recipes) {
    expect_different(recipes, options.output);
    const auto in = open_kitchen(options);
    if (!in) return not_run;
    if (const auto failure = folder_failure(options.output); !failure.empty()) {
        complain(fmt::format("benchcard: {}\n", failure));
        return not_run;
    }
    reporting report(options, recipes.all.size());
    if (recipes.has_failed) report.fail(not_run);
    std::vector<dependence> from;
    side_by_side<made_recipe> work(recipes.all.size(),
                                   threads_for(options.jobs, recipes.all.size()),
                                   [&](std::size_t i) { return printed(*in, recipes.all[i]); });
    for (const auto& recipe : recipes.all) {
        auto one = work.take();
        report.take(recipe, one);
        if (one.is_printed) from.push_back({output_of(recipe, options.output), one.inputs});
    }
    if (!report.saw_all_cards()) report.fail(not_run);
    report.fail(write_depfile(options, from));
    return report.worst();
}

} // namespace benchcard::commands
