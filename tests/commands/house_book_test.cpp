#include "program.hpp"
#include "shell.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

/// Folders of recipes: checked, printed as a book, and printed to a PDF each.
namespace benchcard::program {

namespace {

namespace fs = std::filesystem;

const std::string ingredients = "recipe: Our ingredients\n"
                                "ingredient: moon flour\n"
                                "also: moonflour\n"
                                "contains: none\n"
                                "source: weighed here\n";
const std::string bad = "recipe: Bad\n0 g salt\n";

std::string named(const std::string& name) {
    auto text = tart;
    return text.replace(text.find("Plain tart"), 10, name);
}

/// Five recipes in two folders, one of them wrong, one in a hidden folder; and a list that two use.
class house : public folder {
  public:
    house() {
        for (const auto* below : {"a", "b", ".old"}) fs::create_directory(*this / below);
        const std::string uses = "\nuse: ../ours.recipe\nmakes: 1 kg\n";
        file("b/one.recipe", named("Tart one"));
        file("b/two.recipe", "recipe: Porridge two" + uses + "1 kg moon flour\n- Mix [flour].\n");
        file("a/three.recipe",
             "recipe: Porridge three" + uses + "1 kg moonflour\n- Mix [flour].\n");
        file("a/wrong.recipe", bad);
        file("a-note.txt", "no recipe");
        file(".old/bad.recipe", bad);
        file("ours.recipe", ingredients);
    }
    outcome run_here(std::vector<std::string> arguments) const {
        return run(arguments, {.folder = path()});
    }
};

std::size_t count(const std::string& what, const std::string& in) {
    std::size_t found = 0;
    for (auto at = in.find(what); at != in.npos; at = in.find(what, at + 1)) ++found;
    return found;
}

} // namespace

TEST_CASE("check reads all recipes below a folder, in the order of their paths", "[commands]") {
    const house at;
    const auto r = at.run_here({"check", "."});
    CHECK(r.code == 1);
    CHECK(r.err == "");
    CHECK_THAT(r.out, Catch::StartsWith("a/wrong.recipe:2:1: error: ") &&
                          Catch::EndsWith("\n1 error\n") && !Catch::Contains("old"));
    at.file("b/wrong.recipe", bad);
    const auto two = at.run_here({"check", ".", "--format", "gcc"});
    CHECK(two.out.find("a/wrong") < two.out.find("b/wrong"));
    CHECK(count("error", two.out) == 2);
    fs::remove(at / "a/wrong.recipe"), fs::remove(at / "b/wrong.recipe");
    const auto clean = at.run_here({"check", "."});
    CHECK(clean.code == 0);
    CHECK(clean.out + clean.err == "");
    const auto none = at.run_here({"check", ".old/../a", "b"});
    CHECK(none.code == 0);
    fs::create_directory(at / "empty");
    CHECK(at.run_here({"check", "empty"}).code == 2);
    CHECK(at.run_here({"check", "empty"}).err ==
          "benchcard: there is no recipe in empty or below it\n");
}

TEST_CASE("what is wrong with a file that several recipes use is said once", "[commands]") {
    const house at;
    at.file("ours.recipe", ingredients + "colour: white\n");
    for (const auto& r :
         {at.run_here({"check", "."}), at.run_here({"print", ".", "-o", "b.pdf"})}) {
        CHECK(r.code == 1);
        CHECK(count("ours.recipe:6:1: error: ", r.out + r.err) == 1);
    }
    // The tart, which does not use it, is in the book; it has the contents in front of it.
    CHECK_THAT(said_by("pdfinfo '" + at / "b.pdf" + "'"), Catch::Matches("[^]*Pages: +2\n[^]*"));
}

TEST_CASE("a folder is printed as a book with contents, bookmarks and page numbers", "[commands]") {
    const house at;
    const auto r = at.run_here({"print", ".", "-o", "book.pdf"});
    CHECK(r.code == 1);
    CHECK(r.out == "");
    CHECK_THAT(r.err, Catch::StartsWith("a/wrong.recipe:2:1: error: ") &&
                          Catch::EndsWith("benchcard: a/wrong.recipe was not printed\n"));
    const auto pdf = at / "book.pdf";
    int code = -1;
    said_by("qpdf --check '" + pdf + "'", &code);
    CHECK(code == 0);
    const auto text = [&](int page) {
        const auto n = std::to_string(page);
        return said_by("pdftotext -layout -f " + n + " -l " + n + " '" + pdf + "' -");
    };
    // Each stands on the page that the contents say, and says its number in the last line.
    CHECK_THAT(text(1), Catch::Matches("[^]*Contents[^]*Porridge three +1\n[^]*Tart one +2\n[^]*"
                                       "Porridge two +3\n[^]*"));
    CHECK_THAT(text(1), Catch::Contains("have errors: a/wrong.recipe"));
    CHECK_THAT(text(2), Catch::Matches("[^]*Porridge three[^]*\n +1\n[^]*"));
    CHECK_THAT(text(3), Catch::Matches("[^]*Dough[^]*Tart one[^]*\n +2\n[^]*"));
    CHECK_THAT(text(4), Catch::Matches("[^]*Porridge two[^]*\n +3\n[^]*"));
    CHECK_THAT(said_by("pdfinfo '" + pdf + "'"), Catch::Matches("[^]*Pages: +4\n[^]*"));
    const auto outline = said_by("mutool show '" + pdf + "' outline");
    CHECK_THAT(outline, Catch::Contains("\"Contents\"\t#page=1&") &&
                            Catch::Contains("\"Tart one\"\t#page=3&") &&
                            Catch::Contains("|\t\t\"Dough\"\t#page=3&"));
    CHECK(count("Porridge three", outline) == 1); // its card is called the same
    CHECK_THAT(said_by("mutool show '" + pdf + "' trailer/Root/PageLabels/Nums"),
               Catch::Matches("[^]*0[^]*/S /r[^]* 1 [^]*/S /D[^]*"));
    // A font is in the book once, however many recipes are set in it.
    const auto fonts = said_by("pdffonts '" + pdf + "'");
    CHECK(count("NotoSans-Bold", fonts) == 1);
}

TEST_CASE("output and messages are the same bytes with one thread and with many", "[commands]") {
    const house at;
    for (int i = 0; i < 40; ++i)
        at.file("a/r" + std::to_string(i) + ".recipe",
                i % 5 == 0 ? bad : named("Tart " + std::to_string(i)));
    outcome checked[3], book[3], each[3];
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string jobs = std::to_string(i * 4 + 1), n = std::to_string(i);
        checked[i] = at.run_here({"check", ".", "--jobs", jobs});
        book[i] = at.run_here({"print", ".", "-o", n + ".pdf", "--jobs", jobs});
        each[i] = at.run_here({"print", ".", "-o", n + "/", "--jobs", jobs});
        CHECK(checked[i].out == checked[0].out);
        CHECK(count("error: ", checked[i].out) == 9);
        CHECK(book[i].err == book[0].err);
        CHECK(each[i].err == book[0].err);
        CHECK(bytes_of(at / (n + ".pdf")) == bytes_of(at / "0.pdf"));
        CHECK(bytes_of(at / (n + "/a/r7.pdf")) == bytes_of(at / "0/a/r7.pdf"));
        CHECK(bytes_of(at / (n + "/a/r7.pdf")).starts_with("%PDF-"));
    }
}

