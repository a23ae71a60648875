#include "tidy_fault.hpp"

#include "examples.hpp"
#include "grammar/tidy.hpp"

#include <set>

namespace benchcard::language {

std::string fault_of_tidying(const std::string& text,
                             const std::map<std::string, std::string>& files) {
    const auto once = grammar::tidied(text);
    if (grammar::tidied(once) != once) return "it is put in order twice:\n" + once;
    const auto before = compile(text, files), after = compile(once, files);
    if (weights_text(before) != weights_text(after)) return "it weighs otherwise:\n" + once;
    std::multiset<std::string> kinds_before, kinds_after;
    for (const auto& m : before.messages) kinds_before.emplace(m.kind);
    for (const auto& m : after.messages) kinds_after.emplace(m.kind);
    if (kinds_before != kinds_after) return "other things are said of it:\n" + once;
    return "";
}

} // namespace benchcard::language
