#include "compiler/editor/server.hpp"
#include "grammar/parse.hpp"

#include <atomic>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <rapidcheck.h>
#include <sstream>
#include <thread>

using namespace benchcard;
using namespace benchcard::editor;

namespace {

const std::string examples = BENCHCARD_SOURCE_DIR "/examples";

recipe::file_text read(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return {file.good(), text.str(), "no such file"};
}

/// A server that was initialized, with all that it sent.
struct conversation {
    std::vector<json> sent;
    server with{{read, [](const std::string&) { return std::vector<std::string>{}; },
                 [](const commands::compiled&) {
                     return std::pair<std::string, std::string>{"", "no"};
                 }},
                [this](const json& message) { sent.push_back(message); }};
    int asked = 0;

    /// Checks nothing, since checks are for the first thread alone.
    conversation() {
        const json says = {
            {"textDocument", {{"codeAction", {{"codeActionLiteralSupport", json::object()}}}}}};
        with.take({{"jsonrpc", "2.0"},
                   {"id", 0},
                   {"method", "initialize"},
                   {"params", {{"capabilities", says}}}});
    }
    json ask(const std::string& method, const json& params) {
        sent.clear();
        with.take({{"jsonrpc", "2.0"}, {"id", ++asked}, {"method", method}, {"params", params}});
        REQUIRE(sent.size() == 1);
        REQUIRE(sent.front().at("id") == asked);
        return sent.front();
    }
    /// The last that was published of a document.
    json said_of(const std::string& uri) const {
        json result = json::object();
        for (const auto& message : sent)
            if (message.value("method", "") == "textDocument/publishDiagnostics" &&
                message.at("params").at("uri") == uri)
                result = message.at("params");
        return result;
    }
    void tell(const std::string& method, const json& params) {
        with.take({{"jsonrpc", "2.0"}, {"method", method}, {"params", params}});
    }
};

const json no_place = {{"line", 0}, {"character", 0}};

/// Everything an editor may ask of a document while someone types at its end.
void ask_everything(conversation& c, const std::string& uri, const json& place) {
    const json document = {{"textDocument", {{"uri", uri}}}};
    auto at_place = document, whole = document, renamed = document;
    at_place["position"] = renamed["position"] = place;
    renamed["newName"] = "Other";
    at_place["context"] = {{"includeDeclaration", true}};
    whole["range"] = {{"start", no_place}, {"end", place}};
    whole["context"] = {{"diagnostics", json::array()}};
    whole["options"] = json::object();
    for (const auto* method :
         {"hover", "completion", "definition", "references", "documentHighlight", "prepareRename"})
        CHECK(c.ask(std::string("textDocument/") + method, at_place).contains("result"));
    for (const auto* method : {"documentSymbol", "foldingRange", "semanticTokens/full",
                               "formatting", "inlayHint", "codeAction"})
        CHECK(c.ask(std::string("textDocument/") + method, whole).contains("result"));
    c.ask("textDocument/rename", renamed);
}

json end_of(const std::string& text) {
    const places at(text, encoding::utf16);
    return as_json(at.at(text.size()));
}

/// Of how many beginnings of a text one is given to the server, and all are read: each in a full
/// run, with PREFIX_ONE_IN=1 in the environment.
std::size_t one_in() {
    const char* wanted = std::getenv("PREFIX_ONE_IN");
    return wanted ? std::max<std::size_t>(1, std::stoul(wanted)) : 12;
}

/// Opens an example letter by letter, as it is typed. Gives what is wrong; empty for nothing.
std::string type_out(const std::filesystem::path& example) {
    const auto text = read(example.string()).text;
    const auto uri = "file://" + example.string();
    conversation c;
    c.tell("textDocument/didOpen", {{"textDocument", {{"uri", uri}, {"text", ""}}}});
    for (std::size_t length = 0; length <= text.size(); ++length) {
        const auto so_far = text.substr(0, length);
        if (length % one_in() != 0 && length != text.size()) {
            grammar::parse(grammar::source(0, uri, so_far));
            continue;
        }
        c.tell("textDocument/didChange", {{"textDocument", {{"uri", uri}, {"version", length}}},
                                          {"contentChanges", json::array({{{"text", so_far}}})}});
        c.sent.clear();
        c.with.rest();
        const auto said = c.said_of(uri);
        if (said.value("version", json()) != length)
            return "nothing is said of the first " + std::to_string(length) + " bytes";
    }
    const auto last = c.said_of(uri);
    for (const auto& d : last.at("diagnostics"))
        if (d.at("severity") == 1) return d.dump();
    return "";
}

std::vector<std::filesystem::path> all_examples() {
    std::vector<std::filesystem::path> result;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(examples))
        if (entry.path().extension() == ".recipe") result.push_back(entry.path());
    return result;
}

} // namespace

