#pragma once

#include "compiler/commands/compile.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <memory>
#include <string>
#include <vector>

/// Recipes from texts, for tests.
namespace benchcard::testing {

using files = std::map<std::string, std::string>;

/// A text compiled as if it stood in `main.recipe`, beside these other files.
inline std::unique_ptr<commands::compiled> compiled(const std::string& text,
                                                    const files& others = {}) {
    return commands::compile_text(
        "main.recipe", text, measures::system::unstated, [&](const std::string& path) {
            const auto found = others.find(path);
            return found == others.end() ? recipe::file_text{false, "", "no such file"}
                                         : recipe::file_text{true, found->second, ""};
        });
}

/// The kinds of all messages, in the order of the text.
inline std::vector<std::string> kinds_of(const commands::compiled& c) {
    std::vector<std::string> kinds;
    for (const auto& m : c.messages) kinds.emplace_back(m.kind);
    return kinds;
}

using kinds = std::vector<std::string>;

/// The first message of a kind; fails the test when there is none.
inline const grammar::diagnostic& message(const commands::compiled& c, const std::string& kind) {
    const auto found = std::find_if(c.messages.begin(), c.messages.end(),
                                    [&](const auto& m) { return m.kind == kind; });
    INFO("a message of the kind " << kind);
    REQUIRE(found != c.messages.end());
    return *found;
}

/// Every note and help of a message, a line each.
inline std::string remarks_of(const grammar::diagnostic& m) {
    std::string result;
    for (const auto& n : m.notes) result += n.text + "\n";
    for (const auto& h : m.helps) result += h.text + "\n";
    return result;
}

inline const recipe::component& component_of(const commands::compiled& c,
                                             const std::string& title) {
    const auto& all = c.meaning.components;
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.title == title; });
    INFO("a component called " << title);
    REQUIRE(found != all.end());
    return *found;
}

/// A recipe of one component that holds these lines, with a head of these settings.
inline std::string with_lines(const std::string& lines, const std::string& head = "") {
    return "recipe: Test\n" + head + "\ncomponent: Mix\n" + lines + "\n";
}

/// What the one line of a component weighs; nothing where it is not known.
inline std::optional<recipe::spread> weight_of_line(const std::string& line,
                                                    const std::string& head = "") {
    const auto c = compiled(with_lines(line, head));
    REQUIRE(c->meaning.components.size() == 1);
    REQUIRE(c->meaning.components.front().lines.size() == 1);
    return c->meaning.components.front().lines.front().grams;
}

/// The same in grams, as it is reckoned with; fails the test where it is not known.
inline exact grams_of(const std::string& line, const std::string& head = "") {
    const auto weight = weight_of_line(line, head);
    INFO(line);
    REQUIRE(weight);
    return weight->used;
}

} // namespace benchcard::testing
