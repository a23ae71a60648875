#include "grammar/limits.hpp"

#include "grammar/tidy.hpp"
#include "reading.hpp"

#include <catch2/catch.hpp>

/// Each limit of a file: what is at it is read, and one more is said with its place.
namespace benchcard::grammar {

namespace {

std::string repeated(std::size_t count, const std::string& line) {
    std::string result;
    result.reserve(count * line.size());
    for (std::size_t i = 0; i < count; ++i) result += line;
    return result;
}

/// The one message of a text, after its place: `503:1 too-many this …`.
std::string said_of(const std::string& text) {
    const reading r(text);
    INFO(text.substr(0, 200));
    REQUIRE(r.result.messages.size() == 1);
    return r.messages().front() + " " + r.result.messages.front().message;
}

bool is_read(const std::string& text) { return reading(text).messages().empty(); }

const std::string head = "recipe: A\n";

} // namespace

TEST_CASE("a file has at most so many lines", "[limits]") {
    CHECK(is_read(head + repeated(limits::lines - 1, "\n")));
    CHECK(said_of(head + repeated(limits::lines - 1, "\n") + "1 g salt") ==
          "10001:1 too-many this file has 10001 lines; at most 10000 can be read");
}

TEST_CASE("a file has at most so many bytes", "[limits]") {
    const auto line = std::string(1023, '#') + "\n";
    const auto most = head + std::string(1024 - head.size() - 1, '#') + "\n" + repeated(1023, line);
    REQUIRE(most.size() == limits::file_bytes);
    CHECK(is_read(most));
    CHECK(said_of(most + "#") ==
          "1:1 too-many this file has 1048577 bytes; at most 1048576 can be read");
}

TEST_CASE("a line, and a step or note with the lines that continue it, has at most so many bytes",
          "[limits]") {
    const auto long_step = [](std::size_t size) {
        return head + "- " + std::string(4998, 'a') + "\n " + std::string(size - 5002, 'b') + "\n";
    };
    CHECK(is_read(head + "- " + std::string(limits::line_bytes - 2, 'a') + "\n"));
    CHECK(said_of(head + "- " + std::string(limits::line_bytes - 1, 'a') + "\n") ==
          "2:1 line-too-long this line is 10001 bytes long; at most 10000 can be read");
    CHECK(is_read(long_step(limits::line_bytes)));
    CHECK(said_of(long_step(limits::line_bytes + 1)) ==
          "2:1 line-too-long this step is 10001 bytes long, with the lines that continue it; at "
          "most 10000 can be read");
    const auto note = [](std::size_t size) {
        return head + "note: " + std::string(4993, 'a') + "\n  " + std::string(size - 5002, 'b') +
               "\n";
    };
    CHECK(is_read(note(limits::line_bytes)));
    CHECK(said_of(note(limits::line_bytes + 1)) ==
          "2:1 line-too-long this note is 10001 bytes long, with the lines that continue it; at "
          "most 10000 can be read");
}

TEST_CASE("a letter carries at most so many marks, and what is joined counts as one", "[limits]") {
    // 30 marks: Unicode's Stream-Safe Text Format, UAX #15.
    CHECK(
        is_read(head + "- Stir e" + repeated(30, "\u0301") + "e" + repeated(30, "\u0301") + ".\n"));
    CHECK(said_of(head + "- Stir e" + repeated(31, "\u0301") + ".\n") ==
          "2:8 too-many-marks this character is made of 32 code points; at most 31 can be printed");
    const std::string joined = "\U0001F469\u200D"; // a woman, and what joins her to the next
    CHECK(is_read(head + "- Stir " + repeated(15, joined) + ".\n"));
    CHECK(said_of(head + "- Stir\n- " + repeated(16, joined) + "\n") ==
          "3:3 too-many-marks this character is made of 32 code points; at most 31 can be printed");
    CHECK(reading(head + "- Stir\n  e" + repeated(31, "\u0301") + "\n").messages() ==
          std::vector<std::string>{"3:3 too-many-marks"});
}

TEST_CASE("a file has at most so many components, their assembly among them", "[limits]") {
    const auto most = head + repeated(limits::components, "component: B\n");
    CHECK(is_read(most));
    CHECK(said_of(most + "assembly: C\n1 g salt\n") ==
          "1002:1 too-many with this line a file has 1001 components; at most 1000 can be read");
}

TEST_CASE("a file has at most so many own ingredients", "[limits]") {
    const auto most = head + repeated(limits::ingredients_defined, "ingredient: b\n");
    CHECK(is_read(most));
    CHECK(said_of(most + "ingredient: c\n") ==
          "2002:1 too-many with this line a file has 2001 own ingredients; at most 2000 can be "
          "read");
}

TEST_CASE("a component has at most so many ingredients and steps, and the next one as many",
          "[limits]") {
    const auto most = "component: B\n" + repeated(limits::ingredient_lines, "1 g salt\n") +
                      repeated(limits::steps, "- Mix.\n");
    CHECK(is_read(head + most + most));
    CHECK(said_of(head + most + "1 g salt\n- Mix.\n") ==
          "3003:1 too-many with this line a component has 2001 ingredients; at most 2000 can be "
          "read");
    CHECK(said_of(head + most + "- Mix.\n1 g salt\n") ==
          "3003:1 too-many with this line a component has 1001 steps; at most 1000 can be read");
}

TEST_CASE("a file has at most so many brackets", "[limits]") {
    const auto hundred = "- " + repeated(100, "[salt] ").substr(0, 699) + "\n";
    const auto most = head + repeated(limits::brackets / 100, hundred);
    CHECK(is_read(most));
    CHECK(said_of(most + "- Mix [salt] with [salt].\n- [salt]\n") ==
          "102:1 too-many with this line a file has 10002 brackets; at most 10000 can be read");
}

TEST_CASE("a component has at most so many losses, on one line or on several", "[limits]") {
    const auto most = "component: B\n" + repeated(limits::losses / 2, "loss: 1% a, 1% b\n");
    CHECK(is_read(head + most + most));
    CHECK(said_of(head + most + "loss: 1% a\n") ==
          "8:1 too-many with this line a component has 11 losses; at most 10 can be read");
    CHECK(said_of(head + "loss: 1% a" + repeated(limits::losses, ", 1% b") + "\n") ==
          "2:1 too-many with this line a component has 11 losses; at most 10 can be read");
}

TEST_CASE("a number has at most so many digits, and a fraction so many parts", "[limits]") {
    CHECK(is_read(head + "9999999.999999999 g salt\n1/1000 g salt\n"));
    CHECK(said_of(head + "10000000 g salt\n") ==
          "2:1 number-too-large this number has 8 digits; in a recipe one has at most 7");
    CHECK(said_of(head + "1.0000000001 g salt\n") ==
          "2:3 number-too-large this number has 10 decimals; in a recipe one has at most 9");
    CHECK(said_of(head + "1/1001 g salt\n") ==
          "2:3 number-too-large this fraction is of 1001 parts; at most 1000 can be measured");
}

TEST_CASE("what is not read any more stays in a tidied file as it is", "[limits]") {
    const auto most = head + repeated(limits::ingredient_lines, "1 g  salt\n");
    const std::string rest = "1   g   salt\n\n- Mix   all\n  makes:   2\n";
    const auto made = tidied(most + rest);
    CHECK(made.ends_with(rest));
    CHECK(made.starts_with(head + "1 g   salt\n"));
}

} // namespace benchcard::grammar