TEST_CASE("no beginning of an example ends the server", "[editor]") {
    const auto all = all_examples();
    REQUIRE(all.size() > 5);
    std::vector<std::string> wrong(all.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (auto i = next++; i < all.size(); i = next++) wrong[i] = type_out(all[i]);
    };
    std::thread other(work);
    work();
    other.join();
    for (std::size_t i = 0; i < all.size(); ++i) {
        INFO(all[i]);
        CHECK(wrong[i] == "");
    }
}

TEST_CASE("at every line's end of an example all that an editor asks is answered", "[editor]") {
    for (const auto& example : all_examples()) {
        INFO(example);
        const auto text = read(example.string()).text;
        const auto uri = "file://" + example.string();
        conversation c;
        c.tell("textDocument/didOpen", {{"textDocument", {{"uri", uri}, {"text", ""}}}});
        for (auto end = text.find('\n'); end != text.npos; end = text.find('\n', end + 1)) {
            const auto so_far = text.substr(0, end);
            c.tell("textDocument/didChange",
                   {{"textDocument", {{"uri", uri}, {"version", end}}},
                    {"contentChanges", json::array({{{"text", so_far}}})}});
            ask_everything(c, uri, end_of(so_far));
        }
    }
}

TEST_CASE("whatever is typed and wherever, every request has one answer", "[editor]") {
    conversation c;
    const std::string uri = "untitled:one";
    c.tell("textDocument/didOpen", {{"textDocument", {{"uri", uri}, {"text", ""}}}});
    CHECK(rc::check([&] {
        std::string text;
        for (const auto& bit : *rc::gen::container<std::vector<std::string>>(
                 rc::gen::elementOf(std::vector<std::string>{"recipe: A\n",
                                                             "measures: us\n",
                                                             "component: B\n",
                                                             "ingredient: teff\n",
                                                             "weighs: 8 g per cup\n",
                                                             "2 cups plain flour",
                                                             " or rye flour",
                                                             "1 tsp B",
                                                             "\n",
                                                             "- Mix [flour]",
                                                             "[",
                                                             "]",
                                                             "[B: half]",
                                                             ":",
                                                             ", sifted",
                                                             "= 3 g",
                                                             "𝕏",
                                                             "é",
                                                             "#",
                                                             "\r",
                                                             "\r\n",
                                                             " ",
                                                             "\xFF",
                                                             "use: x.recipe\n",
                                                             "percent: flour\n",
                                                             "- "})))
            text += bit;
        c.tell("textDocument/didChange", {{"textDocument", {{"uri", uri}, {"version", 1}}},
                                          {"contentChanges", json::array({{{"text", text}}})}});
        const json place = {{"line", *rc::gen::inRange(0, 9)},
                            {"character", *rc::gen::inRange(0, 40)}};
        ask_everything(c, uri, place);
        c.with.rest();
    }));
}

