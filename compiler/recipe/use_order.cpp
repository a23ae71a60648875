#include "compiler/recipe/use_order.hpp"

#include "compiler/recipe/scope.hpp"
#include "grammar/limits.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::recipe {

namespace {

enum class progress { not_seen, followed, placed };

grammar::diagnostic circle_at(const line& l, std::size_t used,
                              const std::vector<std::size_t>& chain,
                              const std::vector<component>& made) {
    auto message = error_at("circular-components", l.written->names.front().where,
                            "these components are made of each other in a circle");
    std::string circle;
    for (auto i = std::find(chain.begin(), chain.end(), used); i != chain.end(); ++i)
        circle += made[*i].title + " uses ";
    message.notes.push_back({circle + made[used].title, {}});
    return message;
}

/// Adds a component, and before it all that it uses; false where they use each other in a circle.
bool place(std::size_t start, const std::vector<component>& made, std::vector<progress>& state,
           std::vector<std::size_t>& order, grammar::diagnostics& to) {
    // A chain of components may be long; a stack of our own does not run out.
    struct frame {
        std::size_t index, next;
    };
    if (state[start] == progress::placed) return true;
    std::vector<frame> stack{{start, 0}};
    state[start] = progress::followed;
    std::vector<std::size_t> chain{start};
    while (!stack.empty()) {
        auto& top = stack.back();
        const auto& lines = made[top.index].lines;
        while (top.next < lines.size() && !lines[top.next].component) ++top.next;
        if (top.next == lines.size()) {
            state[top.index] = progress::placed;
            order.push_back(top.index);
            stack.pop_back();
            chain.pop_back();
            continue;
        }
        const auto& l = lines[top.next++];
        const auto used = *l.component;
        if (state[used] == progress::followed) {
            to.push_back(circle_at(l, used, chain, made));
            return false;
        }
        if (state[used] == progress::placed) continue;
        state[used] = progress::followed;
        chain.push_back(used);
        stack.push_back({used, 0});
    }
    return true;
}

/// Says where components are made of one another in too long a chain; false then. Amounts that are
/// divided and multiplied all along it would have thousands of digits.
bool is_shallow(const std::vector<std::size_t>& order, const std::vector<component>& made,
                grammar::diagnostics& to) {
    std::vector<std::size_t> depth(made.size(), 1);
    for (const auto i : order)
        for (const auto& l : made[i].lines) {
            if (!l.component) continue;
            depth[i] = std::max(depth[i], depth[*l.component] + 1);
            if (depth[i] <= grammar::limits::components_in_a_chain) continue;
            to.push_back(error_at(
                "too-deep", l.written->names.front().where,
                fmt::format("this is the end of a chain of {} components that are made of one "
                            "another; at most {} can be reckoned",
                            depth[i], grammar::limits::components_in_a_chain)));
            return false;
        }
    return true;
}

} // namespace

std::vector<std::size_t> order_by_use(const std::vector<component>& made, std::size_t wanted,
                                      grammar::diagnostics& to) {
    std::vector<std::size_t> order;
    std::vector<progress> state(made.size(), progress::not_seen);
    for (std::size_t i = 0; i < wanted; ++i)
        if (!place(i, made, state, order, to)) return {};
    if (!is_shallow(order, made, to)) return {};
    return order;
}

} // namespace benchcard::recipe
