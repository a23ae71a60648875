#include "compiler/commands/commands.hpp"
#include "compiler/commands/compile.hpp"
#include "compiler/commands/conversion.hpp"
#include "compiler/commands/files.hpp"
#include "compiler/commands/wrong_line.hpp"
#include "grammar/limits.hpp"
#include "grammar/loose.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

namespace {

/// Prints messages whose places are in the amount itself.
void print_in(const grammar::source& text, grammar::diagnostics messages) {
    compiled shown;
    shown.files.sources.push_back(text);
    shown.messages = std::move(messages);
    print_messages(shown);
}

/// Says what is wrong with a text that is not read as an amount of an ingredient: as it was given,
/// and as the line that was made of it.
int refuse(const std::string& given, const grammar::source& text,
           const grammar::diagnostics& messages) {
    // That there is no amount at all is better said as one sentence without a place.
    const bool is_other = messages.empty() || messages.front().kind == "unreadable-line" ||
                          messages.front().kind == "unreadable-amount";
    if (is_other)
        print_wrong_line({fmt::format("`{}` is not an amount of an ingredient", given),
                          {"the amount comes first, then the ingredient: benchcard convert '2 1/4 "
                           "cups plain flour'"}});
    else
        print_in(text, messages);
    return not_run;
}

int refuse_line(std::string message) {
    print_wrong_line(
        {std::move(message), {"for example: benchcard convert '2 1/4 cups plain flour'"}});
    return not_run;
}

int write_out(const std::string& text) {
    const auto failure = write_file("-", text);
    if (failure) complain(fmt::format("benchcard: {}\n", *failure));
    return failure ? not_run : done;
}

/// Why a pasted line has no weight, in words that need no place.
std::string reason_of(const conversion& c) {
    for (const auto& m : c.messages)
        if (m.level == grammar::severity::error && c.is_read) return m.message;
    return c.is_read ? "what it weighs is not known" : "it has no amount and ingredient to weigh";
}

/// Lines as people paste them from elsewhere, each with its weight or why it has none.
int convert_lines(const convert_options& options) {
    const auto pasted = read_standard_input();
    if (!pasted.is_read) {
        complain(fmt::format("benchcard: standard input cannot be read: {}\n", pasted.failure));
        return not_run;
    }
    const grammar::source text(0, "standard input", pasted.text);
    std::string out;
    int code = done;
    const auto count = text.line_count() - text.line(text.line_count()).empty();
    const auto last = std::min(count, grammar::limits::pasted_lines);
    for (std::size_t i = 1; i <= last; ++i) {
        const std::string line(text.line(i));
        if (line.find_first_not_of(" \t") == line.npos) continue;
        const bool is_text = grammar::first_not_utf8(line) == line.npos;
        if (!is_text) {
            out += fmt::format("line {}: not weighed: it is not UTF-8 text\n", i);
            code = recipe_errors;
            continue;
        }
        const auto c = convert_amount(grammar::as_ingredient_line(line), options.measures);
        if (!c.weight) code = recipe_errors;
        out += c.weight ? fmt::format("{} = {}\n{}", line, *c.weight, options.why ? c.why : "")
                        : fmt::format("{}: not weighed: {}\n", line, reason_of(c));
    }
    const auto written = write_out(out);
    if (last < count) {
        complain(fmt::format("benchcard: {} lines were given, and the first {} are converted\n",
                             count, last));
        code = recipe_errors;
    }
    return written == done ? code : written;
}

} // namespace

int convert(const convert_options& options) {
    if (options.amount == "-") return convert_lines(options);
    if (options.amount.find('\n') != std::string::npos)
        return refuse_line("convert takes one amount, on one line");
    if (grammar::first_not_utf8(options.amount) != std::string::npos)
        return refuse_line("the amount is not UTF-8 text");
    const auto amount = grammar::as_ingredient_line(options.amount);
    const grammar::source text(0, "amount", amount);
    const auto c = convert_amount(amount, options.measures);
    if (!c.is_read) return refuse(options.amount, text, c.messages);
    print_in(text, c.messages);
    if (grammar::has_errors(c.messages)) return recipe_errors;
    if (!c.weight) {
        complain(fmt::format("benchcard: what `{}` weighs is not known\n", options.amount));
        return recipe_errors;
    }
    return write_out(
        fmt::format("{} = {}\n{}", options.amount, *c.weight, options.why ? c.why : ""));
}

} // namespace benchcard::commands
