#include "fonts_for_tests.hpp"
#include "listing.hpp"
#include "sample_cards.hpp"
#include "styles/layout/lay_out.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>

using namespace benchcard;

namespace {

std::string text_of_file(const std::string& path) {
    std::ifstream in(path);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// Compares with the golden of that name; UPDATE_GOLDEN=1 in the environment writes it anew.
void compare_golden(const std::string& name, const std::string& now) {
    const std::string path = BENCHCARD_SOURCE_DIR "/tests/styles/golden/" + name + ".txt";
    const auto before = text_of_file(path);
    if (before != now && std::getenv("UPDATE_GOLDEN")) {
        std::ofstream(path) << now;
        std::cout << "golden " << name << " was written anew\n";
        return;
    }
    INFO("the listing differs from " << path << "; UPDATE_GOLDEN=1 writes it anew");
    CHECK(now == before);
}

std::string laid_out(const styles::card& card, const char* paper) {
    return listing(layout::lay_out(card, *styles::built_in_style("station"),
                                   *styles::paper_named(paper), plain_metrics()));
}

} // namespace

TEST_CASE("cards stand as they stood", "[layout][golden]") {
    compare_golden("short-a5", laid_out(samples::short_card(), "a5"));
    compare_golden("short-a6", laid_out(samples::short_card(), "a6"));
    compare_golden("long-a4", laid_out(samples::long_card(), "a4"));
    compare_golden("long-a5", laid_out(samples::long_card(), "a5"));
    compare_golden("long-3x5", laid_out(samples::long_card(), "3x5"));
}
