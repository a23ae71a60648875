#include "compiler/commands/depfile.hpp"

#include "compiler/commands/pdf_file.hpp"

#include <set>

namespace benchcard::commands {

namespace {

/// A name as it stands in a rule: a blank, a `#` and a `$` would mean something there.
std::string escaped(const std::string& name) {
    std::string result;
    for (const auto c : name) {
        if (c == ' ' || c == '#') result += '\\';
        if (c == '$') result += '$';
        result += c;
    }
    return result;
}

} // namespace

std::string rules_of(const std::vector<dependence>& all) {
    std::string result;
    for (const auto& d : all) {
        result += escaped(d.output) + ":";
        std::set<std::string> said;
        for (const auto& input : d.inputs)
            if (said.insert(input).second) result += " " + escaped(input);
        result += "\n";
    }
    return result;
}

std::vector<std::string> names_of(const std::vector<grammar::source>& sources,
                                  const std::string& style) {
    std::vector<std::string> result;
    for (const auto& s : sources) result.push_back(s.name());
    if (is_path(style)) result.push_back(style);
    return result;
}

} // namespace benchcard::commands
