#include "program.hpp"

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <thread>

/// The machine failing: what was there stays, nothing half done is left, and it is said.
namespace benchcard::program {

namespace {

namespace fs = std::filesystem;

/// A recipe of so many components, that takes a while to print.
std::string long_recipe(int components) {
    std::string text = "recipe: Long\n";
    for (int i = 1; i <= components; ++i)
        text += "component: Dough " + std::to_string(i) + "\n200 g plain flour\n100 g water\n" +
                "- Mix [flour] with [water]; rest for [1 h].\n";
    return text;
}

bool is_whole(const std::string& pdf) {
    return pdf.starts_with("%PDF-") && pdf.find("%%EOF", pdf.size() - 16) != pdf.npos;
}

} // namespace

TEST_CASE("where there is no room for a PDF the old one stands", "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart);
    const auto output = at.file("a.pdf", "old");
    const auto whole = static_cast<long>(run({"print", recipe, "-o", "-"}).out.size());
    REQUIRE(whole > 4000);
    for (const long size : {0L, 1L, 1000L, whole / 2, whole - 1}) {
        INFO(size << " of " << whole << " bytes");
        surroundings full{.largest_file = size};
        full.err_to = "/dev/null"; // that is a file too, where it is kept
        const auto r = run({"print", recipe, "-o", output}, full);
        CHECK(r.code == 2);
        CHECK(bytes_of(output) == "old");
        CHECK(at.names() == std::vector<std::string>{"a.pdf", "a.recipe"});
    }
    const auto fits = run({"print", recipe, "-o", output}, {.largest_file = whole});
    CHECK(fits.code == 0);
    CHECK(is_whole(bytes_of(output)));
}

TEST_CASE("that there is no room is said", "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart);
    const auto output = at / "a.pdf";
    const auto r = run({"print", recipe, "-o", output}, {.largest_file = 2000});
    CHECK(r.code == 2);
    CHECK(r.err ==
          "benchcard: " + output + " cannot be written: it would be larger than it may be\n");
}

TEST_CASE("whenever a print is ended the old PDF stands, or the new one whole",
          "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("long.recipe", long_recipe(40));
    const auto output = at / "long.pdf";
    const auto begin = std::chrono::steady_clock::now();
    REQUIRE(run({"print", recipe, "-o", output}).code == 0);
    const auto whole_run = std::chrono::steady_clock::now() - begin;
    int ended = 0;
    for (const int signal : {SIGINT, SIGTERM, SIGKILL})
        for (const int percent : {10, 60, 85, 92, 96, 100}) {
            INFO("signal " << signal << " after " << percent << " % of a run");
            at.file("long.pdf", "old");
            background print({"print", recipe, "-o", output}, {});
            std::this_thread::sleep_for(whole_run * percent / 100);
            print.end_with(signal);
            const auto left = bytes_of(output);
            ended += left == "old";
            CHECK((left == "old" || is_whole(left)));
            CHECK(at.names() == std::vector<std::string>{"long.pdf", "long.recipe"});
        }
    CHECK(ended > 0);
}

TEST_CASE("a font that cannot be read is no font that is not there", "[commands][machine]") {
    const folder at;
    const std::string installed = "/usr/share/fonts/truetype/noto/"; // Debian's fonts-noto-core
    fs::create_directory(at / "fonts");
    for (const std::string name : {"NotoSans-Regular.ttf", "NotoSans-Bold.ttf"})
        fs::copy_file(installed + name, at / ("fonts/" + name));
    const auto known =
        at.file("fonts.conf", "<?xml version=\"1.0\"?><fontconfig><dir>" + (at / "fonts") +
                                  "</dir><cachedir>" + (at / "cache") + "</cachedir></fontconfig>");
    const auto recipe = at.file("a.recipe", tart);
    const auto output = at / "a.pdf";
    const surroundings where{.environment = {{"FONTCONFIG_FILE", known}}};
    REQUIRE(run({"print", recipe, "-o", output}, where).code == 0);
    const auto before = bytes_of(output);
    // The list of fonts is kept, and the file is cut off since.
    fs::resize_file(at / "fonts/NotoSans-Bold.ttf", 3000);
    const auto r = run({"print", recipe, "-o", output}, where);
    CHECK(r.code == 2);
    CHECK(r.err.find("NotoSans-Bold.ttf is installed, and cannot be read [unreadable-font]") !=
          r.err.npos);
    CHECK(bytes_of(output) == before);
}

} // namespace benchcard::program
