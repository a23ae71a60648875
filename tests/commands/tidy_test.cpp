#include "program.hpp"

#include <catch2/catch.hpp>

namespace benchcard::program {

namespace {

const std::string untidy = "recipe: A\n200 g plain flour\n5 g salt\n";
const std::string in_order = "recipe: A\n200 g   plain flour\n5   g   salt\n";

} // namespace

TEST_CASE("tidy prints the canonical text, and changes no file", "[commands]") {
    const folder at;
    const auto file = at.file("a.recipe", untidy);
    const auto r = run({"tidy", file});
    CHECK(r.code == 0);
    CHECK(r.out == in_order);
    CHECK(r.err == "");
    CHECK(bytes_of(file) == untidy);
    CHECK(run({"tidy", "-"}, {.input = untidy}).out == in_order);
}

TEST_CASE("tidy --write puts it in the file, and leaves one alone that is in order", "[commands]") {
    const folder at;
    const auto a = at.file("a.recipe", untidy), b = at.file("b.recipe", in_order);
    const auto r = run({"tidy", "--write", a, b});
    CHECK(r.code == 0);
    CHECK(r.out + r.err == "");
    CHECK(bytes_of(a) == in_order);
    CHECK(bytes_of(b) == in_order);
}

TEST_CASE("tidy --check names the files that would change", "[commands]") {
    const folder at;
    at.file("a.recipe", untidy), at.file("b.recipe", in_order), at.file("c.recipe", untidy);
    const auto r =
        run({"tidy", "--check", "a.recipe", "b.recipe", "c.recipe"}, {.folder = at.path()});
    CHECK(r.code == 1);
    CHECK(r.out == "a.recipe\nc.recipe\n");
    CHECK(bytes_of(at / "a.recipe") == untidy);
    CHECK(run({"tidy", "--check", at / "b.recipe"}).code == 0);
}

TEST_CASE("tidy says which file cannot be read, and goes on", "[commands]") {
    const folder at;
    const auto a = at.file("a.recipe", untidy);
    const auto r = run({"tidy", "--write", at / "gone.recipe", a});
    CHECK(r.code == 2);
    CHECK(r.err ==
          "benchcard: " + (at / "gone.recipe") + " cannot be read: there is no such file\n");
    CHECK(bytes_of(a) == in_order);
    CHECK(run({"tidy", "--write", "--check", a}).err ==
          "benchcard: --check changes nothing, and --write does: give one of them\n"
          "     = help: for example: benchcard tidy --check tart.recipe\n");
}

} // namespace benchcard::program