TEST_CASE("messages that are none are answered or passed over", "[editor]") {
    conversation c;
    for (const auto* text :
         {"1", "[]", "null", "\"x\"", "{}", R"({"id":1})", R"({"method":5,"id":2})"}) {
        c.sent.clear();
        c.with.take(json::parse(text));
        REQUIRE(c.sent.size() == 1);
        CHECK(c.sent.front().at("error").at("code") == -32600);
    }
    for (const auto* params :
         {"null", "[]", "{}", R"({"textDocument":{"uri":5}})",
          R"({"textDocument":{"uri":"x"},"position":{"line":-1,"character":1e99}})"})
        for (const auto* method :
             {"hover", "rename", "formatting", "codeAction", "didOpen", "didChange", "didClose"})
            CHECK(c.ask(std::string("textDocument/") + method, json::parse(params))
                      .contains("error"));
    c.sent.clear();
    c.with.take(json::parse(R"({"id":1,"result":null})"));
    c.tell("textDocument/didChange", json::parse(R"({"textDocument":{"uri":"gone"}})"));
    CHECK(c.sent.empty());
}

TEST_CASE("paths are read from URIs", "[editor]") {
    CHECK(path_of_uri("file:///a/b%20c/%C3%A9.recipe") == "/a/b c/é.recipe");
    CHECK(path_of_uri("file:///a/./b/../c") == "/a/c");
    CHECK(path_of_uri("file://localhost/a") == "/a");
    CHECK(path_of_uri("file:///a%2") == "/a%2");
    CHECK(path_of_uri("file://") == "");
    CHECK(path_of_uri("untitled:Untitled-1") == "untitled:Untitled-1");
}

namespace {

const std::string small_recipe = "recipe: A\n"
                                 "component: B\n"
                                 "2 cups plain flour # spooned\n"
                                 "- Mix [flour: half].\n"
                                 "# how it was\n"
                                 "# at first\n";

json asked_of_small_recipe(const std::string& method) {
    conversation c;
    const json document = {{"uri", "file:///a.recipe"}, {"text", small_recipe}};
    c.tell("textDocument/didOpen", {{"textDocument", document}});
    return c.ask("textDocument/" + method, {{"textDocument", document}}).at("result");
}

} // namespace

TEST_CASE("a client that knows no levels gets its outline as a list", "[editor]") {
    const auto symbols = asked_of_small_recipe("documentSymbol");
    REQUIRE(symbols.size() == 3);
    for (const auto& s : symbols) {
        CHECK(s.contains("location"));
        CHECK_FALSE(s.contains("children"));
    }
    CHECK(symbols[0].at("name") == "A");
    CHECK(symbols[1].at("name") == "B");
    CHECK(symbols[2].at("name") == "plain flour");
    CHECK(symbols[2].at("containerName") == "B");
}

TEST_CASE("comments fold, also at the end of a recipe", "[editor]") {
    json comments = json::array();
    for (const auto& f : asked_of_small_recipe("foldingRange"))
        if (f.value("kind", "") == "comment") comments.push_back({f["startLine"], f["endLine"]});
    CHECK(comments == json::array({{4, 5}}));
}

TEST_CASE("what is coloured comes in order, nothing twice, and so do comments behind a line",
          "[editor]") {
    const auto data = asked_of_small_recipe("semanticTokens/full").at("data");
    std::size_t line = 0, at = 0, end = 0;
    std::vector<std::string> comments;
    std::vector<std::string> lines;
    std::istringstream text(small_recipe);
    for (std::string l; std::getline(text, l);) lines.push_back(l);
    for (std::size_t i = 0; i < data.size(); i += 5) {
        const std::size_t down = data[i], right = data[i + 1], length = data[i + 2];
        if (down > 0) at = end = 0;
        line += down, at += right;
        CHECK(at >= end);
        end = at + length;
        if (data[i + 3] == 7) comments.push_back(lines.at(line).substr(at, length));
    }
    CHECK(comments == std::vector<std::string>{"# spooned", "# how it was", "# at first"});
}
