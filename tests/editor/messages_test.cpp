#include "compiler/editor/messages.hpp"

#include <catch2/catch.hpp>
#include <unistd.h>

using namespace benchcard::editor;

namespace {

/// What a reader makes of some bytes that come in two parts.
std::vector<std::string> read_from(const std::string& bytes, std::size_t first_part) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    REQUIRE(::write(ends[1], bytes.data(), first_part) == static_cast<ssize_t>(first_part));
    const auto rest = bytes.size() - first_part;
    REQUIRE(::write(ends[1], bytes.data() + first_part, rest) == static_cast<ssize_t>(rest));
    ::close(ends[1]);
    message_reader reader(ends[0]);
    std::vector<std::string> result;
    while (auto body = reader.next()) result.push_back(*body);
    ::close(ends[0]);
    return result;
}

} // namespace

TEST_CASE("messages are told apart by their lengths, however they come", "[editor]") {
    const auto bytes = framed("{\"é\":1}") +
                       "Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n"
                       "content-length:2\r\n\r\n{}" +
                       framed("");
    for (std::size_t part = 0; part <= bytes.size(); ++part)
        CHECK(read_from(bytes, part) == std::vector<std::string>{"{\"é\":1}", "{}", ""});
    CHECK(framed("é") == "Content-Length: 2\r\n\r\né");
}

TEST_CASE("what is no message ends the reading", "[editor]") {
    CHECK(read_from("Content-Length: 5\r\n\r\n{}", 3).empty());
    CHECK(read_from("Content-Size: 2\r\n\r\n{}", 3).empty());
    CHECK(read_from("Content-Length: x\r\n\r\n{}", 3).empty());
    CHECK(read_from("Content-Length: 99999999999999999999\r\n\r\n{}", 3).empty());
    CHECK(read_from(std::string(20'000, 'x'), 3).empty());
}

TEST_CASE("half a surrogate pair is one sign for what cannot be read", "[editor]") {
    CHECK(without_lone_surrogates(R"("\ud835\udd4f")") == R"("\ud835\udd4f")");
    CHECK(without_lone_surrogates(R"("a\ud835b")") == R"("a\ufffdb")");
    CHECK(without_lone_surrogates(R"("\udd4f\ud835")") == R"("\ufffd\ufffd")");
    CHECK(without_lone_surrogates(R"("\\ud835 \u00e9")") == R"("\\ud835 \u00e9")");
    CHECK(without_lone_surrogates("\\") == "\\");
}

TEST_CASE("a message is read unless it is no JSON or deeper than any message", "[editor]") {
    const auto nested = [](std::size_t levels) {
        return R"({"id":)" + std::string(levels, '[') + std::string(levels, ']') + "}";
    };
    CHECK(message_in(R"({"id":1})").value().at("id") == 1);
    CHECK(message_in(R"("a\ud835")").value() == "a\uFFFD");
    CHECK(message_in("null").value().is_null());
    CHECK(message_in(nested(50)));
    for (const auto levels : {200u, 1'000'000u}) CHECK_FALSE(message_in(nested(levels)));
    for (const auto* text : {"", "{", "{}{}", "\xFF"}) CHECK_FALSE(message_in(text));
}
