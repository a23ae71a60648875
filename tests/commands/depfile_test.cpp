#include "program.hpp"
#include "shell.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

/// What an output was made from, for make and ninja.
namespace benchcard::program {

namespace {

namespace fs = std::filesystem;

const std::string cream = "recipe: Cream\ncomponent: Cream\n100 g double cream\n- Whip [cream].\n";

std::string tart_using(const std::string& path) {
    return "recipe: Tart\nuse: " + path + "\ncomponent: Filling\n100 g Cream\n- Spread [Cream].\n";
}

} // namespace

TEST_CASE("a depfile names the output, the recipe, what it uses and the style", "[commands]") {
    const folder at;
    fs::create_directory(at / "our house");
    at.file("our house/cream #1.recipe", cream), at.file("at $2.recipe", cream);
    at.file("tart.recipe", "recipe: Tart\nuse: our house/cream #1.recipe\n");
    at.file("own.style", "margin: 9 mm\n");
    at.file("tart.recipe", tart_using("our house/cream.recipe"));
    at.file("our house/cream.recipe", cream);
    const auto print = [&](std::vector<std::string> more) {
        std::vector<std::string> line = {"print", "--depfile", "d"};
        line.insert(line.end(), more.begin(), more.end());
        const auto r = run(line, {.folder = at.path()});
        CHECK(r.err == "");
        CHECK(r.code == 0);
        return bytes_of(at / "d");
    };
    CHECK(print({"tart.recipe", "-o", "my cards.pdf"}) ==
          "my\\ cards.pdf: tart.recipe our\\ house/cream.recipe\n");
    CHECK(print({"tart.recipe", "our house/cream.recipe", "-o", "a.html"}) ==
          "a.html: tart.recipe our\\ house/cream.recipe\n");
    CHECK(print({"at $2.recipe", "our house/cream #1.recipe", "-o", "a.pdf", "--style",
                 "./own.style"}) ==
          "a.pdf: at\\ $$2.recipe ./own.style our\\ house/cream\\ \\#1.recipe\n");
    fs::remove(at / "at $2.recipe"), fs::remove(at / "our house/cream #1.recipe");
    CHECK(print({".", "-o", "book.pdf"}) == "book.pdf: our\\ house/cream.recipe tart.recipe\n");
    CHECK(print({".", "-o", "cards/"}) == "cards/our\\ house/cream.pdf: our\\ house/cream.recipe\n"
                                          "cards/tart.pdf: tart.recipe our\\ house/cream.recipe\n");
    CHECK(print({"--chart", "tart.recipe", "-o", "chart.pdf", "--measures", "us"}) ==
          "chart.pdf: tart.recipe our\\ house/cream.recipe\n");

    fs::remove(at / "d");
    at.file("bad.recipe", "recipe: Bad\n0 g salt\n");
    CHECK(
        run({"print", "bad.recipe", "-o", "a.pdf", "--depfile", "d"}, {.folder = at.path()}).code ==
        1);
    CHECK_FALSE(fs::exists(at / "d"));
    const auto over = run({"print", "tart.recipe", "-o", "a.pdf", "--depfile", "tart.recipe"},
                          {.folder = at.path()});
    CHECK(over.code == 2);
    CHECK(bytes_of(at / "tart.recipe") == tart_using("our house/cream.recipe"));
}

TEST_CASE("ninja prints the examples, and again only what has changed", "[commands]") {
    const folder at;
    const auto examples = at / "examples";
    fs::create_directory(examples);
    for (const auto* name : {"build.ninja", "house"})
        fs::copy(fs::path(BENCHCARD_SOURCE_DIR) / "examples" / name, fs::path(examples) / name,
                 fs::copy_options::recursive);
    std::vector<std::string> all;
    for (const auto& e : fs::directory_iterator(fs::path(BENCHCARD_SOURCE_DIR) / "examples"))
        if (e.path().extension() == ".recipe") {
            fs::copy(e.path(), fs::path(examples) / e.path().filename());
            all.push_back("cards/" + e.path().stem().string() + ".pdf");
        }
    all.push_back("cards/house/pastry.pdf");
    std::sort(all.begin(), all.end());

    const auto printed = [&] {
        int code = -1;
        const auto said =
            said_by("BENCHCARD='" BENCHCARD_PROGRAM "' ninja -C '" + examples + "' 2>&1", &code);
        INFO(said);
        CHECK(code == 0);
        std::vector<std::string> names;
        for (auto p = said.find("printing "); p != said.npos; p = said.find("printing ", p + 1))
            names.push_back(said.substr(p + 9, said.find('\n', p) - p - 9));
        std::sort(names.begin(), names.end());
        return names;
    };
    const auto add_note = [&](const std::string& file) {
        const auto path = examples + "/" + file;
        const auto text = bytes_of(path);
        at.file("examples/" + file, text + "\n# seen\n");
    };
    CHECK(printed() == all);
    CHECK(printed().empty());
    add_note("red-lentil-soup.recipe");
    CHECK(printed() == std::vector<std::string>{"cards/red-lentil-soup.pdf"});
    add_note("house/pastry.recipe");
    CHECK(printed() == std::vector<std::string>{"cards/chocolate-and-orange-glasses.pdf",
                                                "cards/chocolate-eclairs.pdf",
                                                "cards/currant-buns.pdf", "cards/house/pastry.pdf",
                                                "cards/raspberry-tartlets.pdf"});
    CHECK(printed().empty());
}

} // namespace benchcard::program
