#pragma once

#include "compiler/editor/look.hpp"

#include <optional>
#include <string>
#include <vector>

namespace benchcard::editor {

/// What a name stands for: a component or an ingredient, and where it is defined.
struct thing {
    bool is_component = false;
    std::string name;        ///< in the form in which names are compared
    std::string path;        ///< of the file that defines it; empty for what no file here defines
    std::uint32_t begin = 0; ///< where its title begins there

    bool operator==(const thing&) const = default;
};

/// Words of a recipe's own file that name a thing.
struct mention {
    grammar::span where;
    thing of;
    bool is_title = false;              ///< where it is defined
    bool is_other_name = false;         ///< a name that `also:` gives it
    bool is_by_preparation = false;     ///< a bracket that goes by words of a line's preparation
    const recipe::line* line = nullptr; ///< the line that it is, or that a bracket means
    const recipe::component* inside = nullptr;    ///< whose line that is
    std::optional<grammar::span> defined_at = {}; ///< in the book; nothing for the table's own
};

/// All of a recipe's own file, in the order of the text.
std::vector<mention> mentions_in(const commands::compiled& of);

/// The one at a place, or null.
const mention* mention_at(const std::vector<mention>& all, std::uint32_t offset);

/// `textDocument/definition`.
json definition(const look& l, position p);

/// What `references` and `rename` look through: the documents and files that may use each other.
using every_look = std::function<void(const std::function<void(const look&)>&)>;

/// `textDocument/references`.
json references(const look& l, position p, bool with_title, const every_look& every);
/// `textDocument/documentHighlight`.
json highlights(const look& l, position p);
/// `textDocument/prepareRename`: the words that would be renamed, or null.
json prepare_rename(const look& l, position p);
/// Why there can be no such name; empty where there can.
std::string refused_name(const std::string& name, bool is_component);
/// `textDocument/rename`. `name` can be one.
json rename(const look& l, position p, const std::string& name, const every_look& every);

} // namespace benchcard::editor
