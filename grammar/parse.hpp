#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/source.hpp"
#include "grammar/tree.hpp"

namespace benchcard::grammar {

struct parsed {
    grammar::tree tree;
    diagnostics messages;
};

/// Reads a recipe. Never fails: a line that cannot be read is kept as `unread`, with a message
/// that says what was expected there, and reading goes on with the next line. Messages are in
/// the order of the text.
parsed parse(const source& text);

/// One amount with its ingredient, read as a line of a component would be; for `convert`.
/// The text must outlive nothing: spans are into `text`.
struct parsed_line {
    std::optional<ingredient_line> line;
    diagnostics messages;
};
parsed_line parse_ingredient_line(const source& text);

/// One yield, as after `makes:`: `48 tarts`.
struct parsed_yield {
    std::optional<yield> made;
    diagnostics messages;
};
parsed_yield parse_yield(const source& text);

/// One tin, as after `tin:`: `20 cm round`; nothing where the text is more or less than that.
std::optional<tin> parse_tin(const source& text);

/// One number, as in an amount: `2`, `1/2`, `1½`, `0.75`; nothing where the text is more or less
/// than that, or the number is 0.
std::optional<exact> parse_number(std::string_view text);

/// Every kind of message that reading a file can give.
const std::vector<kind_entry>& parse_kinds();

} // namespace benchcard::grammar
