#include "provoked.hpp"

#include <fmt/format.h>

namespace benchcard::language {

const std::vector<std::pair<std::string, std::string>>& other_provocations() {
    static const std::vector<std::pair<std::string, std::string>> recipes = {
        {"control-character", std::string("recipe: A\n100 g \0flour\n", 23)},
        {"not-utf8", "recipe: A\n100 g cr\xE8me\n"},
        {"name-too-long", "recipe: A\n100 g " + std::string(121, 'x') + "\n"},
        {"line-too-long", "recipe: A\n- " + std::string(10'000, 'x') + "\n"},
    };
    return recipes;
}

outcome with_too_many_files() {
    std::map<std::string, std::string> files;
    for (int i = 0; i < 1001; ++i)
        files[fmt::format("{}.recipe", i)] = fmt::format("recipe: {}\nuse: {}.recipe\n", i, i + 1);
    return compile("recipe: A\nuse: 0.recipe\n100 g plain flour\n", files);
}

const std::set<std::string>& kinds_without_example() {
    static const auto kinds = [] {
        std::set<std::string> result = {"too-many-files", "missing-font", "unreadable-font", "missing-character",
                                        "nothing-to-print", "pdf-failed"};
        for (const auto& [kind, recipe] : other_provocations()) result.insert(kind);
        return result;
    }();
    return kinds;
}

} // namespace benchcard::language
