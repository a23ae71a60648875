#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::grammar {

/// A stretch of one file's text: byte offsets, `end` just past the last byte.
struct span {
    std::uint32_t file = 0;
    std::uint32_t begin = 0;
    std::uint32_t end = 0;

    bool operator==(const span&) const = default;
};

/// A place as a person counts it: both from 1, columns in characters (code points), not bytes.
struct position {
    std::size_t line = 1;
    std::size_t column = 1;

    bool operator==(const position&) const = default;
};

/// One file's text and where its lines begin. A byte order mark at the start is taken off, so
/// offsets count from the first character a person sees.
class source {
  public:
    source(std::uint32_t file, std::string name, std::string bytes);

    std::uint32_t file() const { return file_; }
    const std::string& name() const { return name_; }
    std::string_view text() const { return text_; }

    /// Where byte `offset` stands; past the end it is the end.
    position at(std::size_t offset) const;
    /// Lines there are; a text without any has one, empty.
    std::size_t line_count() const { return starts_.size(); }
    /// Line `number` (from 1) without its line end; empty when there is no such line.
    std::string_view line(std::size_t number) const;
    /// The byte at which line `number` (from 1) begins.
    std::size_t line_start(std::size_t number) const { return starts_.at(number - 1); }
    /// The text a span covers.
    std::string_view text_of(span where) const;

  private:
    std::uint32_t file_;
    std::string name_;
    std::string text_;
    std::vector<std::size_t> starts_;
};

/// The byte at which the first byte that is not UTF-8 stands, or npos.
std::size_t first_not_utf8(std::string_view bytes);

/// Where a character as a person sees it (an extended grapheme cluster, UAX #29) is made of more
/// code points than `most`, such as a letter under a pile of accents: the byte at which it begins,
/// and how many they are. For UTF-8 text; npos where there is none.
struct pile {
    std::size_t begin = 0;
    std::size_t code_points = 0;
};
pile first_pile(std::string_view text, std::size_t most);

/// Characters (code points) in a text; a byte that is not UTF-8 counts as one.
std::size_t count_characters(std::string_view text);

} // namespace benchcard::grammar
