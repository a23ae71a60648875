#pragma once

#include "styles/style.hpp"

#include <string>
#include <string_view>
#include <tao/pegtl.hpp>
#include <vector>

/// What a style file's lines and their values are read with.
namespace benchcard::styles {

/// A stretch of text found by a rule.
struct found {
    std::string text;
    std::size_t at = 0; ///< bytes from the start of what was parsed
};

/// What rules find in a text. The actions for each kind of state are specialisations of this.
template <typename Rule> struct style_action : tao::pegtl::nothing<Rule> {};
template <typename In> found taken(const In& in) { return {in.string(), in.position().byte}; }

template <typename Rule, typename State> bool matches(std::string_view text, State& state) {
    tao::pegtl::memory_input in(text.data(), text.size(), "");
    return tao::pegtl::parse<Rule, style_action>(in, state);
}

/// A style as far as it is read.
struct reading {
    style made;
    grammar::diagnostics& messages;
};

/// What a setting's value is read with: its text, and where that stands.
struct value_at {
    const std::string& text;
    grammar::span where;
};

void report(reading& r, std::string_view kind, grammar::span where, std::string message,
            std::string help = {});

/// A word that is none of those there are: names the nearest, or all of them.
void report_word(reading& r, std::string_view kind, grammar::span where, std::string message,
                 const std::string& word, const std::vector<std::string>& candidates);

/// Reads the value of a setting; whether there is a setting of that name.
bool read_setting(reading& r, const std::string& name, const value_at& value);

/// The name of a part of a card, as style files have it.
std::string_view name_of(block part);

} // namespace benchcard::styles
