#include "compiler/commands/fixes.hpp"
#include "examples.hpp"
#include "mending.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

using namespace benchcard;
using namespace benchcard::language;

namespace {

/// Mends a recipe, twice, and gives how many repairs it took.
std::size_t must_mend_without_harm(const std::string& text,
                                   const std::map<std::string, std::string>& files) {
    const auto m = mended_twice(text, files);
    CHECK(m.fault == "");
    return m.repairs;
}

} // namespace

TEST_CASE("mending an example does no harm, and a second time finds nothing") {
    std::size_t repairs = 0;
    for (const auto& e : all_examples())
        if (!e.is_style) repairs += must_mend_without_harm(e.recipe, e.files);
    CHECK(repairs >= 8);
}

TEST_CASE("what would do harm is left alone") {
    // Which of two sugars is meant, and settings that could not be read.
    CHECK(must_mend_without_harm("recipe: A\n100 g caster sugar\n100 g icing sugar\n"
                                 "- Whisk [icing sugar]. Add the sugar.\n",
                                 {}) == 0);
    CHECK(must_mend_without_harm("recipe: A\nlos: a bit\n100 g plain flour\n", {}) == 0);
    CHECK(must_mend_without_harm("recipe: A\n100 g plain flour\nrevison: 2\nlos: a bit\n", {}) ==
          1);
}

TEST_CASE("there is nothing to mend in the examples") {
    std::map<std::string, std::string> files;
    const std::filesystem::path folder = BENCHCARD_SOURCE_DIR "/examples";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.path().extension() == ".recipe")
            files[entry.path().lexically_relative(folder)] = text_of(entry.path());
    CHECK(files.size() > 6);
    for (const auto& [name, text] : files) CHECK(must_mend_without_harm(text, files) == 0);
}

TEST_CASE("a slip of each certain kind is mended in every example, to the same weights") {
    std::size_t mended = 0;
    for (const auto& e : all_examples()) {
        const auto o = compile(e.recipe, e.files);
        if (e.is_style || grammar::has_errors(o.messages)) continue;
        const auto begin = e.recipe.find("\n- ");
        if (begin == e.recipe.npos) continue;
        auto wrong = e.recipe;
        wrong.replace(begin, 3, "\n1. ");
        const auto m =
            commands::mend("a.recipe", wrong, measures::system::unstated, reader_of(e.files));
        INFO(wrong);
        CHECK(weights_text(compile(m.text, e.files)) == weights_text(o));
        ++mended;
    }
    CHECK(mended > 20);
}
