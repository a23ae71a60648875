#include "program.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fmt/format.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

/// What a recipe can have read by `use:`: regular files, and with --confined those of its folder.
namespace benchcard::program {

namespace {

namespace fs = std::filesystem;

const std::string bases = "recipe: Bases\ncomponent: Base\n100 g plain flour\n";

std::string base_from(const std::string& path) {
    return "recipe: A\nuse: " + path + "\ncomponent: B\n100 g Base\n";
}

/// A folder with a recipe's own folder in it, and files inside and outside that.
struct place {
    folder at;
    place() {
        fs::create_directories(at / "own/below");
        at.file("outside.recipe", bases);
        at.file("own/inside.recipe", bases);
        at.file("own/below/inside.recipe", bases);
        fs::create_symlink("inside.recipe", at / "own/link-inside.recipe");
        fs::create_symlink("../outside.recipe", at / "own/link-outside.recipe");
        fs::create_symlink("..", at / "own/up");
        fs::create_symlink(at / "own", at / "own-by-another-name");
    }
    std::string recipe(const std::string& path) const {
        return at.file("own/a.recipe", base_from(path));
    }
};

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

} // namespace

TEST_CASE("what is used is a regular file, and nothing else is opened to be read",
          "[commands][confined]") {
    const folder at;
    REQUIRE(::mkfifo((at / "pipe").c_str(), 0600) == 0);
    fs::create_directory(at / "folder");
    fs::create_symlink("/dev/zero", at / "link-to-device");
    fs::create_symlink("pipe", at / "link-to-pipe");
    at.file("bases.recipe", bases);
    fs::create_symlink("bases.recipe", at / "link-to-file");
    sockaddr_un address{.sun_family = AF_UNIX, .sun_path = {}};
    (at / "socket").copy(address.sun_path, sizeof address.sun_path - 1);
    const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
    REQUIRE(::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0);

    const std::string no_file = "it is a pipe or a device, not a file";
    const std::map<std::string, std::string> reasons = {
        {"pipe", no_file},           {"link-to-pipe", no_file}, {"/dev/zero", no_file},
        {"link-to-device", no_file}, {"/dev/tty", no_file},     {"folder", "it is a folder"},
        {"socket", no_file}};
    for (const auto& [path, reason] : reasons) {
        INFO(path);
        const auto recipe = at.file("a.recipe", base_from(path));
        const auto shown = path.starts_with('/') ? path : at / path;
        const auto r = run({"check", recipe});
        CHECK(r.code == 1);
        CHECK(first_line(r.out) == fmt::format("{}:2:6: error: {} cannot be read: {} "
                                               "[unreadable-file]",
                                               recipe, shown, reason));
    }
    ::close(socket);
    CHECK(run({"check", at.file("a.recipe", base_from("link-to-file"))}).out.find("error") ==
          std::string::npos);
}

TEST_CASE("a confined recipe reads nothing outside its folder, whatever leads there",
          "[commands][confined]") {
    const place p;
    const auto outside = p.at / "outside.recipe";
    for (const std::string path :
         {"../outside.recipe", "below/../../outside.recipe", "link-outside.recipe",
          "up/outside.recipe", "../gone.recipe", "/etc/hostname"}) {
        INFO(path);
        const auto recipe = p.recipe(path);
        const auto r = run({"check", "--confined", recipe});
        CHECK(r.code == 1);
        CHECK_THAT(first_line(r.out), Catch::StartsWith(recipe + ":2:6: error: ") &&
                                          Catch::EndsWith("cannot be read: it lies outside the "
                                                          "folder " +
                                                          (p.at / "own") + " [file-outside]"));
    }
    const auto r = run({"check", "--confined", p.recipe(outside)});
    CHECK_THAT(r.out, Catch::Contains("[file-outside]"));
}

TEST_CASE("a confined recipe reads what is in its folder and below it", "[commands][confined]") {
    const place p;
    for (const std::string path :
         {"inside.recipe", "below/inside.recipe", "below/../inside.recipe", "link-inside.recipe",
          "../own/inside.recipe", "up/own/inside.recipe", "../own-by-another-name/inside.recipe"}) {
        INFO(path);
        const auto recipe = p.recipe(path);
        CHECK(run({"check", "--confined", recipe}).out == run({"check", recipe}).out);
        CHECK(run({"weigh", "--confined", recipe}).out.find("Base") != std::string::npos);
    }
    p.recipe("inside.recipe");
    CHECK(run({"weigh", "--confined", "a.recipe"}, {.folder = p.at / "own"}).code == 0);
    CHECK(run({"weigh", "--confined", p.at / "own-by-another-name/a.recipe"}).code == 0);
    const surroundings from_input{.input = base_from("inside.recipe"), .folder = p.at / "own"};
    CHECK(run({"weigh", "--confined", "-"}, from_input).code == 0);
}

TEST_CASE("every command that reads recipes can be confined", "[commands][confined]") {
    const place p;
    const auto recipe = p.recipe("../outside.recipe");
    const auto pdf = p.at / "a.pdf";
    for (const auto& line : std::vector<std::vector<std::string>>{
             {"check", recipe},
             {"check", "--fix", recipe},
             {"check", "--format=json", recipe},
             {"check", recipe, "--card", "7K4Q-92"},
             {"weigh", recipe},
             {"label", recipe},
             {"print", recipe, "-o", pdf},
             {"print", recipe, recipe, "-o", p.at / "a.html"},
             {"print", "--chart", "--measures=us", recipe, "-o", pdf},
             {"print", recipe, "-o", p.at / "cards/"}}) {
        INFO(line[0] << " " << line[1]);
        const auto is_read = run(line);
        CHECK_THAT(is_read.out + is_read.err, !Catch::Contains("file-outside"));
        auto confined = line;
        confined.insert(confined.begin() + 1, "--confined");
        const auto r = run(confined);
        CHECK(r.code == 1);
        CHECK_THAT(r.out + r.err, Catch::Contains("file-outside"));
        CHECK_THAT(run({line[0], "--help"}).out, Catch::Contains("--confined"));
    }
}

TEST_CASE("recipes of a folder are confined to that folder, and so is one that is a link",
          "[commands][confined]") {
    const place p;
    const auto own = p.at / "own";
    p.at.file("own/below/b.recipe", base_from("../inside.recipe"));
    fs::remove(p.at / "own/link-outside.recipe");
    CHECK(run({"check", "--confined", own}).code == 0);
    CHECK_THAT(run({"check", "--confined", p.at / "own/below/b.recipe"}).out,
               Catch::Contains("it lies outside the folder " + (p.at / "own/below")));
    fs::create_symlink("../outside.recipe", p.at / "own/link-outside.recipe");
    for (const auto& named : {own, own + "/link-outside.recipe"}) {
        const auto r = run({"check", "--confined", named});
        CHECK(r.code == 2);
        CHECK(r.err == "benchcard: " + own +
                           "/link-outside.recipe cannot be read: it lies outside "
                           "the folder " +
                           own + "\n");
    }
}

} // namespace benchcard::program
