#include "grammar/loose.hpp"

#include "grammar/loose_rules.hpp"

#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

namespace pegtl = tao::pegtl;

/// The parts of a pasted line, in whichever of the forms it has.
struct pasted_parts {
    std::string amount, weight, count, size, thing, last, rest;
    std::string line;
};

/// `14-ounce` is `14 ounce`.
std::string without_hyphen(std::string size) {
    const auto hyphen = size.find('-');
    const bool before_letter = hyphen != size.npos && hyphen + 1 < size.size() &&
                               (size[hyphen + 1] < '0' || size[hyphen + 1] > '9');
    if (before_letter) size[hyphen] = ' ';
    return size;
}

template <typename Rule> struct action : pegtl::nothing<Rule> {};

template <> struct action<loose::first_amount> {
    static void apply(const auto& in, pasted_parts& p) { p.amount = in.string(); }
};
template <> struct action<loose::weight> {
    static void apply(const auto& in, pasted_parts& p) { p.weight = without_hyphen(in.string()); }
};
template <> struct action<loose::how_many> {
    static void apply(const auto& in, pasted_parts& p) { p.count = in.string(); }
};
template <> struct action<loose::size> {
    static void apply(const auto& in, pasted_parts& p) { p.size = without_hyphen(in.string()); }
};
template <> struct action<loose::thing> {
    static void apply(const auto& in, pasted_parts& p) { p.thing = in.string(); }
};
template <> struct action<loose::amount_last> {
    static void apply(const auto& in, pasted_parts& p) { p.last = in.string(); }
};
template <> struct action<loose::rest> {
    static void apply(const auto& in, pasted_parts& p) { p.rest = in.string(); }
};
template <> struct action<loose::with_weight> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} = {} {}", p.amount, p.weight, p.rest);
    }
};
template <> struct action<loose::with_size> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} x {} {}", p.count, p.size, p.rest);
    }
};
template <> struct action<loose::behind> {
    static void apply0(pasted_parts& p) { p.line = fmt::format("{} {}", p.last, p.thing); }
};

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    if (first == text.npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t\r") - first + 1));
}

} // namespace

std::string as_ingredient_line(std::string_view pasted) {
    const auto text = trimmed(pasted);
    pasted_parts parts;
    pegtl::memory_input<pegtl::tracking_mode::lazy> in(text.data(), text.data() + text.size(), "");
    if (!pegtl::parse<loose::line, action>(in, parts)) return text;
    return trimmed(parts.line.empty() ? parts.rest : parts.line);
}

} // namespace benchcard::grammar
