#include "seeds.hpp"

#include <catch2/catch.hpp>
#include <cstdint>
#include <map>

using namespace benchcard::fuzz;

// Each is `LLVMFuzzerTestOneInput` of a file beside this one.
extern "C" {
int fuzz_parse(const std::uint8_t* data, std::size_t size);
int fuzz_check(const std::uint8_t* data, std::size_t size);
int fuzz_weigh(const std::uint8_t* data, std::size_t size);
int fuzz_tidy(const std::uint8_t* data, std::size_t size);
int fuzz_style(const std::uint8_t* data, std::size_t size);
int fuzz_server(const std::uint8_t* data, std::size_t size);
int fuzz_convert(const std::uint8_t* data, std::size_t size);
}

namespace {

using taker = int (*)(const std::uint8_t*, std::size_t);
const std::map<std::string, taker> takers = {
    {"parse", fuzz_parse}, {"check", fuzz_check},   {"weigh", fuzz_weigh},    {"tidy", fuzz_tidy},
    {"style", fuzz_style}, {"server", fuzz_server}, {"convert", fuzz_convert}};

void must_take(const std::string& target, const seed& s) {
    INFO(target << ": " << s.name);
    CHECK_NOTHROW(
        takers.at(target)(reinterpret_cast<const std::uint8_t*>(s.bytes.data()), s.bytes.size()));
}

} // namespace

TEST_CASE("what once broke a target does so no more", "[fuzz]") {
    for (const auto& target : targets())
        for (const auto& s : found_for(target)) must_take(target, s);
}

// Whoever fuzzes puts all of them through.
TEST_CASE("every target takes what it begins with, of which every tenth is tried", "[fuzz]") {
    for (const auto& target : targets()) {
        const auto seeds = seeds_for(target);
        CHECK(seeds.size() >= 30);
        for (std::size_t i = 0; i < seeds.size(); i += 10) must_take(target, seeds[i]);
    }
}
