#include "program.hpp"
#include "shell.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

/// No variable of the environment, and no locale, changes a figure or a byte.
namespace benchcard::program {

namespace {

using variables = std::map<std::string, std::string>;

/// Every command that gives figures, on recipes that have decimals in most of them.
std::vector<std::vector<std::string>> command_lines(const std::string& wrong) {
    const std::string examples = BENCHCARD_SOURCE_DIR "/examples/";
    const auto tart = examples + "pear-and-almond-tart.recipe";
    return {{"check", wrong},
            {"check", wrong, "--format", "json"},
            {"check", wrong, "--format", "sarif"},
            {"weigh", tart, "--scale", "1.5"},
            {"weigh", tart, "--why"},
            {"weigh", tart, "--batch", "0.5, 1, 2.5"},
            {"label", tart, "--made", "2026-04-01"},
            {"label", tart, "--format", "json"},
            {"tidy", wrong},
            {"convert", "2.5 cups plain flour", "--measures", "us"},
            {"convert", "--list", "sugar", "--measures", "us"},
            {"print", tart, "-o", "-"},
            {"print", "--chart", tart, "-o", "-", "--measures", "us"}};
}

} // namespace

TEST_CASE("a locale with a decimal comma, and what else surrounds a run, change no byte",
          "[commands]") {
    const folder at;
    // So that the test needs none that is installed: from the sources of glibc's locales.
    int code = 0;
    const auto made =
        said_by("localedef -i de_DE -f UTF-8 '" + (at / "de_XX.UTF-8") + "' 2>&1", &code);
    INFO(made);
    REQUIRE(std::filesystem::exists(at / "de_XX.UTF-8/LC_NUMERIC"));
    REQUIRE(said_by("LOCPATH='" + at.path() + "' LC_ALL=de_XX.UTF-8 /usr/bin/printf %.1f 1,5",
                    &code) == "1,5");

    const auto wrong = at.file("wrong.recipe", "recipe: Loaf\nmakes: 3 loaves of 812.5 g\n"
                                               "1234.5 g wheat flour\n1/3 l   water\n2.25 g salt\n"
                                               "- Mix [flour: 0.5 kg] with [water]; [37.5 C].\n");
    const variables here = {{"LC_ALL", "C"}};
    const std::vector<variables> elsewhere = {
        {{"LOCPATH", at.path()}, {"LC_ALL", "de_XX.UTF-8"}, {"LANGUAGE", "de"}},
        {{"LOCPATH", at.path()}, {"LC_ALL", ""}, {"LC_NUMERIC", "de_XX.UTF-8"}},
        {{"LOCPATH", at.path()}, {"LC_ALL", ""}, {"LANG", "de_XX.UTF-8"}},
        {{"LC_ALL", "C"}, {"TZ", "Pacific/Auckland"}},
        {{"LC_ALL", "C"}, {"COLUMNS", "20"}, {"LINES", "5"}, {"TERM", "xterm-256color"}},
        {{"LC_ALL", "C"}, {"POSIXLY_CORRECT", "1"}, {"NO_COLOR", "1"}, {"CLICOLOR_FORCE", "1"}},
        {{"LC_ALL", "C"}, {"MALLOC_PERTURB_", "165"}, {"OMP_NUM_THREADS", "1"}},
        {{"LC_ALL", "C"}, {"CC", "x"}, {"DEBUG", "1"}, {"VERBOSE", "1"}, {"PAPERSIZE", "letter"}},
    };
    for (const auto& line : command_lines(wrong)) {
        INFO(line[0] << " " << line[1] << " " << (line.size() > 2 ? line[2] : ""));
        const auto usual = run(line, {.environment = here});
        REQUIRE(usual.code >= 0);
        REQUIRE(usual.code < 2);
        REQUIRE_FALSE((usual.out + usual.err).empty());
        for (std::size_t i = 0; i < elsewhere.size(); ++i) {
            INFO("surroundings " << i);
            const auto there = run(line, {.environment = elsewhere[i]});
            CHECK(there.code == usual.code);
            CHECK(there.out == usual.out);
            CHECK(there.err == usual.err);
        }
    }
}

TEST_CASE("reasons are given in the program's own language", "[commands]") {
    const auto gone = run({"check", "gone"}, {.environment = {{"LC_ALL", "de_DE.UTF-8"}}});
    CHECK(gone.err == "benchcard: gone cannot be read: there is no such file\n");
}

} // namespace benchcard::program
