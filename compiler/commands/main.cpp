#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"

#include <cstdio>
#include <exception>
#include <fmt/format.h>
#include <new>

int main(int argc, char** argv) {
    benchcard::commands::hold_standard_streams();
    benchcard::commands::expect_failing_writes();
    try {
        return benchcard::commands::run(argc, argv);
    } catch (const std::bad_alloc&) {
        benchcard::commands::complain("benchcard: stopped, since there is not enough memory\n");
        return benchcard::commands::not_run;
    } catch (const std::exception& e) {
        benchcard::commands::complain(
            fmt::format("benchcard: stopped by a fault that is not the recipe's: {}\n", e.what()));
        return benchcard::commands::not_run;
    }
}
