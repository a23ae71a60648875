#include "compiler/editor/messages.hpp"

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <charconv>
#include <fmt/format.h>
#include <unistd.h>

namespace benchcard::editor {

namespace {

constexpr std::size_t longest_head = 8192;
constexpr std::size_t longest_body = 1 << 24;
constexpr int deepest_message = 100;

/// What `Content-Length:` says, in whatever case it is written.
std::optional<std::size_t> length_in(std::string head) {
    std::transform(head.begin(), head.end(), head.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    constexpr std::string_view name = "content-length:";
    auto at = head.find(name);
    if (at == head.npos) return std::nullopt;
    at = head.find_first_not_of(" \t", at + name.size());
    if (at == head.npos) return std::nullopt;
    std::size_t length = 0;
    const auto read = std::from_chars(head.data() + at, head.data() + head.size(), length);
    if (read.ec != std::errc() || length > longest_body) return std::nullopt;
    return length;
}

/// The value of `\uXXXX` at the beginning of a text, or nothing.
std::optional<unsigned> escape_at(std::string_view text) {
    unsigned value = 0;
    if (text.size() < 6 || text[0] != '\\' || text[1] != 'u') return std::nullopt;
    const auto read = std::from_chars(text.data() + 2, text.data() + 6, value, 16);
    return read.ptr == text.data() + 6 ? std::optional(value) : std::nullopt;
}

/// Nothing where it is no JSON, or too deep.
std::optional<nlohmann::json> parsed(const std::string& body) {
    using nlohmann::json;
    bool is_deep = false;
    const auto is_kept = [&](int depth, json::parse_event_t, json&) {
        is_deep = is_deep || depth > deepest_message;
        return !is_deep;
    };
    auto message = json::parse(body, is_kept, false);
    if (message.is_discarded() || is_deep) return std::nullopt;
    return message;
}

} // namespace

bool message_reader::read_more() {
    char buffer[1 << 16];
    while (true) {
        const auto count = ::read(from_, buffer, sizeof buffer);
        if (count < 0 && errno == EINTR) continue;
        if (count <= 0) return false;
        waiting_.append(buffer, static_cast<std::size_t>(count));
        return true;
    }
}

std::optional<std::string> message_reader::next() {
    constexpr std::string_view end_of_head = "\r\n\r\n";
    std::size_t end = 0;
    while ((end = waiting_.find(end_of_head)) == waiting_.npos)
        if (waiting_.size() > longest_head || !read_more()) return std::nullopt;
    const auto length = length_in(waiting_.substr(0, end));
    if (!length) return std::nullopt;
    const auto begin = end + end_of_head.size();
    while (waiting_.size() < begin + *length)
        if (!read_more()) return std::nullopt;
    auto body = waiting_.substr(begin, *length);
    waiting_.erase(0, begin + *length);
    return body;
}

std::string framed(std::string_view body) {
    return fmt::format("Content-Length: {}\r\n\r\n{}", body.size(), body);
}

std::string without_lone_surrogates(std::string_view body) {
    std::string result;
    for (std::size_t i = 0; i < body.size();) {
        const auto code = escape_at(body.substr(i));
        if (!code && body[i] == '\\' && i + 1 < body.size()) {
            result += body.substr(i, 2); // an escaped backslash begins no escape
            i += 2;
        } else if (!code) {
            result += body[i++];
        } else {
            const auto after = escape_at(body.substr(std::min(body.size(), i + 6)));
            const bool is_pair =
                *code >= 0xD800 && *code < 0xDC00 && after && *after >= 0xDC00 && *after < 0xE000;
            const bool is_half = *code >= 0xD800 && *code < 0xE000;
            result += is_pair ? body.substr(i, 12) : is_half ? "\\ufffd" : body.substr(i, 6);
            i += is_pair ? 12 : 6;
        }
    }
    return result;
}

std::optional<nlohmann::json> message_in(const std::string& body) {
    const auto message = parsed(body);
    return message ? message : parsed(without_lone_surrogates(body));
}

} // namespace benchcard::editor
