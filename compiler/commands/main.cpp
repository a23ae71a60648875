#include "compiler/commands/commands.hpp"

#include <cstdio>
#include <exception>
#include <fmt/format.h>

int main(int argc, char** argv) {
    try {
        return benchcard::commands::run(argc, argv);
    } catch (const std::exception& e) {
        fmt::print(stderr, "benchcard: stopped by a fault that is not the recipe's: {}\n", e.what());
        return benchcard::commands::not_run;
    }
}
