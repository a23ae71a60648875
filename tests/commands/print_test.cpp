#include "program.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <sys/stat.h>

/// The PDF: whole or not at all, and the same each time.
namespace benchcard::program {

namespace {

std::string example(const std::string& name) {
    return std::string(BENCHCARD_SOURCE_DIR) + "/examples/" + name + ".recipe";
}

/// The cards a PDF says it has.
std::size_t pages_of(const std::string& pdf) {
    const auto at = pdf.find("/Count ");
    return at == pdf.npos ? 0 : std::stoul(pdf.substr(at + 7));
}

} // namespace

TEST_CASE("a PDF is the same bytes to a file and to standard output, and each time", "[commands]") {
    const folder at;
    const auto recipe = example("currant-buns");
    const auto to_file = run({"print", recipe, "-o", at / "a.pdf"});
    CHECK(to_file.code == 0);
    CHECK(to_file.out == "");
    const auto pdf = bytes_of(at / "a.pdf");
    CHECK(pdf.starts_with("%PDF-"));
    CHECK(pdf == run({"print", recipe, "-o", "-"}).out);
    REQUIRE(run({"print", recipe, "-o", at / "a.pdf"}).code == 0);
    CHECK(pdf == bytes_of(at / "a.pdf"));
    CHECK(at.names() == std::vector<std::string>{"a.pdf"});
    CHECK(run({"print", recipe, "-o", "-", "--paper", "a6", "--scale", "2"}).out != pdf);
}

// The PDF library looks for the outline of a blank behind the end of a font where the blank is the
// font's last character.
TEST_CASE("a recipe of three lines has a card", "[commands]") {
    for (const std::string recipe :
         {"recipe: X\n200 g plain flour\n", "recipe: Xy\n200 g plain flour\n- Mix [flour].\n"}) {
        const auto r = run({"print", "-", "-o", "-"}, {.input = recipe});
        INFO(r.err);
        CHECK(r.code == 0);
        CHECK(r.out.starts_with("%PDF-"));
    }
}

TEST_CASE("without the font of the cards they are printed in another, and a warning says so",
          "[commands]") {
    const folder at;
    const auto none =
        at.file("none.conf", "<?xml version=\"1.0\"?><fontconfig></fontconfig>"); // no font at all
    const auto r = run({"print", example("currant-buns"), "-o", at / "buns.pdf"},
                       {.environment = {{"FONTCONFIG_FILE", none}}});
    CHECK(r.code == 0);
    CHECK(r.err.find("benchcard: the font Noto Sans is not installed, so these cards are set in "
                     "Helvetica") != r.err.npos);
    CHECK(r.err.find("install the Debian package fonts-noto-core") != r.err.npos);
    const auto pdf = bytes_of(at / "buns.pdf");
    CHECK(pdf.find("/BaseFont /Helvetica") != pdf.npos);
    CHECK(pdf.find("/FontFile") == pdf.npos);
}

TEST_CASE("a sign that the text font lacks comes from another, and no other card has that",
          "[commands]") {
    const folder at;
    const auto font_of = [&](const std::string& sign) {
        const auto r =
            run({"print", "-", "-o", at / "a.pdf"},
                {.input = "recipe: X\n200 g plain flour\n- Steam [flour]" + sign + ".\n"});
        CHECK(r.err == "");
        CHECK(r.code == 0);
        const auto pdf = bytes_of(at / "a.pdf");
        CHECK(pdf.find("+NotoSans-Regular") != pdf.npos);
        return pdf.find("+NotoSansSymbols2-Regular") != pdf.npos;
    };
    CHECK(font_of(" \u2668"));
    CHECK_FALSE(font_of(""));
}

TEST_CASE("a card too narrow for its type is refused, with both widths", "[commands]") {
    const folder at;
    // 74 mm less 30 mm and 12 mm.
    const auto style = at.file("narrow.style", "paper: a7\nmargin: 12 mm\nhole: left 30 mm\n");
    const auto r = run({"print", example("currant-buns"), "-o", at / "a.pdf", "--style", style});
    CHECK(r.code == 2);
    CHECK(r.err ==
          "benchcard: between its margins a card of a7 is 32 mm wide, and the type of this "
          "style needs 41 mm\n"
          "     = help: take larger paper, a narrower margin or hole, or smaller amounts\n");
    CHECK(at.names() == std::vector<std::string>{"narrow.style"});
}

TEST_CASE("several recipes go to one PDF", "[commands]") {
    const folder at;
    const auto first = at.file("first.recipe", tart);
    const auto second =
        at.file("second.recipe", tart + "component: Syrup\n100 g caster sugar\n- Boil [sugar].\n");
    const auto pages = [&](std::vector<std::string> files) {
        files.insert(files.begin(), "print");
        files.insert(files.end(), {"-o", "-"});
        const auto r = run(files);
        CHECK(r.code == 0);
        return pages_of(r.out);
    };
    const auto of_first = pages({first}), of_second = pages({second});
    CHECK(of_first == 1);
    CHECK(of_second == 2);
    CHECK(pages({first, second}) == of_first + of_second);
    CHECK(pages({second, first, "./" + std::filesystem::relative(first).string()}) == 4);
}

TEST_CASE("the name of the output says whether it is a page for a screen", "[commands]") {
    const folder at;
    const auto recipe = at.file("a.recipe", tart + "component: A < B & \"C\"\n10 g caster sugar\n");
    for (const auto* name : {"a.html", "a.htm"}) {
        const auto r = run({"print", recipe, "-o", at / name, "--paper", "a6"});
        CHECK(r.code == 0);
        CHECK(r.out == "");
        const auto page = bytes_of(at / name);
        CHECK(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
        CHECK(page.find("<title>Plain tart</title>") != page.npos);
        CHECK(page.find("A &lt; B &amp; &quot;C&quot;</h2>") != page.npos);
        CHECK(page.find("@page { size: 105mm 148mm;") != page.npos);
        REQUIRE(run({"print", recipe, "-o", at / name, "--paper", "a6"}).code == 0);
        CHECK(bytes_of(at / name) == page);
    }
    CHECK(run({"print", recipe, "-o", at / "html"}).code == 0);
    CHECK(bytes_of(at / "html").starts_with("%PDF-"));
    CHECK(run({"print", "--chart", recipe, "-o", at / "chart.html", "--measures", "us"}).code == 0);
    CHECK(bytes_of(at / "chart.html").find("class=\"chart\" aria") != std::string::npos);
    // As with a PDF, errors leave the old page.
    const auto bad = at.file("bad.recipe", "recipe: Bad\n0 g salt\n");
    const auto before = bytes_of(at / "a.html");
    CHECK(run({"print", bad, "-o", at / "a.html"}).code == 1);
    CHECK(bytes_of(at / "a.html") == before);
}

TEST_CASE("a recipe with errors prints nothing and keeps the old PDF", "[commands]") {
    const folder at;
    const auto good = at.file("good.recipe", tart);
    const auto pdf = at.file("a.pdf", "what was here before");
    const auto bad = at.file("bad.recipe", "recipe: Bad\n0 g salt\n");
    const auto worse = at.file("worse.recipe", "recipe: Worse\n0 g sugar\n");
    const auto r = run({"print", bad, good, worse, "-o", pdf});
    CHECK(r.code == 1);
    CHECK(r.out == "");
    CHECK_THAT(r.err, Catch::Contains(bad + ":2:1: error: ") &&
                          Catch::Contains(worse + ":2:1: error: ") &&
                          Catch::EndsWith("\nbenchcard: nothing was printed\n"));
    CHECK(bytes_of(pdf) == "what was here before");
    CHECK(run({"print", good, at / "gone.recipe", "-o", pdf}).code == 2);
    CHECK(run({"print", good, "-o", pdf, "--make", "5 cakes"}).code == 2);
    CHECK(run({"print", bad, "-o", at / "new.pdf"}).code == 1);
    CHECK(run({"print", bad, "-o", "-"}).out == "");
    CHECK(bytes_of(pdf) == "what was here before");
    CHECK(at.names() ==
          std::vector<std::string>{"a.pdf", "bad.recipe", "good.recipe", "worse.recipe"});
}

TEST_CASE("an output that cannot be written is said with the reason, and leaves nothing",
          "[commands]") {
    const folder at;
    const auto good = at.file("good.recipe", tart);
    REQUIRE(::mkfifo((at / "pipe.pdf").c_str(), 0600) == 0);
    const std::string long_name(300, 'n');
    const std::map<std::string, std::string> reasons = {
        {"missing/a.pdf", "there is no folder missing"},
        {"good.recipe/a.pdf", "its path goes through a file as if it were a folder"},
        {"/proc/a.pdf", "its folder takes no new files"},
        {"/dev/full", "there is no room left"},
        {"pipe.pdf", "it is a pipe that nobody reads"},
        {long_name, "its name is too long"},
    };
    for (const auto& [path, reason] : reasons) {
        const auto r = run({"print", "good.recipe", "-o", path}, {.folder = at.path()});
        CHECK(r.code == 2);
        CHECK(r.err == "benchcard: " + path + " cannot be written: " + reason + "\n");
    }
    CHECK(at.names() == std::vector<std::string>{"good.recipe", "pipe.pdf"});
    CHECK(bytes_of(good) == tart);
}

TEST_CASE("a PDF does not take a recipe's place", "[commands]") {
    const folder at;
    const auto recipe = at.file("good.recipe", tart), text = at.file("good.txt", tart);
    const auto named = run({"print", recipe, "-o", at / "other.recipe"});
    CHECK(named.code == 2);
    CHECK(named.err ==
          "benchcard: -o " + (at / "other.recipe") +
              " gives the PDF the name of a recipe\n     = help: for example: -o cards.pdf\n");
    const auto same = run({"print", "good.txt", "-o", "./good.txt"}, {.folder = at.path()});
    CHECK(same.code == 2);
    CHECK(same.err == "benchcard: -o ./good.txt would write the PDF over the recipe\n     = help: "
                      "for example: -o cards.pdf\n");
    CHECK(run({"print", recipe, "-o", ""}).err ==
          "benchcard: the name of the PDF is empty\n     = help: for example: -o cards.pdf\n");
    CHECK(bytes_of(text) == tart);
}

TEST_CASE("a new PDF has the rights of the old one, and a link stays a link", "[commands]") {
    const folder at;
    const auto recipe = example("currant-buns");
    const auto old = at.file("real.pdf", "old");
    ::chmod(old.c_str(), 0640);
    std::filesystem::create_symlink("real.pdf", at / "link.pdf");
    REQUIRE(run({"print", recipe, "-o", at / "link.pdf"}).code == 0);
    CHECK(std::filesystem::is_symlink(at / "link.pdf"));
    CHECK(bytes_of(old).starts_with("%PDF-"));
    struct stat about = {};
    REQUIRE(::stat(old.c_str(), &about) == 0);
    CHECK((about.st_mode & 07777) == 0640);
}

TEST_CASE("the longest name a file can have is a name for a PDF", "[commands]") {
    const folder at;
    const auto name = std::string(251, 'n') + ".pdf";
    CHECK(run({"print", example("currant-buns"), "-o", at / name}).code == 0);
    CHECK(at.names() == std::vector<std::string>{name});
}

TEST_CASE("only the cards that are named are printed", "[commands]") {
    const auto recipe = example("pear-and-almond-tart");
    const auto cards = [&](std::vector<std::string> names) {
        std::vector<std::string> line = {"print", recipe, "-o", "-"};
        for (const auto& name : names) line.insert(line.end(), {"--card", name});
        const auto r = run(line);
        INFO(r.err);
        CHECK(r.code == 0);
        return pages_of(r.out);
    };
    CHECK(cards({"Almond cream"}) == 1);
    CHECK(cards({"almond CREAM"}) == 1);
    CHECK(cards({"Almond cream", "Sweet pastry"}) == 2);
    const auto unknown = run({"print", recipe, "-o", "-", "--card", "almnd cream"});
    CHECK(unknown.code == 2);
    CHECK(unknown.out == "");
    CHECK_THAT(
        unknown.err,
        Catch::EndsWith("benchcard: there is no card `almnd cream`; there are: Sweet pastry, "
                        "Almond cream, Tarts\n     = help: the nearest is `Almond cream`\n"
                        "benchcard: nothing was printed\n"));
    // Of a style that prints whole recipes too.
    CHECK(pages_of(
              run({"print", recipe, "-o", "-", "--style", "hand", "--card", "Almond cream"}).out) ==
          1);
}

TEST_CASE("a style of one's own is a file", "[commands]") {
    const folder at;
    const auto recipe = at.file("good.recipe", tart);
    const auto plain = run({"print", recipe, "-o", "-"}).out;
    at.file("my.style", bytes_of(BENCHCARD_SOURCE_DIR "/styles/station.style"));
    const auto copied = run({"print", recipe, "-o", "-", "--style", at / "my.style"});
    CHECK(copied.code == 0);
    CHECK(copied.out == plain);
    at.file("my.style", "paper: a4\naccent: 20 60 140\n");
    const auto own =
        run({"print", "good.recipe", "-o", "-", "--style", "my.style"}, {.folder = at.path()});
    CHECK(own.code == 0);
    CHECK(own.out.starts_with("%PDF-"));
    CHECK(own.out != plain);

    const auto bad = at.file("bad.style", "paper: a4\nmargn: 8 mm\n");
    const auto wrong = run({"print", recipe, "-o", at / "a.pdf", "--style", bad});
    CHECK(wrong.code == 2);
    CHECK(wrong.err == bad + ":2:1: error: a style has no setting “margn” [style-setting]\n"
                             "   2 | margn: 8 mm\n     | ^^^^^\n"
                             "     = help: did you mean “margin”?\n1 error\n");
    const auto gone = run({"print", recipe, "-o", at / "a.pdf", "--style", at / "gone.style"});
    CHECK(gone.code == 2);
    CHECK(gone.err == "benchcard: the style " + (at / "gone.style") +
                          " cannot be read: there is no such file\n");
    CHECK(at.names() == std::vector<std::string>{"bad.style", "good.recipe", "my.style"});
}

TEST_CASE("a character that no font has is shown in the recipe", "[commands]") {
    const folder at;
    const auto recipe =
        at.file("cake.recipe", "recipe: Cake\n200 g plain flour\n- Bake the 🍰 of [flour].\n");
    const auto r = run({"print", recipe, "-o", at / "a.pdf"});
    CHECK(r.code == 1);
    CHECK_THAT(r.err, Catch::Contains(recipe + ":3:12: error: no font has the character 🍰 "
                                               "(shortcake, U+1F370) [missing-character]\n"));
    CHECK(at.names() == std::vector<std::string>{"cake.recipe"});
}

TEST_CASE("a PDF has a date only where one is asked for", "[commands]") {
    const folder at;
    const auto recipe = at.file("good.recipe", tart);
    const auto made = [&](std::vector<std::string> more, const std::string& epoch) {
        std::vector<std::string> line = {"print", recipe, "-o", "-"};
        line.insert(line.end(), more.begin(), more.end());
        surroundings where;
        if (!epoch.empty()) where.environment["SOURCE_DATE_EPOCH"] = epoch;
        return run(line, where);
    };
    CHECK(made({}, "").out.find("CreationDate") == std::string::npos);
    CHECK(made({"--dated"}, "").out.find("/CreationDate (D:20") != std::string::npos);
    const auto fixed = made({}, "1700000000").out;
    CHECK(fixed.find("/CreationDate (D:20231114221320+00'00')") != std::string::npos);
    CHECK(fixed == made({"--dated"}, "1700000000").out);
    const auto wrong = made({}, "yesterday");
    CHECK(wrong.code == 2);
    CHECK(wrong.err ==
          "benchcard: SOURCE_DATE_EPOCH is `yesterday`, and not a number of seconds\n");
}

TEST_CASE("sheets hold several cards, their copies and their backs", "[commands]") {
    const auto recipe = example("pear-and-almond-tart");
    const auto sheets = [&](std::vector<std::string> more) {
        std::vector<std::string> line = {"print",   recipe,  "-o",     "-",
                                         "--style", "sheet", "--card", "Almond cream"};
        line.insert(line.end(), more.begin(), more.end());
        const auto r = run(line);
        CHECK(r.err.find("benchcard: ") == r.err.npos);
        CHECK(r.code == 0);
        return pages_of(r.out);
    };
    CHECK(sheets({}) == 1);
    CHECK(sheets({"--copies-per-sheet", "4"}) == 1);
    CHECK(sheets({"--two-sided", "long"}) == 2);
    CHECK(sheets({"--card", "Sweet pastry", "--copies-per-sheet", "3"}) >= 2);
    const auto said = [&](std::vector<std::string> more) {
        std::vector<std::string> line = {"print", recipe, "-o", "-"};
        line.insert(line.end(), more.begin(), more.end());
        const auto r = run(line);
        CHECK(r.code == 2);
        CHECK(r.out == "");
        return r.err;
    };
    CHECK(said({"--style", "sheet", "--copies-per-sheet", "5"}) ==
          "benchcard: a sheet of a4 holds 4 cards, and 5 copies of each are asked for\n");
    CHECK(said({"--copies-per-sheet", "2"}) ==
          "benchcard: this style puts one card on a sheet, so there are no copies of it on one\n"
          "     = help: for example: --style sheet\n");
    CHECK(
        said({"--two-sided", "left"}) ==
        "benchcard: --two-sided takes the edge over which the sheet is turned, long or short, and "
        "not `left`\n     = help: for example: --two-sided long\n");
    CHECK_THAT(said({"--paper", "a5 sideways"}),
               Catch::Contains("there is no paper `a5 sideways`; there are: a4, a5"));
}

TEST_CASE("cards printed on both sides begin on a front", "[commands]") {
    const auto recipe = example("pear-and-almond-tart");
    const auto one = pages_of(run({"print", recipe, "-o", "-"}).out);
    const auto two = pages_of(run({"print", recipe, "-o", "-", "--two-sided", "short"}).out);
    CHECK(one == 4);
    CHECK(two == 6); // one of the three runs on to its own back
}

} // namespace benchcard::program
