#include "grammar/parse.hpp"
#include "grammar/reading.hpp"

namespace benchcard::grammar {

namespace {

/// Reads one text that is not a file by a rule, with the same messages.
template <typename Rule> diagnostics read_alone(const source& text, scratch& s) {
    s.base = text.text().data();
    s.file = text.file();
    diagnostics messages;
    input in(text.text().data(), text.text().data() + text.text().size(), "");
    try {
        read<Rule>(in, s);
        if (!in.empty())
            throw line_error{"unexpected-words", "nothing more can stand here", in.current(),
                             in.current()};
    } catch (const line_error& e) {
        const auto end = e.begin == e.end ? text.text().data() + text.text().size() : e.end;
        messages.push_back({e.kind, severity::error, s.between(e.begin, end), e.message, {}, {}});
    }
    return messages;
}

} // namespace

parsed_line parse_ingredient_line(const source& text) {
    scratch s{};
    parsed_line result;
    result.messages = read_alone<rules::ingredient_line>(text, s);
    if (result.messages.empty()) result.line = std::move(s.line);
    return result;
}

parsed_yield parse_yield(const source& text) {
    scratch s{};
    parsed_yield result;
    result.messages = read_alone<rules::yield_value>(text, s);
    if (result.messages.empty()) result.made = std::move(s.made);
    return result;
}

std::optional<tin> parse_tin(const source& text) {
    scratch s{};
    if (!read_alone<rules::tin_value>(text, s).empty()) return std::nullopt;
    return std::get<tin>(std::move(*s.value_read));
}

std::optional<exact> parse_number(std::string_view text) {
    scratch s{};
    s.base = text.data();
    input in(text.data(), text.data() + text.size(), "");
    try {
        const bool whole = read<tao::pegtl::seq<rules::number, rules::end_of_line>>(in, s);
        if (whole && in.empty() && s.value > 0) return s.value;
        return std::nullopt;
    } catch (const line_error&) {
        return std::nullopt;
    }
}

} // namespace benchcard::grammar
