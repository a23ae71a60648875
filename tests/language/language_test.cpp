#include "examples.hpp"
#include "grammar/parse.hpp"
#include "grammar/settings.hpp"
#include "tables.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <fstream>

using namespace benchcard;
using namespace benchcard::language;

namespace {

const std::string page_path = BENCHCARD_SOURCE_DIR "/grammar/LANGUAGE.md";

std::string page() { return text_of(page_path); }

} // namespace

TEST_CASE("the language reference is brought up to date when asked") {
    if (!wants_update()) return;
    const auto before = page();
    const auto after = with_tables(with_results(before));
    print_changes("LANGUAGE.md", before, after);
    if (after != before) std::ofstream(page_path, std::ios::binary) << after;
}

TEST_CASE("every example of the language reference gives what stands behind it") {
    const auto examples = examples_in(page());
    CHECK(examples.size() >= 60);
    for (const auto& e : examples) {
        INFO("grammar/LANGUAGE.md:" << e.line << ":\n" << e.recipe);
        CHECK_FALSE(e.results.empty());
        bool shows_messages = false;
        for (const auto& f : e.results) {
            CHECK(result_text(e, f.info) == f.text);
            shows_messages = shows_messages || f.info == "messages";
        }
        if (!shows_messages) CHECK(result_text(e, "messages") == "");
    }
}

TEST_CASE("few fences of the reference are not run") {
    std::size_t not_run = 0;
    for (const auto& f : fences_in(page())) not_run += f.info == "text";
    CHECK(not_run <= 5);
}

TEST_CASE("the tables of the reference are what the program knows") {
    const auto text = page();
    for (const auto& [name, table] : tables()) {
        INFO(name);
        const auto mark = fmt::format("<!-- table: {} -->\n", name);
        const auto begin = text.find(mark);
        REQUIRE(begin != text.npos);
        const auto end = text.find("<!-- end of table -->", begin);
        REQUIRE(end != text.npos);
        CHECK(text.substr(begin + mark.size(), end - begin - mark.size()) == table);
    }
}

TEST_CASE("the reference speaks of every setting outside the table, and shows no setting that does "
          "not exist") {
    auto text = page();
    const auto begin = text.find("<!-- table: settings -->");
    text.erase(begin, text.find("<!-- end of table -->", begin) - begin);
    for (const auto& s : grammar::all_settings()) {
        INFO(s.word);
        CHECK(text.find(std::string(s.word) + ":") != text.npos);
    }
}

TEST_CASE("every setting's own example can be read where it may stand") {
    for (const auto& s : grammar::all_settings()) {
        INFO(s.example);
        for (const auto place : {grammar::in_recipe, grammar::in_component, grammar::in_assembly,
                                 grammar::in_ingredient}) {
            if (!(s.places & place)) continue;
            std::string recipe = s.name == grammar::key::recipe ? "" : "recipe: Example\n";
            if (place == grammar::in_component && s.name != grammar::key::component)
                recipe += "component: A\n";
            if (place == grammar::in_assembly && s.name != grammar::key::assembly)
                recipe += "assembly: A\n";
            if (place == grammar::in_ingredient && s.name != grammar::key::ingredient)
                recipe += "ingredient: a\n";
            const grammar::source text(0, "example.recipe", recipe + std::string(s.example) + "\n");
            CHECK(grammar::parse(text).messages.empty());
        }
    }
}
