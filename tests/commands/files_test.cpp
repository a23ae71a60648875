#include "program.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

/// Recipes that cannot be read, or not as they are.
namespace benchcard::program {

namespace {

outcome check_text(const std::string& text) { return run({"check", "-"}, {.input = text}); }

std::string using_file(const std::string& path) {
    return "recipe: Tart\nuse: " + path +
           "\ncomponent: Dough\n200 g plain flour\n- Chill [flour].\n";
}

} // namespace

TEST_CASE("a clean recipe is passed without a word", "[commands]") {
    const auto r = check_text(tart);
    CHECK(r.code == 0);
    CHECK(r.out == "");
    CHECK(r.err == "");
}

TEST_CASE("messages of check go to standard output, with their number", "[commands]") {
    const auto wrong = check_text("recipe: Tart\n0 g plain flour\n");
    CHECK(wrong.code == 1);
    CHECK(wrong.err == "");
    CHECK(wrong.out ==
          "standard input:2:1: error: an amount must be more than nothing [zero-amount]\n"
          "   2 | 0 g plain flour\n"
          "     | ^\n"
          "1 error\n");
    const auto doubtful = check_text(
        "recipe: Tart\n200 g plain flour\n20 g moonflour\n- Mix [flour] and [moonflour].\n");
    CHECK(doubtful.code == 0);
    CHECK_THAT(doubtful.out, Catch::StartsWith("standard input:3:6: hint: "));
    CHECK_THAT(doubtful.out, Catch::EndsWith("\n1 hint\n"));
}

TEST_CASE("odd texts have a message and a place", "[commands]") {
    const auto empty = check_text("");
    CHECK(empty.code == 1);
    CHECK(empty.out == "standard input:1:1: error: there is no recipe in this file [no-recipe]\n"
                       "   1 | \n"
                       "     | ^\n"
                       "     = help: a recipe begins with its name: `recipe: Pear tart`\n"
                       "1 error\n");
    const auto latin = check_text("recipe: X\nmakes: 2 tarts\n200 g pl\xff"
                                  "ain flour\n");
    CHECK(latin.code == 1);
    CHECK_THAT(latin.out, Catch::StartsWith("standard input:3:9: error: this is not UTF-8 text: "
                                            "byte 34 of the file is FF hexadecimal [not-utf8]\n"));
    const auto nul = check_text(std::string("recipe: X\n200 g pl\0ain flour\n", 29));
    CHECK(nul.code == 1);
    CHECK_THAT(nul.out, Catch::StartsWith("standard input:2:9: error: a control character stands "
                                          "here (U+0000) [control-character]\n"));
    const auto wide = check_text("recipe: X\n200 g " + std::string(1'000'000, 'a') + "\n");
    CHECK(wide.code == 1);
    CHECK_THAT(wide.out, Catch::StartsWith("standard input:2:1: error: this line is 1000006 bytes "
                                           "long; at most 10000 can be read [line-too-long]\n"));
    CHECK(wide.out.size() < 1000);
}

TEST_CASE("Windows line ends and a byte order mark change nothing", "[commands]") {
    std::string windows = "\xEF\xBB\xBF";
    for (const auto c : tart) windows += c == '\n' ? "\r\n" : std::string(1, c);
    CHECK(check_text(windows).code == 0);
    CHECK(run({"weigh", "-"}, {.input = windows}).out == run({"weigh", "-"}, {.input = tart}).out);
}

TEST_CASE("a file of more than 1 MB is refused", "[commands]") {
    const auto r = check_text(std::string((1u << 20) + 1, '\n'));
    CHECK(r.code == 2);
    CHECK(
        r.err ==
        "benchcard: standard input cannot be read: it is larger than 1 MB, which is the most that "
        "can be read\n");
}

TEST_CASE("a path that is no readable file is said with the reason, and nothing hangs",
          "[commands]") {
    const folder at;
    at.file("tart.recipe", tart);
    REQUIRE(::mkfifo((at / "pipe.recipe").c_str(), 0600) == 0);
    std::filesystem::create_directory(at / "folder.recipe");
    std::filesystem::create_symlink("loop.recipe", at / "loop.recipe");
    const std::string long_name(300, 'n');
    const std::map<std::string, std::string> reasons = {
        {"missing.recipe", "there is no such file"},
        {"pipe.recipe", "it is a pipe or a device, not a file"},
        {"/dev/zero", "it is a pipe or a device, not a file"},
        {"tart.recipe/x", "its path goes through a file as if it were a folder"},
        {"loop.recipe", "it is a link that leads back to itself"},
        {long_name, "its name is too long"},
    };
    for (const auto& [path, reason] : reasons) {
        const auto r = run({"check", path}, {.folder = at.path()});
        CHECK(r.code == 2);
        CHECK(r.out == "");
        CHECK(r.err == "benchcard: " + path + " cannot be read: " + reason + "\n");
        at.file("user.recipe", using_file(path));
        const auto used = run({"check", "user.recipe"}, {.folder = at.path()});
        CHECK(used.code == 1);
        CHECK(used.err == "");
        CHECK_THAT(used.out,
                   Catch::StartsWith("user.recipe:2:6: error: " + path +
                                     " cannot be read: " + reason + " [unreadable-file]\n"));
    }
}

TEST_CASE("a folder has no place where a file is used", "[commands]") {
    const folder at;
    std::filesystem::create_directory(at / "folder.recipe");
    at.file("user.recipe", using_file("folder.recipe"));
    const auto used = run({"check", "user.recipe"}, {.folder = at.path()});
    CHECK(used.code == 1);
    CHECK_THAT(used.out, Catch::StartsWith("user.recipe:2:6: error: folder.recipe cannot be read: "
                                           "it is a folder [unreadable-file]\n"));
    const auto weighed = run({"weigh", "folder.recipe"}, {.folder = at.path()});
    CHECK(weighed.code == 2);
    CHECK(weighed.err == "benchcard: folder.recipe cannot be read: it is a folder\n");
}

TEST_CASE("a file whose permissions forbid it is not read", "[commands]") {
    const folder at;
    at.file("tart.recipe", tart);
    ::chmod((at / "tart.recipe").c_str(), 0);
    if (::access((at / "tart.recipe").c_str(), R_OK) == 0) return; // a superuser reads everything
    const auto r = run({"check", "tart.recipe"}, {.folder = at.path()});
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: tart.recipe cannot be read: its permissions do not allow it\n");
}

TEST_CASE("files that use each other in a circle are shown the circle", "[commands]") {
    const folder at;
    at.file("a.recipe", using_file("b.recipe"));
    at.file("b.recipe", using_file("a.recipe"));
    at.file("self.recipe", using_file("self.recipe"));
    const auto two = run({"check", "a.recipe"}, {.folder = at.path()});
    CHECK(two.code == 1);
    CHECK_THAT(two.out,
               Catch::Contains(
                   "b.recipe:2:6: error: these files use each other in a circle [circular-use]\n"));
    CHECK_THAT(two.out, Catch::Contains("     = note: a.recipe uses b.recipe uses a.recipe\n"));
    const auto one = run({"check", "self.recipe"}, {.folder = at.path()});
    CHECK(one.code == 1);
    CHECK_THAT(one.out, Catch::Contains("     = note: self.recipe uses self.recipe\n"));
}

TEST_CASE("a used file's path begins at the file that names it, or at the current folder",
          "[commands]") {
    const folder at;
    std::filesystem::create_directories(at / "house/shop");
    at.file("house/base.recipe",
            "recipe: Base\ncomponent: Cream\n100 g double cream\n- Whip [cream].\n");
    const std::string user =
        "recipe: Tart\nuse: base.recipe\ncomponent: Filling\n100 g Cream\n- Spread [Cream].\n";
    at.file("house/tart.recipe", user);
    CHECK(run({"check", "house/tart.recipe"}, {.folder = at.path()}).out == "");
    CHECK(run({"check", "-"}, {.input = user, .folder = at / "house"}).out == "");
    CHECK(run({"check", "-"}, {.input = user, .folder = at.path()}).code == 1);
    CHECK(run({"check", "../tart.recipe"}, {.folder = at / "house/shop"}).out == "");
}

TEST_CASE("a used file named - is a file", "[commands]") {
    const folder at;
    at.file("a.recipe", using_file("-"));
    const auto r = run({"check", "a.recipe"}, {.input = tart, .folder = at.path()});
    CHECK(r.code == 1);
    CHECK_THAT(
        r.out,
        Catch::StartsWith(
            "a.recipe:2:6: error: - cannot be read: there is no such file [unreadable-file]\n"));
}

TEST_CASE("one bad file of several leaves the others' messages, and the gravest code",
          "[commands]") {
    const folder at;
    at.file("bad.recipe", "recipe: Bad\n0 g salt\n");
    at.file("good.recipe", tart);
    const auto r =
        run({"check", "bad.recipe", "gone.recipe", "good.recipe"}, {.folder = at.path()});
    CHECK(r.code == 2);
    CHECK(r.err == "benchcard: gone.recipe cannot be read: there is no such file\n");
    CHECK_THAT(r.out, Catch::StartsWith("bad.recipe:2:1: error: "));
    CHECK(run({"check", "good.recipe", "bad.recipe"}, {.folder = at.path()}).code == 1);
}

} // namespace benchcard::program
