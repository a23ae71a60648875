#include "compiler/diagnostics/kinds.hpp"
#include "compiler/diagnostics/pages.hpp"
#include "examples.hpp"
#include "provoked.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>

using namespace benchcard;
using namespace benchcard::language;

namespace {

std::string path_of(std::string_view kind) {
    return BENCHCARD_SOURCE_DIR "/compiler/diagnostics/pages/" + std::string(kind) + ".md";
}

bool has_kind(const grammar::diagnostics& messages, std::string_view kind) {
    return std::any_of(messages.begin(), messages.end(),
                       [&](const auto& m) { return m.kind == kind; });
}

/// What stands before the first fence.
std::string words_of(const std::string& page) { return page.substr(0, page.find("\n```")); }

void must_fail_as_shown(const example& e, std::string_view kind) {
    REQUIRE(e.results.size() == 1);
    REQUIRE(e.results.front().info == "messages");
    const auto s = said_of(e);
    CHECK(has_kind(s.messages, kind));
    CHECK(messages_text(s) == e.results.front().text);
    for (const auto& m : s.messages) {
        INFO(m.kind);
        const auto* k = diagnostics::kind_named(m.kind);
        REQUIRE(k);
        CHECK(m.level >= k->level);
        CHECK_FALSE(m.message.ends_with('.'));
    }
}

void must_be_mended(const example& e, std::string_view kind) {
    CHECK(e.results.empty());
    const auto s = said_of(e);
    INFO(messages_text(s));
    CHECK_FALSE(has_kind(s.messages, kind));
    CHECK_FALSE(grammar::has_errors(s.messages));
}

} // namespace

TEST_CASE("the pages of messages are brought up to date when asked") {
    if (!wants_update()) return;
    for (const auto kind : diagnostics::kinds_with_pages()) {
        const auto before = text_of(path_of(kind));
        const auto after = with_results(before);
        print_changes(std::string(kind) + ".md", before, after);
        if (after != before) std::ofstream(path_of(kind), std::ios::binary) << after;
    }
}

TEST_CASE("every kind has a page, and every page a kind") {
    for (const auto& k : diagnostics::all_kinds()) {
        INFO(k.name);
        CHECK_FALSE(diagnostics::page_of(k.name).empty());
    }
    for (const auto kind : diagnostics::kinds_with_pages()) {
        INFO(kind);
        CHECK(diagnostics::kind_named(kind));
    }
}

TEST_CASE("a page says what it means, fails as shown and is mended") {
    for (const auto kind : diagnostics::kinds_with_pages()) {
        INFO(kind);
        const auto page = text_of(path_of(kind));
        const auto words = words_of(page);
        CHECK(words.size() > 40);
        CHECK(words.size() < 1000);
        const auto examples = examples_in(page);
        if (kinds_without_example().contains(std::string(kind))) {
            CHECK(examples.empty());
            continue;
        }
        REQUIRE(examples.size() == 2);
        must_fail_as_shown(examples[0], kind);
        const auto& shown = examples[0].results.front();
        const auto behind = shown.text_begin + shown.text.size();
        CHECK(page.substr(behind, page.find("\n```", behind + 4) - behind) == "```\n\nMended:\n");
        must_be_mended(examples[1], kind);
        CHECK(page.substr(examples[1].end) == "```\n");
    }
}

TEST_CASE("pages are written in words, with no other marks than quotes and fences") {
    for (const auto kind : diagnostics::kinds_with_pages()) {
        INFO(kind);
        const auto words = words_of(text_of(path_of(kind)));
        for (const auto* mark : {"**", "](", "\n#", "\n|", "<", "\n- "})
            CHECK(words.find(mark) == words.npos);
        CHECK(std::count(words.begin(), words.end(), '`') % 2 == 0);
        CHECK((words.ends_with('.') || words.ends_with(".\n")));
    }
}
