#pragma once

#include "grammar/diagnostic.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The same messages for other programs: editors, code hosts, scripts.
namespace benchcard::diagnostics {

/// What was said of one recipe, and all files it was read from, by their numbers.
struct report {
    const grammar::diagnostics* messages;
    const std::vector<grammar::source>* sources;
};

/// A line a message: `file:line:column: error: text [kind]`, notes and helps below it as `note:`
/// lines, edits in the form that GCC gives with -fdiagnostics-parseable-fixits.
std::string as_gcc(std::span<const report> reports);

/// One JSON object, as grammar/LANGUAGE.md describes it.
std::string as_json(std::span<const report> reports);

/// One log in the Static Analysis Results Interchange Format (SARIF) 2.1.0, OASIS 2020.
/// `all_were_read` is false where a recipe is missing from it, since it could not be read.
std::string as_sarif(std::span<const report> reports, bool all_were_read);

/// A message with the notes that have no place of their own, and its helps: for readers that show
/// one text.
std::string text_without_places(const grammar::diagnostic& m);

/// A relative or absolute path as a URI reference (RFC 3986).
std::string uri_of(std::string_view path);

} // namespace benchcard::diagnostics
