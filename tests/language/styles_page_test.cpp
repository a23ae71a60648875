#include "examples.hpp"
#include "styles/style.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

using namespace benchcard;
using namespace benchcard::language;

namespace {

const std::string styles_path = BENCHCARD_SOURCE_DIR "/styles/STYLES.md";

} // namespace

TEST_CASE("the reference of styles is brought up to date when asked") {
    if (!wants_update()) return;
    const auto before = text_of(styles_path);
    const auto after = with_results(before);
    print_changes("STYLES.md", before, after);
    if (after != before) std::ofstream(styles_path, std::ios::binary) << after;
}

TEST_CASE("every example of the reference of styles gives what stands behind it") {
    const auto examples = examples_in(text_of(styles_path));
    CHECK(examples.size() >= 10);
    for (const auto& e : examples) {
        INFO("styles/STYLES.md:" << e.line << ":\n" << e.recipe);
        REQUIRE(e.is_style);
        for (const auto& f : e.results) CHECK(result_text(e, f.info) == f.text);
        if (e.results.empty()) CHECK(result_text(e, "messages") == "");
    }
}

TEST_CASE("the reference of styles names every setting and every style") {
    const auto page = text_of(styles_path);
    for (const auto& name : styles::setting_names()) {
        INFO(name);
        const bool in_a_table = page.find("`" + name + "`") != page.npos;
        const bool in_an_example = page.find("\n" + name + ": ") != page.npos;
        CHECK((in_a_table || in_an_example));
    }
    for (const auto& name : styles::built_in_style_names()) {
        INFO(name);
        CHECK(page.find("`" + name + "`") != page.npos);
    }
}
