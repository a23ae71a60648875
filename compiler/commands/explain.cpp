#include "compiler/commands/commands.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "compiler/diagnostics/kinds.hpp"
#include "compiler/diagnostics/pages.hpp"
#include "grammar/nearest.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// A kind as it may be copied out of a message: `[mix-too-small]`.
std::string without_brackets(const std::string& kind) {
    if (kind.size() < 2 || !kind.starts_with('[') || !kind.ends_with(']')) return kind;
    return kind.substr(1, kind.size() - 2);
}

/// The nearest names, or else those that the word is part of.
std::vector<std::string> kinds_near(const std::string& word) {
    std::vector<std::string> names, holding;
    for (const auto& k : diagnostics::all_kinds()) {
        names.emplace_back(k.name);
        if (word.size() > 2 && names.back().find(word) != word.npos)
            holding.push_back(names.back());
    }
    auto near = grammar::nearest(word, names, 3);
    return near.empty() ? holding : near;
}

wrong_line unknown_kind(const std::string& word) {
    wrong_line wrong{fmt::format("there is no kind of message called `{}`", word), {}};
    for (const auto& name : kinds_near(word)) wrong.helps.push_back("one near it: `" + name + "`");
    wrong.helps.push_back("all of them: benchcard explain");
    return wrong;
}

} // namespace

int explain(const explain_options& options) {
    std::string text = options.kinds.empty() ? diagnostics::list_of_kinds() : "";
    for (const auto& given : options.kinds) {
        const auto kind = without_brackets(given);
        if (!diagnostics::kind_named(kind)) throw unknown_kind(kind);
        text += (text.empty() ? "" : "\n\n") + diagnostics::explained(kind);
    }
    if (const auto failure = write_file("-", text)) {
        complain(fmt::format("benchcard: {}\n", *failure));
        return not_run;
    }
    return done;
}

} // namespace benchcard::commands
