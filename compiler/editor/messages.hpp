#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

/// The base protocol: messages with a head that says how long they are, over two streams.
namespace benchcard::editor {

/// Takes messages off a stream, byte by byte as they come.
class message_reader {
  public:
    explicit message_reader(int from) : from_(from) {}
    /// The body of the next message; nothing at the end of the stream, or where what comes is no
    /// message.
    std::optional<std::string> next();

  private:
    int from_;
    std::string waiting_;

    bool read_more();
};

/// A message with its head, ready to be sent.
std::string framed(std::string_view body);

/// The same JSON without halves of surrogate pairs in its escapes, which no text can hold; each is
/// one U+FFFD, so that columns stay what they were.
std::string without_lone_surrogates(std::string_view body);

/// The JSON of a body, halves of surrogate pairs as above; nothing where it is none, or lies deeper
/// than any message does: what goes through JSON calls itself at each level.
std::optional<nlohmann::json> message_in(const std::string& body);

} // namespace benchcard::editor
