#pragma once

#include "grammar/show.hpp"
#include "reading.hpp"

namespace benchcard::grammar {

/// The first place of a message, or of what it says or would change, that does not lie within its
/// text; empty where all do.
inline std::string fault_of_places(const diagnostic& m, const std::vector<source>& sources) {
    const auto lies_within = [&](span s) {
        return s.file < sources.size() && s.begin <= s.end &&
               s.end <= sources[s.file].text().size();
    };
    if (!lies_within(m.where)) return "a message lies outside of its text: " + m.message;
    for (const auto& n : m.notes)
        if (n.where && !lies_within(*n.where)) return "a note lies outside: " + n.text;
    for (const auto& h : m.helps)
        for (const auto& e : h.edits)
            if (!lies_within(e.where)) return "an edit lies outside: " + h.text;
    return m.message.empty() ? "a message says nothing" : "";
}

/// What does not hold of a recipe as it was read, and must of any bytes; empty where all does.
inline std::string fault_of_reading(const std::string& bytes) {
    const reading r(bytes);
    const auto size = r.text.text().size();
    for (const auto& m : r.result.messages)
        if (auto fault = fault_of_places(m, {r.text}); !fault.empty()) return fault;
    for (std::size_t i = 1; i < r.result.messages.size(); ++i)
        if (r.text.at(r.result.messages[i - 1].where.begin).line >
            r.text.at(r.result.messages[i].where.begin).line)
            return "messages are not in the order of the text";
    std::size_t unread_lines = 0;
    for (const auto& b : r.result.tree.blocks)
        for (const auto& i : b.items) {
            const auto where = std::visit([](const auto& node) { return node.where; }, i.value);
            if (where.begin > where.end || where.end > size) return "a line lies outside the text";
            for (const auto& c : i.comments)
                if (c.where.begin > c.where.end || c.where.end > size)
                    return "a comment lies outside the text";
            unread_lines += std::holds_alternative<unread>(i.value);
            if (const auto* l = std::get_if<ingredient_line>(&i.value)) {
                if (l->names.empty() || l->amounts.empty()) return "a line has no name or amount";
                for (const auto& name : l->names)
                    if (name.text.empty()) return "a name is empty";
            }
            if (const auto* s = std::get_if<step>(&i.value))
                if (s->parts.empty()) return "a step is empty";
        }
    if (unread_lines > r.result.messages.size()) return "nothing is said of an unread line";
    show(r.result.tree, r.text);
    return "";
}

} // namespace benchcard::grammar
