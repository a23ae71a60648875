#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace benchcard::grammar {

/// The text in one case, whatever case it was written in (Unicode case folding), for comparing.
std::string folded_case(std::string_view text);

/// How many letters must be added, left out, changed or swapped with a neighbour to make one
/// word of the other (optimal string alignment distance), counted in characters.
std::size_t distance(std::string_view a, std::string_view b);

/// The candidates near enough to `word` to have been meant, nearest first, at most `most`.
/// Near enough is one slip in three characters, case aside.
std::vector<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates,
                                 std::size_t most = 3);

} // namespace benchcard::grammar
