#include "compiler/editor/server.hpp"
#include "compiler/editor/messages.hpp"
#include "examples.hpp"
#include "target.hpp"

#include <algorithm>

using namespace benchcard;
using editor::json;

namespace {

/// A server that reads no disk, and what must hold of all that it sends.
class conversation {
  public:
    void take(const std::string& body) {
        const auto message = editor::message_in(body);
        answers_ = 0;
        if (message)
            server_.take(*message);
        else
            server_.refuse_unreadable();
        const bool is_request = message && message->is_object() && message->contains("method") &&
                                message->contains("id") && !message->at("id").is_null() &&
                                message->at("method").is_string() && message->at("method") != "";
        if (is_request) fuzz::must(answers_ == 1, "a request has no answer, or several");
    }
    void rest() { server_.rest(); }
    bool is_over() const { return server_.is_over(); }

  private:
    std::map<std::string, std::string> files_ = {
        {"/a/house.recipe",
         "recipe: House\ncomponent: Cream\nmakes: 800 g\n800 g whipping cream\n"},
        {"/a/other.recipe", "recipe: Other\nuse: house.recipe\n100 g Cream\n"}};
    int answers_ = 0;
    editor::server server_{
        {language::reader_of(files_),
         [](const std::string&) {
             return std::vector<std::string>{"/a/house.recipe", "/a/other.recipe"};
         },
         [](const commands::compiled&) {
             return std::pair<std::string, std::string>("/p.pdf", "");
         }},
        [this](const json& sent) {
            answers_ += !sent.contains("method");
            fuzz::must(sent.value("/error/code"_json_pointer, 0) != editor::internal_error,
                       "the server failed");
            sent.dump(-1, ' ', false, json::error_handler_t::replace);
        }};
};

/// Messages, one a line. A line that begins with `>` is one of a recipe, told as a change of all of
/// `file:///a/a.recipe` before the next message.
class typist {
  public:
    explicit typist(conversation& with) : with_(with) {}

    void take(const std::string& line) {
        if (line.starts_with('>')) {
            typed_ += line.substr(1) + "\n";
            return;
        }
        if (!typed_.empty()) tell();
        if (line.empty())
            with_.rest();
        else
            with_.take(line);
    }

  private:
    conversation& with_;
    std::string typed_;

    void tell() {
        const json change = {{"method", "textDocument/didChange"},
                             {"params",
                              {{"textDocument", {{"uri", "file:///a/a.recipe"}, {"version", 2}}},
                               {"contentChanges", json::array({{{"text", typed_}}})}}}};
        with_.take(change.dump(-1, ' ', false, json::error_handler_t::replace));
        typed_.clear();
    }
};

} // namespace

/// A conversation with the language server: each request has one answer, and none is that the
/// server itself failed.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto text = fuzz::text_of(data, size);
    conversation with;
    typist types(with);
    for (std::size_t begin = 0; begin < text.size() && !with.is_over();) {
        const auto end = std::min(text.find('\n', begin), text.size());
        types.take(text.substr(begin, end - begin));
        begin = end + 1;
    }
    with.rest();
    return 0;
}
