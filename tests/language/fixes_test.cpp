#include "compiler/commands/fixes.hpp"
#include "examples.hpp"

#include <catch2/catch.hpp>
#include <filesystem>

using namespace benchcard;
using namespace benchcard::language;

namespace {

recipe::file_reader reader_of(const std::map<std::string, std::string>& files) {
    return [&files](const std::string& path) {
        const auto found = files.find(path);
        return found == files.end() ? recipe::file_text{false, "", "no such file"}
                                    : recipe::file_text{true, found->second, ""};
    };
}

std::size_t errors_in(const grammar::diagnostics& messages) {
    return static_cast<std::size_t>(std::count_if(messages.begin(), messages.end(), [](auto& m) {
        return m.level == grammar::severity::error;
    }));
}

/// Mends a recipe, twice, and gives how many repairs it took.
std::size_t must_mend_without_harm(const std::string& text,
                                   const std::map<std::string, std::string>& files) {
    const auto read = reader_of(files);
    const auto m = commands::mend("a.recipe", text, measures::system::unstated, read);
    const auto before = compile(text, files), after = compile(m.text, files);
    INFO(text << "---\n" << m.text << messages_text(after));
    if (m.repairs.empty()) CHECK(m.text == text);
    if (errors_in(before.messages) == 0) {
        CHECK(errors_in(after.messages) == 0);
        CHECK(weights_text(after) == weights_text(before));
    }
    CHECK(errors_in(after.messages) <= errors_in(before.messages));
    CHECK(commands::mend("a.recipe", m.text, measures::system::unstated, read).repairs.empty());
    return m.repairs.size();
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
