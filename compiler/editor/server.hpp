#pragma once

#include "compiler/editor/completion.hpp"
#include "compiler/editor/look.hpp"
#include "compiler/editor/names.hpp"

#include <functional>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <variant>

namespace benchcard::editor {

/// The protocol's numbers for why a request failed.
enum error_code : int {
    parse_error = -32700,
    invalid_request = -32600,
    no_such_method = -32601,
    invalid_params = -32602,
    internal_error = -32603,
    not_initialized = -32002,
    request_failed = -32803,
    request_cancelled = -32800,
};

/// What the server can do outside of itself; the command gives it.
struct surroundings {
    recipe::file_reader read;
    recipes_in_folder recipes_in;
    /// Prints the cards of a compiled recipe, and gives the path of the PDF or, second, why not.
    std::function<std::pair<std::string, std::string>(const commands::compiled&)> print;
};

/// One conversation with an editor. Takes messages one after the other; what it answers goes to
/// `send`. Nothing that a message holds can end it, but `exit`.
class server {
  public:
    using sender = std::function<void(const json&)>;
    server(surroundings outside, sender send);
    ~server();

    /// Takes one message. `is_cancelled` says whether its request was taken back meanwhile.
    void take(
        const json& message, const std::function<bool()>& is_cancelled = [] { return false; });
    /// Answers a message that is no JSON.
    void refuse_unreadable();
    /// Nothing waits: says what there is to say of the documents that changed.
    void rest();

    bool is_over() const { return over_; }
    /// 0 after `shutdown` and `exit`, otherwise 1.
    int exit_code() const { return shut_down_ ? 0 : 1; }

  private:
    struct opened;

    surroundings outside_;
    sender send_;
    client client_;
    std::vector<std::string> folders_;
    std::map<std::string, std::unique_ptr<opened>> documents_; ///< by URI
    /// What was published of each file, by the document from which it was compiled.
    std::map<std::string, std::map<std::string, json>> published_;
    bool initialized_ = false, shut_down_ = false, over_ = false;

    json answer(const std::string& method, const json& params);
    void notice(const std::string& method, const json& params);
    json initialize(const json& params);
    void open(const json& params);
    void change(const json& params);
    void close(const json& params);
    void files_changed();

    opened& at(const json& params);
    const commands::compiled& compiled(opened& d);
    std::unique_ptr<commands::compiled> compile(const std::string& path, std::string text) const;
    recipe::file_text read(const std::string& path) const;
    std::string uri_of(const std::string& path) const;
    look look_at(opened& d);
    json looked(const json& params, const std::function<json(const look&)>& what);
    every_look others(const document& from);
    json execute(const json& params);
    json rename_in(const json& params);

    void touch_users_of(const std::string& path);
    void publish(opened& d);
    void send_published(const std::string& uri, std::int64_t version, bool is_open);
};

/// The path of a `file:` URI; the URI itself where it is none.
std::string path_of_uri(const std::string& uri);

} // namespace benchcard::editor
