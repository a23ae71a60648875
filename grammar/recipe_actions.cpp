#include "grammar/recipe_actions.hpp"

#include "grammar/limits.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// Makes each run of blanks one; most texts have none.
void make_blanks_one(std::string& text) {
    if (text.find("  ") == text.npos && text.find('\t') == text.npos) return;
    std::replace(text.begin(), text.end(), '\t', ' ');
    const auto both_blank = [](char a, char b) { return a == ' ' && b == ' '; };
    text.erase(std::unique(text.begin(), text.end(), both_blank), text.end());
}

/// At most as many digits as a machine word holds.
std::int64_t digits_as_number(std::string_view digits) {
    std::int64_t value = 0;
    for (char c : digits) value = value * 10 + (c - '0');
    return value;
}

} // namespace

words words_between(const scratch& s, const char* begin, const char* end) {
    while (begin < end && is_blank(*begin)) ++begin;
    while (begin < end && is_blank(end[-1])) --end;
    words result{std::string(begin, end), s.between(begin, end)};
    make_blanks_one(result.text);
    return result;
}

exact number_of(std::string_view digits) {
    if (digits.size() > limits::digits)
        throw line_error{"number-too-large",
                         fmt::format("this number has {} digits; in a recipe one has at most {}",
                                     digits.size(), limits::digits),
                         digits.begin(), digits.end()};
    return digits_as_number(digits);
}

exact denominator_of(std::string_view digits) {
    const auto below = number_of(digits);
    if (below == 0)
        throw line_error{"zero-denominator", "a fraction cannot have 0 below the line",
                         digits.begin(), digits.end()};
    if (below > limits::parts_of_a_fraction)
        throw line_error{"number-too-large",
                         fmt::format("this fraction is of {} parts; at most {} can be measured",
                                     digits, limits::parts_of_a_fraction),
                         digits.begin(), digits.end()};
    return below;
}

exact decimals_of(std::string_view digits) {
    if (digits.size() > limits::decimals)
        throw line_error{"number-too-large",
                         fmt::format("this number has {} decimals; in a recipe one has at most {}",
                                     digits.size(), limits::decimals),
                         digits.begin(), digits.end()};
    std::int64_t power = 1;
    for (std::size_t i = 0; i < digits.size(); ++i) power *= 10;
    return {digits_as_number(digits), power};
}

length length_of(const scratch& s) {
    length result;
    result.in = s.length_in;
    auto side = s.quantity;
    if (side.packs) {
        auto first = side;
        first.low = first.high = *side.packs;
        first.packs.reset();
        result.sides.push_back(first);
        side.packs.reset();
    }
    result.sides.push_back(side);
    return result;
}

void add_words(scratch& s, span where, std::string_view text) {
    // Text that stands for something else (a line's end, an escape) is kept apart, so that the
    // places in the others are those of the file.
    const auto is_itself = [](const words& w) {
        return w.text.size() == w.where.end - w.where.begin;
    };
    words more{std::string(text), where};
    auto* last = s.method.parts.empty() ? nullptr : std::get_if<words>(&s.method.parts.back());
    if (last && is_itself(*last) && is_itself(more)) {
        last->text += text;
        last->where.end = where.end;
    } else {
        constexpr std::size_t usual_parts = 8;
        if (s.method.parts.empty()) s.method.parts.reserve(usual_parts);
        s.method.parts.emplace_back(std::move(more));
    }
}

void add_fold(scratch& s, span where) {
    if (!s.prose.empty() && !s.prose.ends_with(' ')) s.prose += ' ';
    if (s.method.parts.empty()) return;
    const auto* last = std::get_if<words>(&s.method.parts.back());
    if (!last || !last->text.ends_with(' ')) add_words(s, where, " ");
}

} // namespace benchcard::grammar
