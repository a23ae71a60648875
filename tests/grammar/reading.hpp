#pragma once

#include "grammar/parse.hpp"

#include <fmt/format.h>
#include <string>
#include <vector>

/// A text and what reading it gave, for tests.
namespace benchcard::grammar {

struct reading {
    source text;
    parsed result;

    explicit reading(std::string bytes)
        : text(0, "a.recipe", std::move(bytes)), result(parse(text)) {}

    /// `2:5 unreadable-amount` for each message.
    std::vector<std::string> messages() const {
        std::vector<std::string> all;
        for (const auto& m : result.messages) {
            const auto at = text.at(m.where.begin);
            all.push_back(fmt::format("{}:{} {}", at.line, at.column, m.kind));
        }
        return all;
    }

    /// All nodes of one kind, in the order of the text.
    template <typename Node> std::vector<const Node*> all() const {
        std::vector<const Node*> nodes;
        for (const auto& b : result.tree.blocks)
            for (const auto& i : b.items)
                if (const auto* node = std::get_if<Node>(&i.value)) nodes.push_back(node);
        return nodes;
    }
    template <typename Node> const Node& only() const { return *all<Node>().at(0); }
    std::string at(span where) const { return std::string(text.text_of(where)); }
};

} // namespace benchcard::grammar
