#include "compiler/commands/compile.hpp"

#include "compiler/checks/checks.hpp"
#include "compiler/checks/labels.hpp"
#include "compiler/checks/shorten.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/diagnostics/render.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <string_view>
#include <unistd.h>

namespace benchcard::commands {

namespace {

void add(grammar::diagnostics& to, grammar::diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(to));
}

bool wants_colour(std::FILE* to) {
    const char* no_colour = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    const bool is_plain = terminal && std::string_view(terminal) == "dumb";
    return ::isatty(::fileno(to)) && !(no_colour && *no_colour) && !is_plain;
}

bool lacks_text(const grammar::diagnostics& messages) {
    return std::any_of(messages.begin(), messages.end(), [](const auto& m) {
        return m.kind == "unreadable-file" || m.kind == "file-outside" ||
               m.kind == "circular-use" || m.kind == "too-many-files" || m.kind == "too-many";
    });
}

/// Names that a missing file, or what was not read of one, would have brought in are not unknown
/// for another reason.
void drop_what_follows(grammar::diagnostics& messages) {
    std::erase_if(messages, [](const auto& m) {
        return m.kind == "unknown-ingredient" || m.kind == "unknown-volume";
    });
}

} // namespace

std::unique_ptr<compiled> compile_text(const std::string& name, std::string text,
                                       measures::system measures, const recipe::file_reader& read) {
    auto result = std::make_unique<compiled>();
    result->files = recipe::gather(name, std::move(text), read);
    auto resolved = recipe::resolve(result->files, ingredients::built_in_table(), measures);
    result->meaning = std::move(resolved.meaning);
    if (lacks_text(result->files.messages)) drop_what_follows(resolved.messages);
    add(result->messages, std::move(result->files.messages));
    add(result->messages, std::move(resolved.messages));
    add(result->messages, checks::check(result->meaning));
    checks::check_labels(result->files, result->meaning, result->messages);
    checks::settle(result->files, result->meaning, result->messages);
    checks::put_in_order(result->messages);
    return result;
}

std::unique_ptr<compiled> compile(const std::string& path, measures::system measures,
                                  const reading& how) {
    const bool is_input = path == "-";
    const std::string name = is_input ? "standard input" : path;
    auto file = is_input ? read_standard_input() : confined_to(how.only_in, read_file)(path);
    if (!file.is_read) {
        how.say(fmt::format("benchcard: {} cannot be read: {}\n", name, file.failure));
        return nullptr;
    }
    return compile_text(name, std::move(file.text), measures, confined_to(how.only_in, how.used));
}

std::string shown_messages(const grammar::diagnostics& messages,
                           const std::vector<grammar::source>& sources, std::FILE* to) {
    if (messages.empty()) return "";
    const auto use = wants_colour(to) ? diagnostics::colour::yes : diagnostics::colour::no;
    return diagnostics::render_all(messages, sources, use);
}

std::string shown_messages(const compiled& c, std::FILE* to) {
    return shown_messages(c.messages, c.files.sources, to);
}

void print_messages(const compiled& c) { complain(shown_messages(c, stderr)); }

} // namespace benchcard::commands
