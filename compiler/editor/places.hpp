#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

/// The program as a language server (Language Server Protocol 3.17): what an editor shows of a
/// recipe while it is written.
namespace benchcard::editor {

using json = nlohmann::json;

/// What the protocol counts the columns of a position in.
enum class encoding { utf16, utf8 };

/// A place as the protocol counts it: both from 0.
struct position {
    std::size_t line = 0, character = 0;

    bool operator==(const position&) const = default;
};
position position_in(const json& from);
json as_json(const position& p);

/// The lines of a text as the protocol has them: they end at `\n`, `\r\n` or `\r`.
class places {
  public:
    /// The text must outlive it. `mark` is how many bytes a byte order mark took that was left out
    /// of the text's beginning, and which the editor counts.
    places(std::string_view text, encoding counted, std::size_t mark = 0);

    /// The byte at a position. Past a line's end it is the line's end, past the text the text's;
    /// within a character, its beginning.
    std::size_t offset_at(position p) const;
    position at(std::size_t offset) const;
    json range(std::size_t begin, std::size_t end) const;

  private:
    std::string_view text_;
    encoding counted_;
    std::size_t mark_;
    std::vector<std::size_t> starts_;

    std::size_t line_end(std::size_t line) const;
    std::size_t units_of_mark() const;
};

/// How long a text is in what columns are counted in.
std::size_t units_in(std::string_view text, encoding counted);

/// Makes one of the changes of `textDocument/didChange` to a text.
void change_text(std::string& text, const json& change, encoding counted);

} // namespace benchcard::editor
