#include "compiler/editor/server.hpp"

#include "compiler/diagnostics/formats.hpp"
#include "compiler/editor/hover.hpp"
#include "compiler/editor/messages_shown.hpp"
#include "compiler/editor/outline.hpp"
#include "compiler/editor/weights_shown.hpp"

#include <algorithm>
#include <charconv>
#include <filesystem>

namespace benchcard::editor {

namespace {

constexpr std::string_view print_command = "benchcard.print";

/// Why a request cannot be answered.
struct failed {
    error_code code;
    std::string message;
};

json reply_to(const json& id, json result) {
    return {{"jsonrpc", "2.0"}, {"id", id}, {"result", std::move(result)}};
}

json error_for(const json& id, error_code code, const std::string& message) {
    return {{"jsonrpc", "2.0"}, {"id", id}, {"error", {{"code", code}, {"message", message}}}};
}

/// A value deep in what a client says of itself; null where it says nothing.
json said_at(const json& all, const char* pointer) {
    const json::json_pointer at(pointer);
    return all.contains(at) ? all.at(at) : json();
}

bool has(const json& list, const char* word) {
    return list.is_array() && std::find(list.begin(), list.end(), word) != list.end();
}

client client_in(const json& capabilities) {
    const auto says = [&](const char* pointer) { return said_at(capabilities, pointer) == true; };
    client result;
    result.counted = has(said_at(capabilities, "/general/positionEncodings"), "utf-8")
                         ? encoding::utf8
                         : encoding::utf16;
    result.tree_of_symbols = says("/textDocument/documentSymbol/hierarchicalDocumentSymbolSupport");
    result.versioned_edits = says("/workspace/workspaceEdit/documentChanges");
    result.related_places = says("/textDocument/publishDiagnostics/relatedInformation");
    result.whole_actions =
        said_at(capabilities, "/textDocument/codeAction/codeActionLiteralSupport").is_object();
    result.markdown = has(said_at(capabilities, "/textDocument/hover/contentFormat"), "markdown");
    return result;
}

json abilities(const client& c) {
    return {{"positionEncoding", c.counted == encoding::utf8 ? "utf-8" : "utf-16"},
            {"textDocumentSync",
             {{"openClose", true}, {"change", 2}, {"save", {{"includeText", false}}}}},
            {"hoverProvider", true},
            {"completionProvider", {{"triggerCharacters", {"[", " ", ":"}}}},
            {"definitionProvider", true},
            {"referencesProvider", true},
            {"documentHighlightProvider", true},
            {"documentSymbolProvider", true},
            {"foldingRangeProvider", true},
            {"documentFormattingProvider", true},
            {"codeActionProvider", {{"codeActionKinds", {"quickfix", "refactor.rewrite"}}}},
            {"renameProvider", {{"prepareProvider", true}}},
            {"inlayHintProvider", true},
            {"executeCommandProvider", {{"commands", {print_command}}}},
            {"semanticTokensProvider",
             {{"legend", {{"tokenTypes", token_kinds()}, {"tokenModifiers", json::array()}}},
              {"full", true}}},
            {"workspace",
             {{"workspaceFolders", {{"supported", true}, {"changeNotifications", true}}}}}};
}

std::vector<std::string> folders_in(const json& params) {
    std::vector<std::string> result;
    const auto folders = params.value("workspaceFolders", json());
    if (folders.is_array())
        for (const auto& f : folders) result.push_back(path_of_uri(f.at("uri")));
    const auto root = params.value("rootUri", json());
    if (result.empty() && root.is_string()) result.push_back(path_of_uri(root));
    return result;
}

} // namespace

std::string path_of_uri(const std::string& uri) {
    constexpr std::string_view scheme = "file://";
    if (!uri.starts_with(scheme)) return uri;
    const auto begin = uri.find('/', scheme.size());
    std::string path;
    for (std::size_t i = begin; i < uri.size(); ++i) {
        unsigned value = 0;
        const char* digits = uri.data() + i + 1;
        if (uri[i] == '%' && i + 2 < uri.size() &&
            std::from_chars(digits, digits + 2, value, 16).ptr == digits + 2) {
            path += static_cast<char>(value);
            i += 2;
        } else {
            path += uri[i];
        }
    }
    return std::filesystem::path(path).lexically_normal().string();
}

/// A document that is open, and what was last made of it.
struct server::opened {
    document doc;
    std::unique_ptr<commands::compiled> of; ///< null where its text or a file it uses has changed
    bool is_due = true;                     ///< something is to be said of it
};

server::server(surroundings outside, sender send)
    : outside_(std::move(outside)), send_(std::move(send)) {}
server::~server() = default;

void server::take(const json& message, const std::function<bool()>& is_cancelled) {
    const auto id = message.is_object() ? message.value("id", json()) : json();
    const auto method =
        message.is_object() && message.contains("method") && message["method"].is_string()
            ? message["method"].get<std::string>()
            : "";
    const bool is_request = !id.is_null();
    if (method.empty()) {
        // An answer to a request of ours; there are none. Anything else is no message.
        if (!message.is_object() || (!message.contains("result") && !message.contains("error")))
            send_(error_for(id, invalid_request, "this is no message of the protocol"));
        return;
    }
    try {
        const auto params = message.value("params", json());
        if (!is_request) return notice(method, params);
        if (is_cancelled()) throw failed{request_cancelled, "this request was taken back"};
        auto result = answer(method, params);
        if (is_cancelled()) throw failed{request_cancelled, "this request was taken back"};
        send_(reply_to(id, std::move(result)));
    } catch (const failed& f) {
        if (is_request) send_(error_for(id, f.code, f.message));
    } catch (const json::exception& e) {
        if (is_request) send_(error_for(id, invalid_params, e.what()));
    } catch (const std::exception& e) {
        if (is_request) send_(error_for(id, internal_error, e.what()));
    }
}

void server::refuse_unreadable() {
    send_(error_for(json(), parse_error, "this message is not JSON"));
}

json server::initialize(const json& params) {
    if (initialized_) throw failed{invalid_request, "the server was initialized before"};
    initialized_ = true;
    client_ = client_in(params.value("capabilities", json::object()));
    folders_ = folders_in(params);
    return {{"capabilities", abilities(client_)},
            {"serverInfo", {{"name", "benchcard"}, {"version", BENCHCARD_VERSION}}}};
}

json server::answer(const std::string& method, const json& params) {
    if (method == "initialize") return initialize(params);
    if (!initialized_) throw failed{not_initialized, "the server is not initialized"};
    if (shut_down_) throw failed{invalid_request, "the server was shut down"};
    if (method == "shutdown") {
        shut_down_ = true;
        return json();
    }
    const auto place = [&] { return position_in(params.at("position")); };
    using l = const look&;
    if (method == "textDocument/hover")
        return looked(params, [&](l x) { return hover(x, place()); });
    if (method == "textDocument/completion")
        return looked(params, [&](l x) { return completion(x, place(), outside_.recipes_in); });
    if (method == "textDocument/definition")
        return looked(params, [&](l x) { return definition(x, place()); });
    if (method == "textDocument/documentHighlight")
        return looked(params, [&](l x) { return highlights(x, place()); });
    if (method == "textDocument/references")
        return looked(params, [&](l x) {
            const bool with_title = said_at(params, "/context/includeDeclaration") == true;
            return references(x, place(), with_title, others(x.doc));
        });
    if (method == "textDocument/prepareRename")
        return looked(params, [&](l x) { return prepare_rename(x, place()); });
    if (method == "textDocument/rename") return rename_in(params);
    if (method == "textDocument/documentSymbol") return looked(params, outline);
    if (method == "textDocument/foldingRange") return looked(params, folds);
    if (method == "textDocument/semanticTokens/full") return looked(params, tokens);
    if (method == "textDocument/formatting") return looked(params, formatting);
    if (method == "textDocument/inlayHint")
        return looked(params, [&](l x) { return hints(x, params.at("range")); });
    if (method == "textDocument/codeAction")
        return looked(params, [&](l x) { return actions(x, params); });
    if (method == "workspace/executeCommand") return execute(params);
    throw failed{no_such_method, "there is no method " + method};
}

void server::notice(const std::string& method, const json& params) {
    if (method == "exit") over_ = true;
    if (!initialized_ || shut_down_) return;
    if (method == "textDocument/didOpen") return open(params);
    if (method == "textDocument/didChange") return change(params);
    if (method == "textDocument/didClose") return close(params);
    if (method == "textDocument/didSave" || method == "workspace/didChangeWatchedFiles")
        return files_changed();
    if (method == "workspace/didChangeWorkspaceFolders") {
        for (const auto& f : params.at("event").at("removed"))
            std::erase(folders_, path_of_uri(f.at("uri")));
        for (const auto& f : params.at("event").at("added"))
            folders_.push_back(path_of_uri(f.at("uri")));
    }
}

void server::open(const json& params) {
    const auto& given = params.at("textDocument");
    auto d = std::make_unique<opened>();
    d->doc.uri = given.at("uri");
    d->doc.path = path_of_uri(d->doc.uri);
    d->doc.version = given.value("version", std::int64_t{0});
    d->doc.text = given.at("text");
    const auto path = d->doc.path;
    documents_[d->doc.uri] = std::move(d);
    touch_users_of(path);
}

void server::change(const json& params) {
    auto& d = at(params);
    for (const auto& c : params.at("contentChanges")) change_text(d.doc.text, c, client_.counted);
    d.doc.version = params.at("textDocument").value("version", d.doc.version);
    d.of.reset();
    d.is_due = true;
    touch_users_of(d.doc.path);
}

void server::close(const json& params) {
    const auto uri = at(params).doc.uri, path = at(params).doc.path;
    documents_.erase(uri);
    // What was said by way of it, of itself and of the files it uses, holds no more.
    for (auto& [file, by_document] : published_)
        if (by_document.erase(uri) > 0 && file != uri && !documents_.contains(file))
            send_published(file, 0, false);
    send_({{"jsonrpc", "2.0"},
           {"method", "textDocument/publishDiagnostics"},
           {"params", {{"uri", uri}, {"diagnostics", json::array()}}}});
    touch_users_of(path);
}

void server::files_changed() {
    for (auto& [uri, d] : documents_) d->of.reset(), d->is_due = true;
}

server::opened& server::at(const json& params) {
    const auto uri = params.at("textDocument").at("uri").get<std::string>();
    const auto found = documents_.find(uri);
    if (found == documents_.end()) throw failed{invalid_params, uri + " is not open"};
    return *found->second;
}

recipe::file_text server::read(const std::string& path) const {
    for (const auto& [uri, d] : documents_)
        if (d->doc.path == path) return {true, d->doc.text, ""};
    return outside_.read(path);
}

std::unique_ptr<commands::compiled> server::compile(const std::string& path,
                                                    std::string text) const {
    return commands::compile_text(path, std::move(text), measures::system::unstated,
                                  [this](const std::string& used) { return read(used); });
}

const commands::compiled& server::compiled(opened& d) {
    if (!d.of) d.of = compile(d.doc.path, d.doc.text);
    return *d.of;
}

std::string server::uri_of(const std::string& path) const {
    for (const auto& [uri, d] : documents_)
        if (d->doc.path == path) return uri;
    return diagnostics::uri_of(path);
}

look server::look_at(opened& d) {
    return {d.doc, compiled(d), client_, [this](const std::string& path) { return uri_of(path); }};
}

json server::looked(const json& params, const std::function<json(const look&)>& what) {
    return what(look_at(at(params)));
}

/// All other documents that are open, and the recipes of the folders that are open or, without any,
/// of the document's own.
every_look server::others(const document& from) {
    return [this, &from](const std::function<void(const look&)>& do_it) {
        std::set<std::string> seen = {from.path};
        for (auto& [uri, d] : documents_)
            if (seen.insert(d->doc.path).second) do_it(look_at(*d));
        auto folders = folders_;
        if (folders.empty())
            folders.push_back(std::filesystem::path(from.path).parent_path().string());
        for (const auto& folder : folders)
            for (const auto& path : outside_.recipes_in(folder)) {
                if (!seen.insert(path).second) continue;
                auto file = outside_.read(path);
                if (!file.is_read) continue;
                opened other{{uri_of(path), path, -1, file.text}, nullptr};
                do_it(look_at(other));
            }
    };
}

json server::rename_in(const json& params) {
    const auto name = params.at("newName").get<std::string>();
    return looked(params, [&](const look& l) {
        const auto p = position_in(params.at("position"));
        const auto all = mentions_in(l.of);
        const auto* m = mention_at(all, l.offset_of(p));
        if (!m || m->is_other_name)
            throw failed{request_failed, m ? "this is another name that `also:` gives it: change "
                                             "it there"
                                           : "there is no component or ingredient here"};
        if (const auto why = refused_name(name, m->of.is_component); !why.empty())
            throw failed{request_failed, why};
        return rename(l, p, name, others(l.doc));
    });
}

json server::execute(const json& params) {
    if (params.at("command") != print_command)
        throw failed{invalid_params, "there is no such command"};
    const auto arguments = params.value("arguments", json::array());
    const auto& first = arguments.at(0);
    const auto uri =
        first.is_object() ? first.at("uri").get<std::string>() : first.get<std::string>();
    return looked({{"textDocument", {{"uri", uri}}}}, [&](const look& l) -> json {
        const auto [path, why] = outside_.print(l.of);
        if (path.empty()) throw failed{request_failed, why};
        return path;
    });
}

/// Everything that was made of a file's text is made anew.
void server::touch_users_of(const std::string& path) {
    for (auto& [uri, d] : documents_) {
        // A file that could not be read is in no book, so who lacks one may want this one.
        const bool uses = !d->of ||
                          std::any_of(d->of->files.sources.begin(), d->of->files.sources.end(),
                                      [&](const auto& s) { return s.name() == path; }) ||
                          std::any_of(d->of->messages.begin(), d->of->messages.end(),
                                      [](const auto& m) { return m.kind == "unreadable-file"; });
        if (uses) d->of.reset(), d->is_due = true;
    }
}

void server::rest() {
    for (auto& [uri, d] : documents_)
        if (std::exchange(d->is_due, false)) publish(*d);
}

void server::publish(opened& d) {
    auto said = diagnostics_of(look_at(d));
    std::set<std::string> changed = {d.doc.uri};
    for (auto& [file, by_document] : published_)
        if (by_document.erase(d.doc.uri) > 0) changed.insert(file);
    for (auto& [file, list] : said)
        if (file == d.doc.uri || !list.empty()) {
            published_[file][d.doc.uri] = std::move(list);
            changed.insert(file);
        }
    for (const auto& file : changed) {
        const auto open = documents_.find(file);
        const bool is_open = open != documents_.end();
        if (is_open && file != d.doc.uri) continue; // its own text says what there is to say
        send_published(file, is_open ? open->second->doc.version : 0, is_open);
    }
}

void server::send_published(const std::string& uri, std::int64_t version, bool is_open) {
    json all = json::array();
    for (const auto& [from, list] : published_[uri]) {
        if (is_open && from != uri) continue;
        for (const auto& one : list)
            if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
    }
    json params = {{"uri", uri}, {"diagnostics", std::move(all)}};
    if (is_open) params["version"] = version;
    send_({{"jsonrpc", "2.0"},
           {"method", "textDocument/publishDiagnostics"},
           {"params", std::move(params)}});
}

} // namespace benchcard::editor
