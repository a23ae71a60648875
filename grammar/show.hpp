#pragma once

#include "grammar/source.hpp"
#include "grammar/tree.hpp"

#include <string>

namespace benchcard::grammar {

/// A tree as indented text, one node a line, with exact numbers as fractions and all comments:
/// for tests, and for people who want to see how a line was read.
std::string show(const tree& file);

/// The same, with the place of each line behind it: `@2:1-2:9`, up to just before the last.
std::string show(const tree& file, const source& text);

std::string show(const amount& a);
std::string show(const measure& m);
std::string show(const ingredient_line& l);
std::string show(const step& s);
std::string show(const yield& y);

} // namespace benchcard::grammar
