#pragma once

#include "compiler/commands/compile.hpp"
#include "compiler/editor/places.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace benchcard::editor {

/// What the editor on the other side can show, as it said at the beginning.
struct client {
    encoding counted = encoding::utf16;
    bool tree_of_symbols = false; ///< an outline with levels
    bool versioned_edits = false; ///< edits of several documents with their versions
    bool related_places = false;  ///< a message with other places
    bool whole_actions = false;   ///< code actions that are not only commands
    bool markdown = false;        ///< in hovers
};

/// A text that is open in the editor.
struct document {
    std::string uri;
    std::string path; ///< what it is called by; for one without a file, its URI
    std::int64_t version = 0;
    std::string text;

    bool operator==(const document&) const = default;
};

/// A document as it was compiled, with what a request needs to look at it.
struct look {
    const document& doc;
    const commands::compiled& of;
    const client& shows;
    std::function<std::string(const std::string& path)> uri_of;

    const grammar::source& text() const { return of.files.sources.front(); }
    const grammar::tree& tree() const { return of.files.trees.front(); }
    /// The places of one of the recipe's files, by its number.
    places places_of(std::uint32_t file) const;
    /// The byte in the compiled text (without its byte order mark) at a place of the document.
    std::uint32_t offset_of(position p) const;
    std::string uri_of_file(std::uint32_t file) const {
        return file == 0 ? doc.uri : uri_of(of.files.sources.at(file).name());
    }
    json location(grammar::span where) const;
};

/// Whether a place stands in a span, or right behind it as a cursor does.
inline bool holds(grammar::span where, std::uint32_t offset) {
    return where.file == 0 && where.begin <= offset && offset <= where.end;
}

/// The block in which a place of the document stands; the first where it stands before all.
const grammar::block& block_at(const grammar::tree& file, std::uint32_t offset);
/// What a block's lines and steps mean; null where there is nothing.
const recipe::component* component_of(const commands::compiled& of, const grammar::block& written);

/// An edit of one place, and all edits of a document, as the protocol has them.
json text_edit(const places& at, std::size_t begin, std::size_t end, std::string_view text);
struct edits_of {
    std::string uri;
    std::int64_t version = -1; ///< below 0 for a file that is not open
    json edits = json::array();
};
json workspace_edit(const std::vector<edits_of>& all, const client& shows);

/// Text in the form in which a client can show it.
json shown_text(const std::string& markdown, const client& shows);

} // namespace benchcard::editor
