#include "shell.hpp"

#include <catch2/catch.hpp>
#include <cstdio>
#include <sys/wait.h>

namespace benchcard::program {

std::string said_by(const std::string& command, int* code) {
    FILE* pipe = ::popen(command.c_str(), "r");
    REQUIRE(pipe);
    std::string said;
    char buffer[4096];
    while (const auto count = std::fread(buffer, 1, sizeof buffer, pipe))
        said.append(buffer, count);
    const int status = ::pclose(pipe);
    if (code) *code = WEXITSTATUS(status);
    return said;
}

} // namespace benchcard::program
