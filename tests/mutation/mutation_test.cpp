#include "compiler/diagnostics/render.hpp"
#include "compiler/measures/kitchen.hpp"
#include "verdict.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <map>

namespace benchcard::mutation {

namespace {

/// In percent of all slips, and of one in eleven, which may happen to be the harder ones. Lower it
/// for nothing but a new kind of slip.
constexpr double least_share = 95, least_share_of_some = 93;

/// How many of the slips of one kind are caught.
struct score {
    int made = 0, caught = 0;
    void count(bool is_caught) { ++made, caught += is_caught; }
    double share() const { return made == 0 ? 100.0 : 100.0 * caught / made; }
};

std::string grams(const std::optional<exact>& weight) {
    return weight ? measures::in_decimals(*weight, 1) + " g" : "an unknown weight";
}

std::string listed(const correct_recipe& r, const mutant& m, const verdict& v) {
    const auto& text = r.compiled->files.sources[0];
    const auto line = text.at(m.change.where.begin).line;
    const auto was = std::string(text.line(line));
    const auto begin = m.change.where.begin - text.line_start(line);
    const auto is = m.change.text.empty()
                        ? std::string("nothing")
                        : changed(was, {{0, static_cast<std::uint32_t>(begin),
                                         static_cast<std::uint32_t>(begin + m.change.where.end -
                                                                    m.change.where.begin)},
                                        m.change.text});
    return fmt::format("{}:{}: {}: {} -> {}; `{}` -> `{}`: {}", r.path, line, m.slip,
                       grams(v.before), grams(v.after), was, is, v.why_missed);
}

/// Of every so many slips, in the order of the texts, one is tried: all take two minutes in a Debug
/// build. `MUTATION_ONE_IN=1` tries all. No divisor of the number of slips that lines usually have.
std::size_t one_in() {
    const char* said = std::getenv("MUTATION_ONE_IN");
    return said ? std::max(1ul, std::stoul(said)) : 11;
}

} // namespace

TEST_CASE("slips in correct recipes are caught where they are", "[mutation]") {
    std::map<std::string_view, score> heavy, light;
    std::map<std::string, int> reasons;
    std::vector<std::string> missed;
    score all;
    std::size_t number = 0;
    const auto step = one_in();
    for (const auto& r : correct_recipes())
        for (const auto& m : mutants_of(r)) {
            if (number++ % step != 0) continue;
            const auto v = judge(r, m);
            (v.changes_weight() ? heavy : light)[m.slip].count(v.is_caught);
            if (v.changes_weight()) all.count(v.is_caught);
            if (v.is_caught || !v.changes_weight()) continue;
            missed.push_back(listed(r, m, v));
            ++reasons[v.why_missed];
        }
    std::sort(missed.begin(), missed.end());
    std::ofstream list(BENCHCARD_BINARY_DIR "/missed-slips.txt");
    for (const auto& line : missed) list << line << "\n";

    std::cout << fmt::format(
        "slips that change a weight by more than 20 %: {} of {} caught, {:.1f} %\n", all.caught,
        all.made, all.share());
    for (const auto& [slip, s] : heavy)
        std::cout << fmt::format("  {:30} {:5} of {:5}  {:5.1f} %\n", slip, s.caught, s.made,
                                 s.share());
    std::cout << "others, which are not asked for\n";
    for (const auto& [slip, s] : light)
        std::cout << fmt::format("  {:30} {:5} of {:5}  {:5.1f} %\n", slip, s.caught, s.made,
                                 s.share());
    std::cout << "missed, listed in missed-slips.txt in the build folder\n";
    for (const auto& [reason, n] : reasons) std::cout << fmt::format("  {:5}  {}\n", n, reason);
    CHECK(all.made > 250);
    CHECK(all.share() >= (step == 1 ? least_share : least_share_of_some));
}

TEST_CASE("correct recipes compile without a word", "[recipes]") {
    const auto recipes = correct_recipes();
    CHECK(recipes.size() >= 38);
    for (const auto& r : recipes) {
        INFO(r.path);
        CHECK(diagnostics::render_all(r.compiled->messages, r.compiled->files.sources,
                                      diagnostics::colour::no) == "");
    }
}

} // namespace benchcard::mutation
