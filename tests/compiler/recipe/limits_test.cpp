#include "grammar/limits.hpp"

#include "compiler/diagnostics/render.hpp"
#include "reading.hpp"

#include <fmt/format.h>

/// The limits of a recipe with all that it uses: what is at one is read, and one more is said.
namespace benchcard::testing {

namespace {

namespace limits = grammar::limits;

const std::string head = "recipe: A\n";

/// So many components, each made of the one before it.
std::string chain_of(std::size_t count) {
    std::string result = head + "component: Part 1\n1 g water\n";
    for (std::size_t i = 2; i <= count; ++i)
        result += fmt::format("component: Part {}\nall Part {}\n", i, i - 1);
    return result;
}

/// So many files, named by their numbers and each of some text of its own.
template <typename Text> files files_of(std::size_t count, Text text) {
    files result;
    for (std::size_t i = 1; i <= count; ++i) result[fmt::format("{}.recipe", i)] = text(i);
    return result;
}

/// A recipe that uses all of these, the last in its line `count + 1`.
std::string using_all(std::size_t count) {
    auto result = head;
    for (std::size_t i = 1; i <= count; ++i) result += fmt::format("use: {}.recipe\n", i);
    return result + "1 g water\n";
}

/// `51:6 too-deep this …`
std::string said(const commands::compiled& c) {
    REQUIRE(c.messages.size() == 1);
    const auto& m = c.messages.front();
    const auto at = c.files.sources[m.where.file].at(m.where.begin);
    return fmt::format("{}:{}:{} {} {}", c.files.sources[m.where.file].name(), at.line, at.column,
                       m.kind, m.message);
}

} // namespace

TEST_CASE("components are made of one another in a chain of at most so many", "[limits]") {
    const auto most = compiled(chain_of(limits::components_in_a_chain));
    CHECK(kinds_of(*most).empty());
    CHECK(most->meaning.product().mix->used == 1);
    CHECK(said(*compiled(chain_of(limits::components_in_a_chain + 1))) ==
          "main.recipe:103:5 too-deep this is the end of a chain of 51 components that are made of "
          "one another; at most 50 can be reckoned");
}

TEST_CASE("a recipe is at most so many files", "[limits]") {
    const auto text = [](std::size_t i) { return fmt::format("recipe: {}\n", i); };
    const auto others = files_of(limits::files, text);
    CHECK(kinds_of(*compiled(using_all(limits::files - 1), others)).empty());
    CHECK(said(*compiled(using_all(limits::files), others)) ==
          "main.recipe:1001:6 too-many-files this recipe uses more than 1000 files");
}

TEST_CASE("files use one another in a chain of at most so many", "[limits]") {
    const auto chain = [](std::size_t count) {
        auto result = files_of(count, [](std::size_t i) {
            return fmt::format("recipe: {}\nuse: {}.recipe\n", i, i + 1);
        });
        result[fmt::format("{}.recipe", count)] = "recipe: Last\n";
        return result;
    };
    CHECK(kinds_of(*compiled(using_all(1), chain(limits::files_in_a_chain - 1))).empty());
    CHECK(said(*compiled(using_all(1), chain(limits::files_in_a_chain))) ==
          "19.recipe:2:6 too-many-files this is the end of a chain of 21 files that use one "
          "another; at most 20 can be read");
}

TEST_CASE("all files of a recipe have at most so many bytes", "[limits]") {
    const auto main = using_all(4);
    const auto room = limits::bytes_of_all - main.size();
    const auto text_of = [](std::size_t size) {
        std::string text = "recipe: B\n";
        while (text.size() < size)
            text += std::string(std::min<std::size_t>(size - text.size(), 9000) - 1, '#') + "\n";
        return text;
    };
    auto others = files_of(3, [&](std::size_t) { return text_of(limits::file_bytes); });
    const auto last = room - 3 * limits::file_bytes;
    others["4.recipe"] = text_of(last);
    CHECK(kinds_of(*compiled(main, others)).empty());
    others["4.recipe"] = text_of(last + 1);
    CHECK(said(*compiled(main, others)) ==
          "main.recipe:5:6 too-many-files with this file all that the recipe uses has 4194305 "
          "bytes; at most 4194304 can be read");
}

TEST_CASE("all files of a recipe have at most so many components", "[limits]") {
    const auto text = [](std::size_t file) {
        std::string result = "recipe: B\n";
        for (int i = 1; i <= 500; ++i)
            result += fmt::format("component: Part {} {}\n1 g water\n", file, i);
        return result;
    };
    auto others = files_of(4, text);
    CHECK(kinds_of(*compiled(using_all(4), others)).empty());
    others["4.recipe"] += "component: More\n1 g water\n";
    CHECK(said(*compiled(using_all(4), others)) ==
          "main.recipe:5:6 too-many-files with this file all that the recipe uses has 2001 "
          "components; at most 2000 can be read");
}

TEST_CASE("of a recipe at most so many messages are said, errors before others", "[limits]") {
    const auto wrong = [](int count) {
        std::string text = head + "1 g unheard-of stuff\n";
        for (int i = 0; i < count; ++i) text += "salt\n";
        return text;
    };
    const auto most = compiled(wrong(999));
    CHECK(most->messages.size() == 1000);
    CHECK(most->messages.back().kind == "unreadable-line");
    const auto more = compiled(wrong(1050));
    REQUIRE(more->messages.size() == 1001);
    CHECK(more->messages.front().kind == "unreadable-line");
    const auto& last = more->messages.back();
    CHECK(last.kind == "too-many-messages");
    CHECK(last.level == grammar::severity::error);
    CHECK(last.message == "51 more messages are not said, the first of them about this place");
    CHECK(more->files.sources[0].at(last.where.begin).line == 1003);
    // Where only hints are left out, they are no error.
    const auto hints = compiled(wrong(1000));
    CHECK(hints->messages.back().level == grammar::severity::hint);
    const auto shown =
        diagnostics::render_all(more->messages, more->files.sources, diagnostics::colour::no);
    CHECK(std::count(shown.begin(), shown.end(), '\n') < 6000);
}

} // namespace benchcard::testing
