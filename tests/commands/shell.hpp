#pragma once

#include <string>

namespace benchcard::program {

/// What another program says on standard output, run by the shell; its exit code in `code`.
std::string said_by(const std::string& command, int* code = nullptr);

} // namespace benchcard::program
