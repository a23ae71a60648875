#include "compiler/diagnostics/pages.hpp"

#include "compiler/diagnostics/kinds.hpp"
#include "grammar/source.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace benchcard::diagnostics {

const std::vector<std::pair<std::string_view, std::string_view>>& built_in_pages();

namespace {

constexpr std::string_view extension = ".md";
constexpr std::string_view fence_mark = "```";
constexpr std::size_t columns = 80;

/// Words from blank to blank, in lines as long as fit; those after the first are set in further.
std::string wrapped(std::string_view text, std::size_t first_indent, std::size_t indent) {
    std::string result(first_indent, ' ');
    auto column = first_indent;
    bool is_at_start = true;
    for (std::size_t at = 0; at < text.size();) {
        const auto end = std::min(text.find(' ', at), text.size());
        const auto word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        const auto width = grammar::count_characters(word);
        if (!is_at_start && column + 1 + width > columns) {
            result += "\n" + std::string(indent, ' ');
            column = indent;
            is_at_start = true;
        }
        if (!is_at_start) result += ' ';
        result += word;
        column += width + (is_at_start ? 0 : 1);
        is_at_start = false;
    }
    return result + "\n";
}

/// What stands over a block in place of the word behind its fence, and behind the one before it.
std::string over_block(std::string_view info, std::string_view before) {
    constexpr std::string_view file = "file ";
    if (info.starts_with(file)) return fmt::format("In {}:\n\n", info.substr(file.size()));
    if (info == "messages") return "What is said:\n\n";
    if (before.starts_with(file)) return "In the recipe:\n\n";
    return before.empty() ? "For example:\n\n" : "";
}

std::string line_of_block(std::string_view line, std::string_view info) {
    if (line.empty()) return "\n";
    if (info != "messages") return fmt::format("    {}\n", line);
    const auto blanks = std::min(line.find_first_not_of(' '), line.size());
    return wrapped(line, 4 + blanks, 8);
}

/// A page without its marks: paragraphs wrapped, and blocks set in.
class plain_page {
  public:
    void read(std::string_view line) {
        if (line.starts_with(fence_mark)) {
            end_paragraph();
            inside_ = !inside_;
            if (inside_)
                text_ += over_block(line.substr(fence_mark.size()), info_);
            else
                text_ += "\n";
            if (inside_) info_ = line.substr(fence_mark.size());
        } else if (inside_) {
            text_ += line_of_block(line, info_);
        } else if (line.empty()) {
            end_paragraph();
        } else {
            paragraph_ += fmt::format("{}{}", paragraph_.empty() ? "" : " ", line);
        }
    }
    std::string text() {
        end_paragraph();
        while (text_.ends_with("\n\n")) text_.pop_back();
        return std::move(text_);
    }

  private:
    void end_paragraph() {
        if (!paragraph_.empty()) text_ += wrapped(paragraph_, 0, 0) + "\n";
        paragraph_.clear();
    }

    std::string text_, paragraph_;
    std::string_view info_; ///< behind the fence of the block, or of the last one
    bool inside_ = false;
};

std::string as_plain_text(std::string_view page) {
    plain_page result;
    for (std::size_t begin = 0; begin < page.size();) {
        const auto end = std::min(page.find('\n', begin), page.size());
        result.read(page.substr(begin, end - begin));
        begin = end + 1;
    }
    return result.text();
}

} // namespace

std::string_view page_of(std::string_view kind) {
    for (const auto& [file, text] : built_in_pages())
        if (file.size() == kind.size() + extension.size() && file.starts_with(kind)) return text;
    return {};
}

std::vector<std::string_view> kinds_with_pages() {
    std::vector<std::string_view> result;
    for (const auto& [file, text] : built_in_pages())
        result.push_back(file.substr(0, file.size() - extension.size()));
    std::sort(result.begin(), result.end());
    return result;
}

std::string explained(std::string_view kind) {
    const auto* entry = kind_named(kind);
    if (!entry) return "";
    auto result = wrapped(
        fmt::format("{} ({}): {}", entry->name, grammar::name_of(entry->level), entry->summary), 0,
        4);
    const auto page = as_plain_text(page_of(kind));
    return page.empty() ? result : result + "\n" + page;
}

std::string list_of_kinds() {
    const auto& all = all_kinds();
    std::size_t widest = 0;
    for (const auto& k : all) widest = std::max(widest, k.name.size());
    std::string result;
    for (const auto& k : all)
        result += fmt::format("{:<{}}  {:<7}  {}\n", k.name, widest, grammar::name_of(k.level),
                              k.summary);
    return result;
}

} // namespace benchcard::diagnostics
