#pragma once

#include <cstdio>
#include <fmt/format.h>
#include <stdexcept>
#include <string>

namespace benchcard::testing {

/// What GNU units (Debian package `units`, its database 3.15) converts an expression to. Throws
/// where the program is missing or does not know it, so that either is a red test.
inline double gnu_units(const std::string& from, const std::string& to) {
    const auto command = fmt::format("env -u UNITSFILE -u MYUNITSFILE LC_ALL=C UNITS_ENGLISH=US "
                                     "units -t -o %.16g '{}' '{}' 2>&1",
                                     from, to);
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) throw std::runtime_error("cannot run " + command);
    std::string text;
    char buffer[256];
    while (const std::size_t size = std::fread(buffer, 1, sizeof buffer, pipe))
        text.append(buffer, size);
    if (pclose(pipe) != 0) throw std::runtime_error(command + " failed: " + text);
    std::size_t used = 0;
    const double value = std::stod(text, &used);
    if (text.find_first_not_of(" \n", used) != std::string::npos)
        throw std::runtime_error("units said: " + text);
    return value;
}

} // namespace benchcard::testing
