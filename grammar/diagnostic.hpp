#pragma once

#include "grammar/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace benchcard::grammar {

enum class severity { error, warning, hint };

/// The word for it, as it is shown.
std::string_view name_of(severity level);

/// A fact that explains a message, with its own place where it has one.
struct note {
    std::string text;
    std::optional<span> where = {};
};

/// A stretch of text and what should stand there instead.
struct edit {
    span where;
    std::string text;
};

/// A change to make, in words, and as edits where the repair is certain.
struct help {
    std::string text;
    std::vector<edit> edits = {};
};

/// One message about one place: what stages return instead of throwing.
struct diagnostic {
    std::string_view kind; ///< its stable name in words; every one is in a registry of kinds
    severity level = severity::error;
    span where;
    std::string message; ///< one sentence in the cook's words, without a full stop
    std::vector<note> notes = {};
    std::vector<help> helps = {};
};

using diagnostics = std::vector<diagnostic>;

/// Whether any of the messages is an error.
inline bool has_errors(const diagnostics& messages) {
    for (const auto& m : messages)
        if (m.level == severity::error) return true;
    return false;
}

/// A kind of message: its name, how grave it is, and one line that says what it is about.
struct kind_entry {
    std::string_view name;
    severity level;
    std::string_view summary;
};

} // namespace benchcard::grammar
