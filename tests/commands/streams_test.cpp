#include "program.hpp"

#include <catch2/catch.hpp>

/// Standard streams that are full, closed or a terminal.
namespace benchcard::program {

namespace {

const std::string wrong = "recipe:   Tart\n0 g plain flour\n";
const std::string no_room = "benchcard: standard output cannot be written: there is no room left\n";
const std::string escape = "\x1b[";

bool is_coloured(const std::string& text) { return text.find(escape) != text.npos; }

/// Every command that writes to standard output.
std::vector<std::vector<std::string>> lines_that_write(const std::string& faulty,
                                                       const std::string& good) {
    return {{"check", faulty},
            {"check", faulty, "--format=gcc"},
            {"check", faulty, "--format=json"},
            {"check", good, "--format=sarif"},
            {"check", good, "--card=7K4Q-92"},
            {"explain"},
            {"explain", "zero-amount"},
            {"tidy", good},
            {"tidy", "--check", faulty},
            {"weigh", good},
            {"weigh", good, "--why"},
            {"weigh", good, "--batch=1, 2"},
            {"convert", "100 g salt"},
            {"convert", "--list", "sugar", "--measures=us"},
            {"label", good},
            {"label", good, "--format=json"},
            {"print", good, "-o", "-"},
            {"print", "--chart", "--measures=us", "-o", "-"},
            {"--help"},
            {"--version"},
            {"--manual"},
            {"--completion=bash"},
            {"weigh", "--help"}};
}

} // namespace

TEST_CASE("a full standard output is noticed by every command", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong), good = at.file("good.recipe", tart);
    for (const auto& line : lines_that_write(bad, good)) {
        const auto r = run(line, {.out_to = "/dev/full"});
        INFO(line.front());
        CHECK(r.code == 2);
        CHECK(r.err == no_room);
    }
}

TEST_CASE("a closed standard output is noticed, and no file takes its place", "[commands]") {
    const folder at;
    const auto bad = at.file("bad.recipe", wrong), good = at.file("good.recipe", tart);
    for (const auto& line : lines_that_write(bad, good)) {
        const auto r = run(line, {.out_closed = true});
        INFO(line.front());
        CHECK(r.code == 2);
        CHECK(r.err == "benchcard: standard output cannot be written: it is closed\n");
    }
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

} // namespace benchcard::program
