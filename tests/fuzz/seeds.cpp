#include "seeds.hpp"

#include "compiler/diagnostics/kinds.hpp"
#include "compiler/editor/look.hpp"
#include "compiler/measures/systems.hpp"
#include "examples.hpp"
#include "grammar/settings.hpp"
#include "grammar/units.hpp"
#include "input.hpp"
#include "styles/style.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <stdexcept>

namespace benchcard::fuzz {

namespace {

namespace fs = std::filesystem;
using editor::json;

const std::string root = BENCHCARD_SOURCE_DIR;

/// All files in a folder and below it whose names end so, in the order of their names.
std::vector<seed> files_in(const fs::path& folder, const std::string& extension) {
    std::vector<seed> result;
    if (!fs::exists(folder)) return result;
    for (const auto& e : fs::recursive_directory_iterator(folder))
        if (e.is_regular_file() && (extension.empty() || e.path().extension() == extension))
            result.push_back({e.path().lexically_relative(folder).string(),
                              language::text_of(e.path().string())});
    std::sort(result.begin(), result.end(),
              [](const auto& a, const auto& b) { return a.name < b.name; });
    return result;
}

/// The recipes of a folder, each with those that it may use.
std::vector<input> recipes_in(const std::string& folder) {
    std::vector<input> result;
    const auto all = files_in(root + folder, ".recipe");
    for (const auto& one : all) {
        input in{one.bytes, {}, {}};
        for (const auto& other : all)
            if (one.bytes.find("use: " + other.name) != std::string::npos)
                in.files[other.name] = other.bytes;
        result.push_back(std::move(in));
    }
    return result;
}

std::vector<input> all_recipes() {
    std::vector<input> result;
    for (const auto* folder : {"/examples", "/tests/recipes"})
        for (auto& in : recipes_in(folder)) result.push_back(std::move(in));
    for (const auto& e : language::all_examples())
        if (!e.is_style) result.push_back({e.recipe, e.files, {}});
    return result;
}

const std::vector<std::vector<std::string>>& orders() {
    static const std::vector<std::vector<std::string>> all = {
        {},
        {"--scale", "1/2"},
        {"--make", "40"},
        {"--from", "400 g butter", "--from", "3 eggs"},
        {"--tin", "20 cm round"},
        {"--flour", "25 kg", "--fit", "batch"},
        {"--batch", "1/2, 1, 2"},
        {"--make", "2 kg", "--measures", "us"}};
    return all;
}

std::vector<seed> recipe_seeds(bool with_orders) {
    std::vector<seed> result;
    std::size_t number = 0;
    for (auto& in : all_recipes()) {
        if (with_orders) in.order = orders()[number % orders().size()];
        result.push_back({fmt::format("{:03}.recipe", ++number), text_of(in)});
    }
    return result;
}

std::vector<seed> style_seeds() {
    auto result = files_in(root + "/styles", ".style");
    std::size_t number = 0;
    std::vector<language::example> all =
        language::examples_in(language::text_of(root + "/styles/STYLES.md"));
    for (auto& e : language::all_examples()) all.push_back(std::move(e));
    for (const auto& e : all)
        if (e.is_style) result.push_back({fmt::format("{:03}.style", ++number), e.recipe});
    return result;
}

/// The lines of all recipes that begin with an amount, a few an input, and as they are pasted.
std::vector<seed> convert_seeds() {
    std::vector<seed> result = {
        {"pasted.txt", "\1* 2 1/4 cups (280g) plain flour\n1 (14-ounce) can condensed milk\n"
                       "butter, 2 sticks\n- ½ tsp. salt\n3 to 4 large eggs\n"}};
    std::string lines;
    std::size_t number = 0;
    for (const auto& in : all_recipes())
        for (std::size_t begin = 0; begin < in.recipe.size();) {
            const auto end = std::min(in.recipe.find('\n', begin), in.recipe.size());
            if (in.recipe[begin] >= '0' && in.recipe[begin] <= '9')
                lines += in.recipe.substr(begin, end - begin) + "\n";
            begin = end + 1;
            if (lines.size() < 300) continue;
            result.push_back({fmt::format("{:03}.txt", ++number),
                              std::string(1, static_cast<char>(number % 16)) + lines});
            lines.clear();
        }
    return result;
}

/// A request or, with number 0, a notice about the document of the conversation.
std::string message_of(int number, const std::string& method, json params) {
    params["textDocument"]["uri"] = "file:///a/a.recipe";
    json message = {{"jsonrpc", "2.0"}, {"method", method}, {"params", std::move(params)}};
    if (number > 0) message["id"] = number;
    return message.dump(-1, ' ', false, json::error_handler_t::replace) + "\n";
}

std::string typed(const std::string& recipe) {
    std::string result = ">";
    for (const char c : recipe) result += c == '\n' ? std::string("\n>") : std::string(1, c);
    return result + "\n";
}

/// An editor that opens a recipe, types it and asks all that can be asked, at some line of it.
std::string conversation_about(const std::string& recipe, int line) {
    const json place = {{"line", line}, {"character", 6}}, begin = {{"line", 0}, {"character", 0}};
    const json capabilities = {
        {"textDocument",
         {{"codeAction", {{"codeActionLiteralSupport", json::object()}}},
          {"documentSymbol", {{"hierarchicalDocumentSymbolSupport", line % 2 == 0}}},
          {"hover", {{"contentFormat", {"markdown"}}}},
          {"publishDiagnostics", {{"relatedInformation", true}}}}},
        {"general", {{"positionEncodings", {line % 3 == 0 ? "utf-8" : "utf-16"}}}}};
    auto result =
        message_of(1, "initialize", {{"capabilities", capabilities}, {"rootUri", "file:///a"}});
    result +=
        message_of(0, "textDocument/didOpen", {{"textDocument", {{"text", ""}, {"version", 1}}}});
    result += typed(recipe) + "\n";
    const json at_place = {
        {"position", place},
        {"context", {{"includeDeclaration", true}, {"diagnostics", json::array()}}},
        {"range", {{"start", begin}, {"end", place}}},
        {"newName", "Other"},
        {"options", json::object()}};
    int number = 1;
    for (const auto* what : {"hover", "completion", "definition", "references", "documentHighlight",
                             "prepareRename", "rename", "documentSymbol", "foldingRange",
                             "semanticTokens/full", "formatting", "inlayHint", "codeAction"})
        result += message_of(++number, std::string("textDocument/") + what, at_place);
    result +=
        message_of(0, "textDocument/didChange",
                   {{"contentChanges", json::array({{{"range", {{"start", begin}, {"end", place}}},
                                                     {"text", "recipe: B\n"}}})}});
    result += message_of(++number, "workspace/executeCommand",
                         {{"command", "benchcard.print"}, {"arguments", {"file:///a/a.recipe"}}});
    return result + message_of(0, "textDocument/didClose", json::object());
}

std::vector<seed> server_seeds() {
    std::vector<seed> result;
    int number = 0;
    for (const auto& in : all_recipes()) {
        if (in.recipe.size() > 1500) continue;
        const auto lines = std::count(in.recipe.begin(), in.recipe.end(), '\n') + 1;
        ++number;
        result.push_back({fmt::format("{:03}.txt", number),
                          conversation_about(in.recipe, number % static_cast<int>(lines))});
    }
    return result;
}

std::vector<std::string> words() {
    std::vector<std::string> all = {"%file ",
                                    "%order\n",
                                    "use: ",
                                    "- ",
                                    "[",
                                    "]",
                                    ": half]",
                                    ": rest]",
                                    ": 1/3]",
                                    "[rest]",
                                    " # ",
                                    "½",
                                    "⅔",
                                    "–",
                                    "×",
                                    "1/2 ",
                                    " or ",
                                    " + ",
                                    " = ",
                                    " of ",
                                    " per ",
                                    " each",
                                    " fan",
                                    " round",
                                    " loaf",
                                    "optional",
                                    "overnight",
                                    "some ",
                                    "about ",
                                    "all ",
                                    "half a ",
                                    "gas 4",
                                    "% in the oven",
                                    " chilled",
                                    " frozen",
                                    "\r\n",
                                    "\xEF\xBB\xBF",
                                    "flour",
                                    "plain flour",
                                    "large eggs",
                                    "butter",
                                    "caster sugar",
                                    "fine salt",
                                    "yeast",
                                    "water",
                                    "milk",
                                    "9999999",
                                    "0.001 ",
                                    "\"position\"",
                                    "\"range\"",
                                    "\"textDocument\"",
                                    "\"id\"",
                                    "\"method\"",
                                    "\"params\"",
                                    "null",
                                    "\\u0000",
                                    "\\ud800",
                                    "1e99",
                                    "-1",
                                    "a.recipe",
                                    "house.recipe"};
    for (const auto& s : grammar::all_settings()) all.push_back(std::string(s.word) + ": ");
    for (const auto& s : grammar::all_settings()) all.push_back(std::string(s.example) + "\n");
    for (const auto u : grammar::all_units)
        all.push_back(" " + std::string(grammar::short_name(u)) + " ");
    for (const auto s : measures::all_systems) all.emplace_back(measures::name_of(s));
    for (const auto& k : diagnostics::all_kinds()) all.emplace_back(k.name);
    for (const auto& s : styles::setting_names()) all.push_back(s + ": ");
    for (const auto& p : styles::papers()) all.emplace_back(p.name);
    return all;
}

} // namespace

const std::vector<std::string>& targets() {
    static const std::vector<std::string> all = {"parse", "check",  "weigh",  "tidy",
                                                 "style", "server", "convert"};
    return all;
}

std::vector<seed> seeds_for(const std::string& target) {
    if (target == "style") return style_seeds();
    if (target == "convert") return convert_seeds();
    if (target == "server") return server_seeds();
    return recipe_seeds(target == "weigh");
}

std::vector<seed> found_for(const std::string& target) {
    return files_in(root + "/tests/fuzz/found/" + target, "");
}

std::string dictionary() {
    std::string result;
    for (const auto& word : words()) {
        result += '"';
        for (const char c : word)
            result +=
                fmt::format("\\x{:02X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        result += "\"\n";
    }
    return result;
}

} // namespace benchcard::fuzz
