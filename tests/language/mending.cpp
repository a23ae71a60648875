#include "mending.hpp"

#include "compiler/commands/fixes.hpp"
#include "examples.hpp"

#include <algorithm>

namespace benchcard::language {

namespace {

auto errors_in(const grammar::diagnostics& messages) {
    return std::count_if(messages.begin(), messages.end(),
                         [](auto& m) { return m.level == grammar::severity::error; });
}

} // namespace

mending mended_twice(const std::string& text, const std::map<std::string, std::string>& files) {
    const auto read = reader_of(files);
    const auto m = commands::mend("a.recipe", text, measures::system::unstated, read);
    const auto before = compile(text, files), after = compile(m.text, files);
    const auto fault = [&](const char* what) {
        return mending{m.repairs.size(),
                       std::string(what) + ":\n" + text + "---\n" + m.text + messages_text(after)};
    };
    if (m.repairs.empty() && m.text != text) return fault("nothing was mended, and it changed");
    if (errors_in(after.messages) > errors_in(before.messages)) return fault("it has more errors");
    if (errors_in(before.messages) == 0 && weights_text(after) != weights_text(before))
        return fault("it weighs otherwise");
    if (!commands::mend("a.recipe", m.text, measures::system::unstated, read).repairs.empty())
        return fault("there is more to mend");
    return {m.repairs.size(), ""};
}

} // namespace benchcard::language
