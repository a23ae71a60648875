#pragma once

#include <string>
#include <vector>

namespace benchcard::fuzz {

/// The targets by their names, in the order in which they run.
const std::vector<std::string>& targets();

/// What a target begins with: texts of this project in the form that it takes.
struct seed {
    std::string name, bytes;
};
std::vector<seed> seeds_for(const std::string& target);

/// Inputs that once broke a target, of tests/fuzz/found/TARGET.
std::vector<seed> found_for(const std::string& target);

/// The words of the language, of styles and of the protocol, in the form in which a fuzzer takes
/// them: one a line in quotes.
std::string dictionary();

} // namespace benchcard::fuzz
