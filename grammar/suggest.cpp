#include "grammar/suggest.hpp"

#include "grammar/nearest.hpp"
#include "grammar/recipe_rules.hpp"
#include "grammar/settings.hpp"

#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

namespace pegtl = tao::pegtl;

template <typename Rule> std::size_t length_matched(std::string_view text) {
    pegtl::memory_input<pegtl::tracking_mode::lazy> in(text.data(), text.data() + text.size(), "");
    if (!pegtl::parse<Rule>(in)) return 0;
    return static_cast<std::size_t>(in.current() - text.data());
}

template <typename Rule> bool is_wholly(std::string_view text) {
    return !text.empty() && length_matched<Rule>(text) == text.size();
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == text.npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// `*`, `•`, `–`, `—`, a dash without its blank, or `1)`: what people write before a step.
std::size_t bullet_length(std::string_view text) {
    struct bullet : pegtl::sor<pegtl::one<'*', '-'>, pegtl::utf8::one<0x2022, 0x2013, 0x2014, 0xB7, 0x25AA>> {};
    struct start : pegtl::seq<bullet, pegtl::star<pegtl::blank>> {};
    return length_matched<start>(text);
}

struct amount_with_unit
    : pegtl::seq<pegtl::opt<rules::about>, rules::counted, pegtl::star<pegtl::blank>, rules::filled_unit> {};

/// Where a weight or volume stands at the end of a line, as in `plain flour 200 g`; or npos.
std::size_t amount_at_end(std::string_view text) {
    for (auto i = text.find(' '); i != text.npos; i = text.find(' ', i + 1))
        if (is_wholly<amount_with_unit>(trimmed(text.substr(i)))) return i;
    return text.npos;
}

help replace_line(span where, std::string text, std::string_view why) {
    return {fmt::format("{}: `{}`", why, text), {edit{where, std::move(text)}}};
}

} // namespace

std::optional<help> suggest_line(std::string_view line, span where) {
    const auto text = trimmed(line);
    const auto first_word = text.substr(0, text.find_first_of(" \t:"));
    if (const auto* entry = setting_named(first_word); entry && first_word.size() < text.size())
        return replace_line(where, fmt::format("{}: {}", entry->word, trimmed(text.substr(first_word.size()))),
                            "a setting has a colon after its word");
    if (const auto bullet = bullet_length(text); bullet > 0 && bullet < text.size())
        return replace_line(where, fmt::format("- {}", text.substr(bullet)), "a step begins with a dash and a blank");
    if (const auto end = amount_at_end(text); end != text.npos)
        return replace_line(where, fmt::format("{}   {}", trimmed(text.substr(end)), trimmed(text.substr(0, end))),
                            "an ingredient line begins with its amount");
    if (text.find(' ') != text.npos)
        return help{fmt::format("if it is a step: `- {}`", text), {}};
    return std::nullopt;
}

std::vector<help> suggest_setting(std::string_view word, span word_where, std::string_view value,
                                  span line_where, block::sort in) {
    std::vector<help> result;
    if (is_wholly<amount_with_unit>(trimmed(value))) {
        result.push_back(replace_line(line_where, fmt::format("{}   {}", trimmed(value), word),
                                      "an ingredient line begins with its amount"));
        return result;
    }
    std::vector<std::string> here;
    for (const auto& entry : all_settings())
        if (entry.places & place_of(in) || opened_by(entry.name) != block::sort::before)
            here.emplace_back(entry.word);
    for (const auto& near : nearest(word, here, 1))
        result.push_back({fmt::format("the nearest setting is `{}:`", near), {edit{word_where, near}}});
    return result;
}

} // namespace benchcard::grammar
