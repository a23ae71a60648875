#include "grammar/loose.hpp"

#include "grammar/loose_rules.hpp"

#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

namespace pegtl = tao::pegtl;

/// What stands before the ingredient, once it is written in figures, and where the rest begins.
struct beginning {
    std::string filled, number;
    std::string amount;
    std::size_t read = 0;
};

template <typename Rule> struct first_action : pegtl::nothing<Rule> {};

template <> struct first_action<loose::filled_how> {
    static void apply(const auto& in, beginning& b) { b.filled = in.string(); }
};
template <> struct first_action<loose::in_figures> {
    static void apply(const auto& in, beginning& b) { b.number = in.string(); }
};
template <> struct first_action<loose::filled_amount> {
    static void apply0(beginning& b) {
        b.amount = fmt::format("{} {}", b.number.empty() ? "1" : b.number, b.filled);
    }
};
template <> struct first_action<loose::bare_unit> {
    static void apply0(beginning& b) { b.amount = "1 "; }
};
template <> struct first_action<loose::quarter> {
    static void apply0(beginning& b) { b.amount = "1/4"; }
};
template <int N, char... C> struct first_action<loose::spelt<N, C...>> {
    static void apply0(beginning& b) { b.amount = std::to_string(N); }
};
template <> struct first_action<loose::beginning> {
    static void apply(const auto& in, beginning& b) { b.read = in.size(); }
};

/// The parts of a pasted line, in whichever of the forms it has.
struct pasted_parts {
    std::string amount, weight, count, size, volume, piece, thing, last, part, rest;
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

/// Keeps the text of a rule in one of the parts.
template <std::string pasted_parts::*Part> struct keep {
    static void apply(const auto& in, pasted_parts& p) { p.*Part = without_hyphen(in.string()); }
};
template <> struct action<loose::first_amount> : keep<&pasted_parts::amount> {};
template <> struct action<loose::metric_weight> : keep<&pasted_parts::weight> {};
template <> struct action<loose::other_weight> {
    // Where a line has both, the metric weight is the one that is read.
    static void apply(const auto& in, pasted_parts& p) {
        if (p.weight.empty()) p.weight = without_hyphen(in.string());
    }
};
template <> struct action<loose::how_many> : keep<&pasted_parts::count> {};
template <> struct action<loose::size> : keep<&pasted_parts::size> {};
template <> struct action<loose::volume> : keep<&pasted_parts::volume> {};
template <> struct action<loose::metric_volume> : keep<&pasted_parts::volume> {};
template <> struct action<loose::thing> {
    static void apply(const auto& in, pasted_parts& p) { p.thing = in.string(); }
};
template <> struct action<loose::name_before> {
    static void apply(const auto& in, pasted_parts& p) { p.thing = in.string(); }
};
template <> struct action<loose::piece> {
    static void apply(const auto& in, pasted_parts& p) { p.piece = in.string(); }
};
template <> struct action<loose::preparation_left> {
    static void apply(const auto& in, pasted_parts& p) { p.rest = in.string(); }
};
template <> struct action<loose::amount_last> : keep<&pasted_parts::last> {};
template <> struct action<loose::part_of_fruit> {
    static void apply(const auto& in, pasted_parts& p) { p.part = in.string(); }
};
template <> struct action<loose::rest> {
    static void apply(const auto& in, pasted_parts& p) { p.rest = in.string(); }
};
template <> struct action<loose::fruit> {
    static void apply(const auto& in, pasted_parts& p) { p.rest = in.string(); }
};

// What is left of a form that did not fit is forgotten.
template <> struct action<loose::new_form> {
    static void apply0(pasted_parts& p) { p = {}; }
};
template <> struct action<loose::with_size> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} x {} {}", p.count, p.size, p.rest);
    }
};
template <> struct action<loose::size_each> : action<loose::with_size> {};
template <> struct action<loose::weight_first> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} = {} {}", p.volume, p.weight, p.rest);
    }
};
template <> struct action<loose::volume_first> : action<loose::weight_first> {};
template <> struct action<loose::two_weights> {
    static void apply0(pasted_parts& p) { p.line = fmt::format("{} {}", p.weight, p.rest); }
};
template <> struct action<loose::with_weight> {
    static void apply0(pasted_parts& p) {
        const auto piece = p.piece.empty() ? "" : " " + p.piece;
        p.line = fmt::format("{}{} = {} {}", p.amount, piece, p.weight, p.rest);
    }
};
template <> struct action<loose::in_metric> {
    static void apply0(pasted_parts& p) { p.line = fmt::format("{} {}", p.volume, p.rest); }
};
template <> struct action<loose::weight_last> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} = {} {}{}", p.amount, p.weight, p.thing, p.rest);
    }
};
template <> struct action<loose::volume_last> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} = {} {}{}", p.volume, p.weight, p.thing, p.rest);
    }
};
template <> struct action<loose::behind> {
    static void apply0(pasted_parts& p) { p.line = fmt::format("{} {}", p.last, p.thing); }
};
template <> struct action<loose::from_fruit> {
    static void apply0(pasted_parts& p) {
        p.line = fmt::format("{} {} {}", p.amount, p.rest, p.part);
    }
};

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    if (first == text.npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t\r") - first + 1));
}

using input = pegtl::memory_input<pegtl::tracking_mode::lazy>;

/// Whether a text begins as a rule says; not where its number breaks off, as `1/` does.
template <typename Rule, template <typename...> typename Action, typename State>
bool reads(const std::string& text, State& state) {
    input in(text.data(), text.data() + text.size(), "");
    try {
        return pegtl::parse<Rule, Action>(in, state);
    } catch (const pegtl::parse_error&) {
        return false;
    }
}

/// The line with its amount in figures and at its beginning.
std::string in_figures(const std::string& text) {
    beginning b;
    if (!reads<loose::first_look, first_action>(text, b)) return text;
    return trimmed(b.amount + text.substr(b.read));
}

} // namespace

std::string as_ingredient_line(std::string_view pasted) {
    const auto text = in_figures(trimmed(pasted));
    pasted_parts parts;
    if (!reads<loose::form, action>(text, parts)) return text;
    return trimmed(parts.line.empty() ? parts.rest : parts.line);
}

} // namespace benchcard::grammar
