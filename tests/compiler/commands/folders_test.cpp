#include "compiler/commands/folders.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace benchcard;
namespace fs = std::filesystem;

namespace {

/// A folder with empty recipes in it, gone after the test.
class tree {
  public:
    explicit tree(const std::vector<std::string>& files)
        : at_(fs::temp_directory_path() / ("benchcard-folders." + std::to_string(::getpid()))) {
        for (const auto& file : files) {
            fs::create_directories((at_ / file).parent_path());
            std::ofstream(at_ / file).put('\n');
        }
    }
    ~tree() { fs::remove_all(at_); }
    tree(const tree&) = delete;
    tree& operator=(const tree&) = delete;

    std::string path() const { return at_.string(); }

  private:
    fs::path at_;
};

} // namespace

TEST_CASE("recipes in folders come in the order of the paths of C++", "[commands]") {
    const tree at({"a/x.recipe", "a/b.c/y.recipe", "a b/w.recipe", "a-b/z.recipe", "n.recipe",
                   "a.recipe", "a/é.recipe", "a/note.txt", ".h/hidden.recipe", "B/a.recipe"});
    const auto found = commands::recipes_below(at.path()).paths;
    REQUIRE(found.size() == 8);
    std::vector<fs::path> sorted(found.begin(), found.end());
    std::sort(sorted.begin(), sorted.end());
    CHECK(std::equal(found.begin(), found.end(), sorted.begin(),
                     [](const auto& a, const auto& b) { return a == b.string(); }));
}

TEST_CASE("a recipe in a folder is named from there, however the folder is named", "[commands]") {
    const tree at({"a/x.recipe", "y.recipe"});
    for (const std::string name : {"", "/", "/a/..", "/./"}) {
        const auto all = commands::recipes_named({at.path() + name}).all;
        REQUIRE(all.size() == 2);
        CHECK(all[0].path == at.path() + "/a/x.recipe");
        CHECK(all[0].within == "a/x.recipe");
        CHECK(all[1].within == "y.recipe");
    }
    const auto before = fs::current_path();
    fs::current_path(at.path());
    for (const std::string name : {".", "./", "a/.."}) {
        const auto all = commands::recipes_named({name}).all;
        REQUIRE(all.size() == 2);
        CHECK(all[0].path == "a/x.recipe");
        CHECK(all[0].within == "a/x.recipe");
    }
    fs::current_path(before);
}

TEST_CASE("no more entries are looked through than a folder may have", "[commands]") {
    const tree at({"1.recipe", "2.recipe", "3.recipe", "4.recipe"});
    CHECK(commands::recipes_below(at.path(), 4).failures.empty());
    const auto found = commands::recipes_below(at.path(), 3);
    CHECK(found.failures ==
          std::vector<std::string>{at.path() + " holds more than 3 files and folders, and the rest "
                                               "was not looked at"});
}
