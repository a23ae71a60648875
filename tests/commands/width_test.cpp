#include "program.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <sstream>

/// What `weigh` prints fits a terminal of 80 columns.
namespace benchcard::program {

namespace {

std::vector<std::string> all_recipes() {
    std::vector<std::string> result;
    for (const auto* folder : {"/examples", "/tests/recipes"})
        for (const auto& entry : std::filesystem::recursive_directory_iterator(
                 std::string(BENCHCARD_SOURCE_DIR) + folder))
            if (entry.path().extension() == ".recipe") result.push_back(entry.path());
    std::sort(result.begin(), result.end());
    return result;
}

/// Characters, none of which is a wide one in these recipes.
std::size_t characters(const std::string& line) {
    return static_cast<std::size_t>(std::count_if(line.begin(), line.end(), [](const char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

} // namespace

TEST_CASE("no line of a weigh-out is longer than 80 characters", "[commands]") {
    const auto recipes = all_recipes();
    CHECK(recipes.size() > 40);
    for (const auto& recipe : recipes)
        for (const auto& order : std::vector<std::vector<std::string>>{
                 {}, {"--scale", "37"}, {"--scale", "2/3"}, {"--batch", "1/2, 1, 2, 4"}}) {
            std::vector<std::string> arguments = {"weigh", recipe};
            arguments.insert(arguments.end(), order.begin(), order.end());
            const auto r = run(arguments);
            INFO(recipe << " " << (order.empty() ? "" : order.back()) << "\n" << r.err);
            CHECK(r.code == 0);
            CHECK(r.out.size() > 20);
            std::istringstream lines(r.out);
            for (std::string line; std::getline(lines, line);) {
                INFO(line);
                CHECK(characters(line) <= 80);
            }
        }
}

} // namespace benchcard::program
