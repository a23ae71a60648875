#include "program.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

namespace benchcard::program {

namespace {

const std::string filling = "recipe: House\ncomponent: Filling\nmakes: 200 g\n200 g   plums\n"
                            "- Boil [plums] for [3 min].\n";
const std::string pie = "recipe: Pie\nuse: house.recipe\nmakes: 1 pie\n200 g   Filling\n"
                        "- Warm [Filling] for [3 min].\n";

} // namespace

TEST_CASE("print --watch prints again when a file is saved, a line each time", "[commands]") {
    const folder at;
    at.file("house.recipe", filling), at.file("pie.recipe", pie);
    background b({"print", "pie.recipe", "-o", "pie.pdf", "--watch"}, {.folder = at.path()});
    CHECK_THAT(b.wait_for(" ms\n"), Catch::Matches("benchcard: pie\\.pdf: printed, [0-9]+ ms\n"));
    const auto first = bytes_of(at / "pie.pdf");
    CHECK(first.starts_with("%PDF-"));

    // As editors save: under another name, then renamed.
    at.file("new", pie + "note: Warm.\n");
    std::filesystem::rename(at / "new", at / "pie.recipe");
    const auto said = b.wait_for(" ms\n", 2);
    CHECK(std::count(said.begin(), said.end(), '\n') == 2);
    const auto second = bytes_of(at / "pie.pdf");
    CHECK(second != first);

    // A file that it uses, with an error: what was printed last stays.
    at.file("house.recipe", filling + "0 g x\n");
    CHECK_THAT(b.wait_for(" ms\n", 3),
               Catch::Contains("zero-amount") && Catch::Contains("pie.pdf: kept as it was, "));
    CHECK(bytes_of(at / "pie.pdf") == second);

    std::filesystem::remove(at / "house.recipe");
    CHECK_THAT(b.wait_for("no such file"), Catch::Contains("house.recipe"));
    at.file("house.recipe", filling);
    b.wait_for("printed, ", 3);
    CHECK(bytes_of(at / "pie.pdf") == second);
    CHECK(b.is_running());
}

TEST_CASE("print --watch needs files on both ends", "[commands]") {
    for (const auto& arguments :
         std::vector<std::vector<std::string>>{{"print", "-", "-o", "x.pdf", "--watch"},
                                               {"print", "a.recipe", "-o", "-", "--watch"},
                                               {"print", "--chart", "-o", "x.pdf", "--watch"}}) {
        const auto r = run(arguments);
        CHECK(r.code == 2);
        CHECK(r.err ==
              "benchcard: --watch needs recipes in files, and a file to print to\n"
              "     = help: for example: benchcard print tart.recipe -o tart.pdf --watch\n");
    }
}

} // namespace benchcard::program
