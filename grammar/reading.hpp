#pragma once

#include "grammar/recipe_actions.hpp"
#include "grammar/recipe_errors.hpp"

/// How a text is read by a rule: with its actions, and with what is said where it had to match.
namespace benchcard::grammar {

/// Places are reckoned from the text's own bytes, so PEGTL need not track them.
using input = tao::pegtl::memory_input<tao::pegtl::tracking_mode::lazy>;

/// A rule that had to match and did not ends the line, with what was expected.
template <typename Rule> struct recipe_control : tao::pegtl::normal<Rule> {
    template <typename Input, typename... States>
    [[noreturn]] static void raise(const Input& in, States&&...) {
        static_assert(!expected<Rule>.kind.empty(), "say in recipe_errors.hpp what is expected");
        throw line_error{expected<Rule>.kind, std::string(expected<Rule>.text), in.current(),
                         in.current()};
    }
};

/// Reads what a rule says, into the scratch pad. Throws `line_error` where it cannot be read.
template <typename Rule> bool read(input& in, scratch& s) {
    return tao::pegtl::parse<Rule, action, recipe_control>(in, s);
}

} // namespace benchcard::grammar
