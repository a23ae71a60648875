#include "compiler/diagnostics/kinds.hpp"
#include "compiler/diagnostics/render.hpp"
#include "examples.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <set>
#include <sstream>

using namespace benchcard;
using namespace benchcard::language;

namespace {

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// What a page of plain text cannot show, or not in a few lines.
const std::vector<std::pair<std::string, std::string>>& other_provocations() {
    static const std::vector<std::pair<std::string, std::string>> recipes = {
        {"control-character", std::string("recipe: A\n100 g \0flour\n", 23)},
        {"not-utf8", "recipe: A\n100 g cr\xE8me\n"},
        {"name-too-long", "recipe: A\n100 g " + std::string(121, 'x') + "\n"},
        {"line-too-long", "recipe: A\n- " + std::string(10'000, 'x') + "\n"},
    };
    return recipes;
}

/// A thousand files, each used by the one before it.
outcome with_too_many_files() {
    std::map<std::string, std::string> files;
    for (int i = 0; i < 1001; ++i)
        files[fmt::format("{}.recipe", i)] = fmt::format("recipe: {}\nuse: {}.recipe\n", i, i + 1);
    return compile("recipe: A\nuse: 0.recipe\n100 g plain flour\n", files);
}

void collect(std::set<std::string>& to, const outcome& o) {
    for (const auto& m : o.messages) to.insert(std::string(m.kind));
}

/// A source's text on one line, with nothing between an opening bracket and what follows it: how
/// its lines are broken is no matter.
std::string on_one_line(const std::string& text) {
    std::string result;
    for (const char c : text) {
        const bool is_gap = c == ' ' || c == '\n' || c == '\t';
        const bool may_follow = !result.empty() && result.back() != ' ' && result.back() != '(' &&
                                result.back() != '{';
        if (!is_gap) result += c;
        else if (may_follow) result += ' ';
    }
    return result;
}

/// Words in quotes that stand where a source names a kind.
std::set<std::string> kinds_in_sources() {
    std::set<std::string> result;
    const auto is_kind_letter = [](char c) {
        return (c >= 'a' && c <= 'z') || c == '-' || c == '8';
    };
    for (const auto* room :
         {"grammar", "compiler/recipe", "compiler/checks", "compiler/ingredients"})
        for (const auto& entry : std::filesystem::recursive_directory_iterator(
                 std::string(BENCHCARD_SOURCE_DIR) + "/" + room)) {
            const auto extension = entry.path().extension();
            if (extension != ".cpp" && extension != ".hpp") continue;
            const auto text = on_one_line(text_of(entry.path()));
            for (const std::string opening :
                 {"error_at(\"", "error(\"", "say(\"", "kind == \"", "{\""})
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

TEST_CASE("every registered kind is provoked, at the level it is registered with or a lesser one") {
    std::set<std::string> provoked;
    const auto check_levels = [&](const outcome& o) {
        collect(provoked, o);
        for (const auto& m : o.messages) {
            INFO(m.kind);
            const auto* k = diagnostics::kind_named(m.kind);
            REQUIRE(k);
            CHECK(m.level >= k->level);
        }
    };
    for (const auto& e : examples_in(text_of(BENCHCARD_SOURCE_DIR "/grammar/LANGUAGE.md")))
        check_levels(compile(e.recipe, e.files));
    for (const auto& [kind, recipe] : other_provocations()) check_levels(compile(recipe));
    check_levels(with_too_many_files());
    for (const auto& k : diagnostics::all_kinds()) {
        INFO(k.name);
        CHECK(provoked.contains(std::string(k.name)));
    }
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
