#include "grammar/readable.hpp"

#include "grammar/limits.hpp"
#include "grammar/source.hpp"

#include <cstdint>
#include <cstring>
#include <fmt/format.h>

namespace benchcard::grammar {

namespace {

using eight_bytes = std::uint64_t;
constexpr eight_bytes each(unsigned char byte) { return eight_bytes{0x0101'0101'0101'0101} * byte; }

/// Not 0 where a byte is below a blank or above `~`: the highest bit is set in the byte itself, in
/// what is left when a blank is taken from it, or when one is added. (Where a carry or a borrow
/// would set it in the next byte, this one has set it before.)
constexpr eight_bytes strange(eight_bytes b) {
    return (b | (b - each(' ')) | (b + each(0x80 - '\x7F'))) & each(0x80);
}

/// Whether a line holds nothing but what a typewriter has, as most do.
bool is_plain(std::string_view line) {
    eight_bytes found = 0;
    for (; line.size() >= sizeof found; line.remove_prefix(sizeof found)) {
        eight_bytes part = 0;
        std::memcpy(&part, line.data(), sizeof part);
        found |= strange(part);
    }
    auto last = each(' ');
    std::memcpy(&last, line.data(), line.size());
    return (found | strange(last)) == 0;
}

/// The first control character in a line, or npos.
std::size_t first_control(std::string_view line) {
    for (std::size_t i = 0; i < line.size(); ++i) {
        const auto c = static_cast<unsigned char>(line[i]);
        if ((c < 0x20 && c != '\t') || c == 0x7F) return i;
    }
    return line.npos;
}

diagnostic error(std::string_view kind, span where, std::string message,
                 std::vector<help> helps = {}) {
    return {kind, severity::error, where, std::move(message), {}, std::move(helps)};
}

span at_byte(span line, std::size_t byte, std::uint32_t length) {
    const auto begin = line.begin + static_cast<std::uint32_t>(byte);
    return {line.file, begin, begin + length};
}

} // namespace

std::optional<diagnostic> unreadable(std::string_view line, span where) {
    if (line.size() > limits::line_bytes)
        return error("line-too-long", at_byte(where, 0, 0),
                     fmt::format("this line is {} bytes long; at most {} can be read", line.size(),
                                 limits::line_bytes),
                     {{"break it into steps, or go on in a line below that is indented", {}}});
    if (is_plain(line)) return std::nullopt;
    if (const auto bad = first_not_utf8(line); bad != line.npos) {
        const auto at = at_byte(where, bad, 1);
        return error("not-utf8", at,
                     fmt::format("this is not UTF-8 text: byte {} of the file is {:02X} "
                                 "hexadecimal",
                                 at.end, static_cast<unsigned char>(line[bad])),
                     {{"save the file as UTF-8", {}}});
    }
    if (const auto bad = first_control(line); bad != line.npos) {
        const auto at = at_byte(where, bad, 1);
        return error("control-character", at,
                     fmt::format("a control character stands here (U+{:04X})",
                                 static_cast<unsigned char>(line[bad])),
                     {{"take it out", {edit{at, ""}}}});
    }
    if (const auto pile = first_pile(line, limits::code_points_of_a_character);
        pile.begin != line.npos)
        return error("too-many-marks", at_byte(where, pile.begin, 0),
                     fmt::format("this character is made of {} code points; at most {} can be "
                                 "printed",
                                 pile.code_points, limits::code_points_of_a_character));
    return std::nullopt;
}

} // namespace benchcard::grammar
