#include "compiler/diagnostics/kinds.hpp"
#include "compiler/diagnostics/render.hpp"
#include "examples.hpp"
#include "provoked.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

using namespace benchcard;
using namespace benchcard::language;

namespace {

void collect(std::set<std::string>& to, const outcome& o) {
    for (const auto& m : o.messages) to.insert(std::string(m.kind));
}

void must_be_registered(const grammar::diagnostics& messages) {
    for (const auto& m : messages) {
        INFO(m.kind);
        const auto* k = diagnostics::kind_named(m.kind);
        REQUIRE(k);
        CHECK(m.level >= k->level);
    }
}

/// A source's text on one line, with nothing between an opening bracket and what follows it: how
/// its lines are broken is no matter.
std::string on_one_line(const std::string& text) {
    std::string result;
    for (const char c : text) {
        const bool is_gap = c == ' ' || c == '\n' || c == '\t';
        const bool may_follow =
            !result.empty() && result.back() != ' ' && result.back() != '(' && result.back() != '{';
        if (!is_gap)
            result += c;
        else if (may_follow)
            result += ' ';
    }
    return result;
}

/// Words in quotes that stand where a source names a kind.
std::set<std::string> kinds_in_sources() {
    std::set<std::string> result;
    const auto is_kind_letter = [](char c) {
        return (c >= 'a' && c <= 'z') || c == '-' || c == '8';
    };
    const std::vector<std::string> in_recipes = {"error_at(\"", "error(\"", "say(\"", "kind == \"",
                                                 "{\""};
    const std::vector<std::string> in_styles = {"report(r, \"",  "report_word(r, \"",
                                                "kind = \"",     "failure(\"",
                                                "diagnostic{\"", "push_back({\""};
    for (const std::string room :
         {"grammar", "compiler/recipe", "compiler/checks", "compiler/ingredients", "styles"})
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(BENCHCARD_SOURCE_DIR "/" + room)) {
            const auto extension = entry.path().extension();
            if (extension != ".cpp" && extension != ".hpp") continue;
            const auto text = on_one_line(text_of(entry.path()));
            for (const auto& opening : room == "styles" ? in_styles : in_recipes)
                for (auto i = text.find(opening); i != text.npos; i = text.find(opening, i + 1)) {
                    const auto begin = i + opening.size();
                    const auto end = text.find('"', begin);
                    const auto word = text.substr(begin, end - begin);
                    const bool looks_like_one =
                        word.find('-') != word.npos &&
                        std::all_of(word.begin(), word.end(), is_kind_letter);
                    const auto behind = std::string_view(text).substr(end + 1, 9);
                    const bool is_registration = behind.starts_with(", error,") ||
                                                 behind.starts_with(", warning") ||
                                                 behind.starts_with(", hint,");
                    if (looks_like_one && !is_registration) result.insert(word);
                }
        }
    return result;
}

} // namespace

TEST_CASE("kinds are registered once, in order") {
    const auto& all = diagnostics::all_kinds();
    for (std::size_t i = 1; i < all.size(); ++i) {
        INFO(all[i].name);
        CHECK(all[i - 1].name < all[i].name);
        CHECK_FALSE(all[i].summary.empty());
    }
    CHECK(diagnostics::kind_named("mix-too-small")->level == grammar::severity::error);
    CHECK(diagnostics::kind_named("mix-too-smal") == nullptr);
}

TEST_CASE("every kind that the sources use is registered, and no other") {
    const auto used = kinds_in_sources();
    CHECK(used.size() > 40);
    for (const auto& kind : used) {
        INFO(kind);
        CHECK(diagnostics::kind_named(kind));
    }
    for (const auto& k : diagnostics::all_kinds()) {
        INFO(k.name);
        CHECK(used.contains(std::string(k.name)));
    }
}

TEST_CASE("a text provokes the kind it is meant to") {
    for (const auto& [kind, recipe] : other_provocations()) {
        INFO(kind);
        std::set<std::string> found;
        collect(found, compile(recipe));
        CHECK(found.contains(kind));
    }
    std::set<std::string> found;
    collect(found, with_too_many_files());
    CHECK(found == std::set<std::string>{"too-many-files"});
}

TEST_CASE("what no page can show is registered at the level it has or a graver one") {
    for (const auto& [kind, recipe] : other_provocations())
        must_be_registered(compile(recipe).messages);
    must_be_registered(with_too_many_files().messages);
}

TEST_CASE("what LANGUAGE.md provokes is registered at the level it has or a graver one") {
    for (const auto& e : examples_in(text_of(BENCHCARD_SOURCE_DIR "/grammar/LANGUAGE.md")))
        must_be_registered(compile(e.recipe, e.files).messages);
}

TEST_CASE("a message ends without a full stop and begins like the middle of a sentence") {
    for (const auto& e : examples_in(text_of(BENCHCARD_SOURCE_DIR "/grammar/LANGUAGE.md")))
        for (const auto& m : compile(e.recipe, e.files).messages) {
            INFO(m.message);
            CHECK_FALSE(m.message.ends_with('.'));
            CHECK_FALSE(m.message.empty());
            for (const auto word : {"invalid", "illegal", "unexpected token", "parse"})
                CHECK(m.message.find(word) == std::string::npos);
        }
}
