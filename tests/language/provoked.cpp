#include "provoked.hpp"

#include <fmt/format.h>

namespace benchcard::language {

namespace {

std::string repeated(int count, const std::string& line) {
    std::string result;
    for (int i = 0; i < count; ++i) result += line;
    return result;
}

/// So many components, each made of the one before it.
std::string chain_of(int count) {
    std::string result = "component: Part 1\n1 g salt\n";
    for (int i = 2; i <= count; ++i)
        result += fmt::format("component: Part {}\nall Part {}\n", i, i - 1);
    return result;
}

} // namespace

const std::vector<std::pair<std::string, std::string>>& other_provocations() {
    static const std::vector<std::pair<std::string, std::string>> recipes = {
        {"control-character", std::string("recipe: A\n100 g \0flour\n", 23)},
        {"not-utf8", "recipe: A\n100 g cr\xE8me\n"},
        {"name-too-long", "recipe: A\n100 g " + std::string(121, 'x') + "\n"},
        {"line-too-long", "recipe: A\n- " + std::string(10'000, 'x') + "\n"},
        {"too-many-marks", "recipe: A\n- e" + repeated(31, "\u0301") + "\n"},
        {"too-many", "recipe: A\n" + repeated(2001, "1 g salt\n")},
        {"too-many-messages", "recipe: A\n" + repeated(1001, "salt\n")},
        {"too-deep", "recipe: A\n" + chain_of(51)},
    };
    return recipes;
}

outcome with_too_many_files() {
    std::map<std::string, std::string> files;
    std::string all;
    for (int i = 0; i < 1000; ++i) {
        files[fmt::format("{}.recipe", i)] = fmt::format("recipe: {}\n", i);
        all += fmt::format("use: {}.recipe\n", i);
    }
    return compile("recipe: A\n" + all + "100 g plain flour\n", files);
}

const std::set<std::string>& kinds_without_example() {
    static const auto kinds = [] {
        std::set<std::string> result = {"too-many-files",  "file-outside",      "missing-font",
                                        "unreadable-font", "missing-character", "nothing-to-print",
                                        "pdf-failed"};
        for (const auto& [kind, recipe] : other_provocations()) result.insert(kind);
        return result;
    }();
    return kinds;
}

} // namespace benchcard::language
