#include "program.hpp"
#include "shell.hpp"

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

/// The settings of fontconfig for a list of fonts of the test's own: one that is read with little
/// memory is kept short, and must not be the system's.
[[maybe_unused]] std::string own_fonts(const folder& at) {
    return at.file("fonts.conf",
                   "<?xml version=\"1.0\"?><fontconfig><dir>/usr/share/fonts/truetype/noto</dir>"
                   "<cachedir>" +
                       (at / "cache") + "</cachedir></fontconfig>");
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

TEST_CASE("a folder that takes no files is said, and the old PDF in it stands",
          "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart);
    fs::permissions(at.path(), fs::perms(0711)); // the others may go through it
    fs::create_directory(at / "out");
    const auto output = at.file("out/a.pdf", "old");
    fs::permissions(at / "out", fs::perms(0555));
    const auto r = run({"print", recipe, "-o", output}, {.as_nobody = true});
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: " + output + " cannot be written: its folder takes no new files\n");
    CHECK(bytes_of(output) == "old");
    const auto label = run({"label", recipe, "-o", at / "out/b.pdf"}, {.as_nobody = true});
    CHECK(label.code == 2);
    const auto mended = at.file("out/b.recipe", "recipe: B\n100 g salt\n1. Mix [salt].\n");
    const auto fix = run({"check", "--fix", mended}, {.as_nobody = true});
    CHECK(fix.code == 2);
    CHECK(fix.err.find("cannot be written: its folder takes no new files") != fix.err.npos);
    CHECK(bytes_of(mended).find("1. Mix") != std::string::npos);
    CHECK(fs::exists(at / "out/a.pdf"));
    CHECK(std::distance(fs::directory_iterator(at / "out"), {}) == 2);
    fs::permissions(at / "out", fs::perms(0755));
}

TEST_CASE("a folder that is a place of the system's own takes no PDF", "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart);
    for (const std::string output : {"/proc/a.pdf", "/sys/a.pdf"}) {
        const auto r = run({"print", recipe, "-o", output});
        CHECK(r.code == 2);
        CHECK(r.err.starts_with("benchcard: " + output + " cannot be written: "));
    }
}

TEST_CASE("a folder that vanishes while a card is printed is said", "[commands][machine]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart);
    fs::create_directory(at / "out");
    // The program reads the recipe only when the folder is gone.
    int code = 0;
    const auto said = said_by("cd '" + at.path() + "' && { rmdir out; cat a.recipe; } | '" +
                                  BENCHCARD_PROGRAM + "' print - -o out/a.pdf 2>&1",
                              &code);
    CHECK(code == 2);
    CHECK(said == "benchcard: out/a.pdf cannot be written: there is no folder out\n");
    CHECK(at.names() == std::vector<std::string>{"a.recipe"});
}

TEST_CASE("with too little memory the old PDF stands, and it is said", "[commands][machine]") {
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
    WARN("not run: a sanitizer needs more addresses than can be taken away");
#else
    const folder at;
    const auto fonts = own_fonts(at);
    const auto recipe = at.file("long.recipe", long_recipe(40));
    const auto output = at.file("long.pdf", "old");
    surroundings where{.environment = {{"FONTCONFIG_FILE", fonts}}};
    REQUIRE(run({"print", recipe, "-o", output}, where).code == 0);
    int refused = 0, printed = 0;
    for (long megabytes = 20; printed < 2 && megabytes < 2000; megabytes += 2) {
        INFO(megabytes << " MB");
        at.file("long.pdf", "old");
        fs::remove_all(at / "cache");
        where.most_memory = megabytes << 20;
        // Without room for its libraries there is no program, and what they do is theirs.
        const bool can_start = run({"--version"}, where).code == 0;
        const auto r = run({"print", recipe, "-o", output}, where);
        const auto left = bytes_of(output);
        INFO(r.err);
        if (r.code == 0) {
            ++printed;
            CHECK(is_whole(left));
        } else {
            CHECK(left == "old");
            if (can_start) {
                ++refused;
                CHECK(r.code == 2);
                CHECK_FALSE(r.err.empty());
            }
        }
        fs::remove_all(at / "cache");
        CHECK(at.names() == std::vector<std::string>{"fonts.conf", "long.pdf", "long.recipe"});
    }
    CHECK(refused > 0);
    CHECK(printed > 0);
#endif
}

} // namespace benchcard::program