TEST_CASE("a folder is printed to a PDF each, under the same names", "[commands]") {
    const house at;
    const auto r = at.run_here({"print", ".", "-o", "cards/"});
    CHECK(r.code == 1);
    CHECK_THAT(r.err, Catch::EndsWith("benchcard: a/wrong.recipe was not printed\n"));
    CHECK(said_by("cd '" + at / "cards" + "' && find . -type f | sort") ==
          "./a/three.pdf\n./b/one.pdf\n./b/two.pdf\n");
    CHECK(at.run_here({"print", "b/one.recipe", "-o", "one.pdf"}).code == 0);
    CHECK(bytes_of(at / "one.pdf") == bytes_of(at / "cards/b/one.pdf"));
    // Into a folder that is there, and of files.
    fs::create_directory(at / "there");
    CHECK(at.run_here({"print", "b/one.recipe", "b/two.recipe", "-o", "there"}).code == 0);
    CHECK(bytes_of(at / "there/one.pdf") == bytes_of(at / "one.pdf"));
    CHECK(fs::exists(at / "there/two.pdf"));
    const auto same = at.run_here({"print", "a", "./a/../a", "-o", "there"});
    CHECK(same.code == 2);
    CHECK_THAT(same.err, Catch::StartsWith("benchcard: a/three.recipe and a/three.recipe would "
                                           "both be printed to there/three.pdf\n"));
    const auto gone = at.run_here({"print", "a", "-o", "no/such/"});
    CHECK(gone.code == 2);
    CHECK(gone.err == "benchcard: there is no folder no/such/, and it cannot be made\n");
}

TEST_CASE("a book takes one card of each recipe, an order for all, and both sides", "[commands]") {
    const house at;
    fs::remove(at / "a/wrong.recipe");
    CHECK(at.run_here({"print", ".", "-o", "dough.pdf", "--card", "dough"}).code == 0);
    CHECK_THAT(said_by("pdfinfo '" + at / "dough.pdf" + "'"),
               Catch::Matches("[^]*Pages: +2\n[^]*"));
    const auto none = at.run_here({"print", ".", "-o", "dough.pdf", "--card", "Glaze"});
    CHECK(none.code == 2);
    CHECK_THAT(none.err, Catch::StartsWith("benchcard: no recipe has a card `Glaze`\n"));
    CHECK(
        at.run_here({"print", ".", "-o", "two.pdf", "--scale", "2", "--two-sided", "long"}).code ==
        0);
    // Contents and each recipe begin on a front.
    CHECK_THAT(said_by("pdfinfo '" + at / "two.pdf" + "'"), Catch::Matches("[^]*Pages: +8\n[^]*"));
    CHECK_THAT(said_by("pdftotext -f 3 -l 3 '" + at / "two.pdf" + "' -"), Catch::Contains("× 2"));
    const auto page = at.run_here({"print", ".", "-o", "book.html"});
    CHECK(page.code == 2);
    CHECK_THAT(page.err, Catch::StartsWith("benchcard: a folder is printed to a PDF, or "));
}

TEST_CASE("a bar is shown on a terminal, and gone at the end", "[commands]") {
    const folder at;
    for (int i = 0; i < 150; ++i)
        at.file("r" + std::to_string(i) + ".recipe", named("Tart " + std::to_string(i)));
    const std::vector<std::string> line = {"print", at.path(), "-o", at / "cards/", "--jobs", "1"};
    const auto shown = run_on_terminal(line);
    CHECK_THAT(shown, Catch::Contains(" of 150, ") && Catch::Contains(" a second, ") &&
                          Catch::EndsWith("\r\033[K"));
    CHECK(run_on_terminal(line, {{"TERM", "dumb"}}) == "");
    CHECK(run(line).err == "");
}

} // namespace benchcard::program
