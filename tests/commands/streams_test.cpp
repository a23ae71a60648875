#include "program.hpp"

#include <catch2/catch.hpp>

/// Standard streams that are full, closed, a terminal or in another country.
namespace benchcard::program {

namespace {

const std::string wrong = "recipe: Tart\n0 g plain flour\n";
const std::string no_room = "benchcard: standard output cannot be written: there is no room left\n";
const std::string escape = "\x1b[";

bool is_coloured(const std::string& text) { return text.find(escape) != text.npos; }

} // namespace

TEST_CASE("a full standard output is noticed by every command", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong), good = at.file("good.recipe", tart);
    for (const auto& line : std::vector<std::vector<std::string>>{{"check", bad},
                                                                  {"check", bad, "--format=json"},
                                                                  {"explain"},
                                                                  {"explain", "zero-amount"},
                                                                  {"weigh", good},
                                                                  {"convert", "100 g salt"},
                                                                  {"print", good, "-o", "-"},
                                                                  {"--help"},
                                                                  {"--version"},
                                                                  {"weigh", "--help"}}) {
        const auto r = run(line, {.out_to = "/dev/full"});
        INFO(line.front());
        CHECK(r.code == 2);
        CHECK(r.err == no_room);
    }
}

TEST_CASE("a closed standard output is noticed, and no file takes its place", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong), good = at.file("good.recipe", tart);
    const auto closed = run({"weigh", good}, {.out_closed = true});
    CHECK(closed.code == 2);
    CHECK(closed.err == "benchcard: standard output cannot be written: it is closed\n");
    CHECK(run({"check", bad}, {.out_closed = true}).code == 2);
    CHECK(run({"check", good}, {.out_closed = true}).code == 0);
    CHECK(run({"print", good, "-o", at / "a.pdf"}, {.out_closed = true}).code == 0);
    CHECK(bytes_of(at / "a.pdf").starts_with("%PDF-"));
}

TEST_CASE("a full standard error changes no exit code", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong);
    CHECK(run({"weigh", bad}, {.err_to = "/dev/full"}).code == 1);
    CHECK(run({"weigh", "gone.recipe"}, {.err_to = "/dev/full"}).code == 2);
    CHECK(run({}, {.err_to = "/dev/full"}).code == 2);
}

TEST_CASE("colour is for terminals, and not with NO_COLOR", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong);
    for (const auto* command : {"check", "weigh"}) {
        const auto plain = run({command, bad}, {.environment = {{"TERM", "xterm"}}});
        CHECK_FALSE(is_coloured(plain.out + plain.err));
        CHECK(is_coloured(run_on_terminal({command, bad}, {{"TERM", "xterm"}, {"NO_COLOR", ""}})));
        const auto shown = run_on_terminal({command, bad}, {{"TERM", "xterm"}, {"NO_COLOR", "1"}});
        CHECK_FALSE(is_coloured(shown));
        CHECK_THAT(shown, Catch::Contains("an amount must be more than nothing"));
        CHECK_FALSE(
            is_coloured(run_on_terminal({command, bad}, {{"TERM", "dumb"}, {"NO_COLOR", ""}})));
    }
}

TEST_CASE("the place and the time change no byte", "[commands]") {
    const auto example =
        std::string(BENCHCARD_SOURCE_DIR) + "/examples/pear-and-almond-tart.recipe";
    const auto here = run({"weigh", example}, {.environment = {{"LC_ALL", "C"}, {"TZ", "UTC"}}});
    const auto there = run({"weigh", example}, {.environment = {{"LC_ALL", "de_DE.UTF-8"},
                                                                {"LANGUAGE", "de"},
                                                                {"TZ", "Pacific/Auckland"}}});
    CHECK(here.code == 0);
    CHECK(here.out == there.out);
    const auto gone = run({"check", "gone"}, {.environment = {{"LC_ALL", "de_DE.UTF-8"}}});
    CHECK(gone.err == "benchcard: gone cannot be read: there is no such file\n");
    const auto pdf = run({"print", example, "-o", "-"}, {.environment = {{"LC_ALL", "C"}}});
    CHECK(pdf.out == run({"print", example, "-o", "-"},
                         {.environment = {{"LC_ALL", "de_DE.UTF-8"}, {"TZ", "Pacific/Auckland"}}})
                         .out);
}

} // namespace benchcard::program
